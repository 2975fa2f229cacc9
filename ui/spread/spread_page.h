// The firing's spread: log on the left page, curve and cards on the right, the line to write on below.
#pragma once

#include "core/base/result.h"
#include "core/firing/records.h"
#include "core/firing/written_line.h"

#include <QTimer>
#include <QWidget>

class QLabel;
class QVBoxLayout;

namespace ringhold {

class FiringSession;
class GlazeOfFiring;
class Heading;
class LogModel;
class LogView;
class Notebook;
class RightPage;
class Theme;
class WritingLine;

/// One for each live firing. Session, notebook and theme outlive it.
class SpreadPage : public QWidget {
    Q_OBJECT

  public:
    SpreadPage(FiringSession& session, Notebook& notebook, const Theme& theme, QWidget* parent = nullptr);

    FiringSession& session() { return m_session; }
    /// What the book knows of the glaze that is fired.
    const GlazeOfFiring& glaze() const { return *m_glaze; }
    /// Takes the keyboard for a line of that kind.
    void beginWriting(LineKind kind);
    /// Likewise, for a meter's stand.
    void beginMeter();
    /// Writes a look that sees the firing cone down, now; like every line it can be struck again.
    void writeConeDown();

  Q_SIGNALS:
    void spyholeWanted();
    /// Something could not be kept: said in words.
    void troubled(const QString& what);

  private:
    QWidget* makeLeftPage();
    void refreshLog();
    void refreshRemarks();
    void write(const WrittenLine& line);
    void addReminders(QVBoxLayout& column);
    void strikeRow(int row);
    void undo();
    /// A look moves the forecast: what it says then becomes a line of the log.
    bool firingConeIsDown() const;
    void noteForecast();
    std::size_t looksThatCount() const;
    WritingContext writingContext() const;
    void dress();

    FiringSession& m_session;
    Notebook& m_notebook;
    const Theme& m_theme;
    Heading* m_date;
    QLabel* m_what;
    LogModel* m_logModel;
    LogView* m_log;
    RightPage* m_right;
    GlazeOfFiring* m_glaze;
    WritingLine* m_line;
    QTimer m_note; ///< looks at several cones are one
    std::size_t m_looksNoted = 0;
    std::vector<LookId> m_doubted; ///< as the log shows them
    Instant m_answersTold;         ///< of the curve, to settings
};

} // namespace ringhold
