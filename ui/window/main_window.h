// The window: strips of the live firings above, the open spread below, ribbons at the edge.
#pragma once

#include <QMainWindow>

#include <functional>
#include <map>
#include <memory>
#include <vector>

class QButtonGroup;
class QMenu;
class QStackedWidget;
class QVBoxLayout;

namespace ringhold {

class FileExchange;
class FiringSession;
class InstrumentPage;
class NoticeBar;
class Notebook;
class Ribbon;
class SpreadPage;
class SpyholePage;
class Strip;
class Theme;
class ThemeFollower;

/// Notebook and theme outlive it.
class MainWindow : public QMainWindow {
    Q_OBJECT

  public:
    MainWindow(Notebook& notebook, Theme& theme, QWidget* parent = nullptr);
    ~MainWindow() override;

    /// The ribbons' words in their order: "Firing", "Plan" ...
    QStringList spreads() const;
    /// Opens the spread of that ribbon.
    void open(const QString& spread);
    void tell(const QString& trouble);
    SpreadPage* spreadOf(const FiringSession& session) const;

  private:
    using PageMaker = std::function<QWidget*()>;
    void addSpread(const QString& words, const PageMaker& make);
    void addMenus();
    void addReminderChoices(QMenu& menu);
    void matchSessions();
    void showFiring();
    void showPast(qlonglong firing);
    void takeDown(const FiringSession* session, Strip* strip);
    void openSpyhole();
    void addInstrumentPage();
    void chooseInstrument();
    void endFiring();
    void chooseTheme();
    /// Of the firing that is shown, by its spread or its spyhole.
    SpreadPage* currentSpread() const;

    Notebook& m_notebook;
    Theme& m_theme;
    std::unique_ptr<ThemeFollower> m_follower;
    FileExchange* m_exchange;
    QVBoxLayout* m_strips;
    NoticeBar* m_notice;
    QStackedWidget* m_pages;   ///< one for each ribbon
    QStackedWidget* m_firings; ///< the firing ribbon's: begin page, a spread for each session, the spyhole
    QWidget* m_begin;
    InstrumentPage* m_instruments = nullptr;
    QVBoxLayout* m_ribbonColumn;
    QButtonGroup* m_ribbons;
    std::map<const FiringSession*, Strip*> m_stripOf;
    std::map<const FiringSession*, SpreadPage*> m_spreadOf;
    std::map<const FiringSession*, SpyholePage*> m_spyholeOf;
};

} // namespace ringhold
