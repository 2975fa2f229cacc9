// The blank paper log, to be printed before it is needed.
#pragma once

#include "core/base/result.h" // first: moc stumbles when <compare> comes before all else
#include "core/plan/plan.h"
#include "ui/report/log_sheet.h"

#include <QDialog>

#include <optional>

namespace ringhold {

class FiringSession;
class Preferences;
class ReportPane;

/// Of a live firing: the plan's steps still to come, at the times at which they are expected now.
LogSheet logSheetOf(const FiringSession& session, const Preferences& preferences);
/// Of a plan that is not lit yet: its steps with their time after lighting; without one a sheet for any
/// firing.
LogSheet logSheetOf(const std::optional<Plan>& plan, const Preferences& preferences);

/// Stops nobody.
class LogSheetWindow : public QDialog {
    Q_OBJECT

  public:
    explicit LogSheetWindow(LogSheet sheet, QWidget* parent = nullptr);

    /// Shows one: of the session if there is one, else of the plan.
    static void open(QWidget* parent, const FiringSession* session, const std::optional<Plan>& plan,
                     const Preferences& preferences);
    ReportPane& pane() { return *m_pane; }

  private:
    ReportPane* m_pane;
};

} // namespace ringhold
