// The window: strips of the live firings above, the open spread below, ribbons at the edge.
#pragma once

#include "ui/sound/sounder.h"

#include <QMainWindow>

#include <functional>
#include <memory>

class QButtonGroup;
class QMenu;
class QStackedWidget;
class QVBoxLayout;

namespace ringhold {

class FileExchange;
class FiringPages;
class FiringSession;
class NoticeBar;
class Notebook;
class PastPage;
class PlanPage;
class Ribbon;
class SpreadPage;
class Theme;
class ThemeFollower;
class WatchDesk;

/// Notebook, theme and sounder outlive it.
class MainWindow : public QMainWindow {
    Q_OBJECT

  public:
    /// Without a sounder the window flashes where an alarm would sound.
    MainWindow(Notebook& notebook, Theme& theme, Sounder* sounder = nullptr, QWidget* parent = nullptr);
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
    void showFiring();
    void showPast(qlonglong firing);
    void openSpyhole();
    /// Of the live firing; on the past page, or with none live, of the firing opened there.
    void openReport();
    void openLogSheet();
    void typePaperLog();
    void chooseTheme();

    Notebook& m_notebook;
    Theme& m_theme;
    std::unique_ptr<ThemeFollower> m_follower;
    FileExchange* m_exchange;
    FiringPages* m_firings;
    NoSounder m_noSound;
    WatchDesk* m_watch;
    QMenu* m_steps = nullptr; ///< the plan's, of the firing that is shown
    NoticeBar* m_notice;
    QStackedWidget* m_pages; ///< one for each ribbon
    PastPage* m_past = nullptr;
    PlanPage* m_plan = nullptr;
    QVBoxLayout* m_ribbonColumn;
    QButtonGroup* m_ribbons;
};

} // namespace ringhold
