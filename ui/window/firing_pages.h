// The firing ribbon's pages: where a firing begins, and a spread and a spyhole for each that is live; and
// their strips.
#pragma once

#include <QStackedWidget>

#include <map>
#include <vector>

class QVBoxLayout;

namespace ringhold {

class BeginPage;
class FiringSession;
class InstrumentPage;
class Notebook;
class SpreadPage;
class SpyholePage;
class Strip;
class Theme;

/// Follows the notebook's sessions. One firing of several is the one shown: its strip is marked, keys and
/// lines are for it. Notebook and theme outlive it.
class FiringPages : public QStackedWidget {
    Q_OBJECT

  public:
    FiringPages(Notebook& notebook, const Theme& theme, QWidget* parent = nullptr);

    /// The strips of all live firings, oldest first; to be placed by the window.
    QWidget* strips() const { return m_stripColumn; }
    SpreadPage* spreadOf(const FiringSession& session) const;
    /// Of the firing that is shown, by its spread or its spyhole; null on the begin page.
    SpreadPage* currentSpread() const;
    FiringSession* currentSession() const;

    void showBegin();
    /// The spread of the firing that is shown, else of the youngest; the begin page when none is live.
    void showFiring();
    void showFiring(const FiringSession& session);
    /// The one so many further, round and round.
    void showNext(int further);
    /// By its place among the strips, from 0; nothing happens beyond the last.
    void showAt(std::size_t place);
    void openSpyhole();
    /// For the firing that is shown, or for the one that is to begin.
    void chooseInstrument();
    /// Ends the firing that is shown.
    void endFiring();

  Q_SIGNALS:
    /// By the potter's word; it is among the past ones now.
    void ended(qlonglong firing);
    /// The potter asked for one of these pages.
    void wanted();
    /// Another firing is shown, or none.
    void currentSessionChanged();
    /// The potter asked, at this place of the screen, what can be said of the firing that is shown now.
    void menuWanted(const QPoint& at);
    void troubled(const QString& what);

  private:
    struct Shown {
        Strip* strip = nullptr;
        SpreadPage* spread = nullptr;
        SpyholePage* spyhole = nullptr;
    };
    void matchSessions();
    void put(FiringSession& session);
    void takeDown(const Shown& shown);
    void markStrips();

    Notebook& m_notebook;
    const Theme& m_theme;
    QWidget* m_stripColumn;
    QVBoxLayout* m_strips;
    BeginPage* m_begin;
    InstrumentPage* m_instruments;
    std::map<const FiringSession*, Shown> m_shown;
    const FiringSession* m_marked = nullptr; ///< as last told by currentSessionChanged()
};

} // namespace ringhold
