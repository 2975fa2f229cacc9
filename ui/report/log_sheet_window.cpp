#include "ui/report/log_sheet_window.h"

#include "core/plan/plan_check.h"
#include "ui/plan/plan_basis.h"
#include "ui/report/report_pane.h"
#include "ui/report/report_preview.h"
#include "ui/session/firing_session.h"
#include "ui/session/preferences.h"
#include "ui/spread/strip_words.h"

#include <QVBoxLayout>

namespace ringhold {

namespace {

LogSheet emptySheet(const Preferences& preferences) {
    return {{}, {}, preferences.unitName(), {}, {}};
}

} // namespace

LogSheet logSheetOf(const FiringSession& session, const Preferences& preferences) {
    const auto& record = session.record();
    LogSheet sheet = emptySheet(preferences);
    sheet.title = LogSheetWindow::tr("Firing %1, %2")
                      .arg(static_cast<qlonglong>(record.firing.id))
                      .arg(QString::fromStdString(record.kiln.name));
    sheet.summary =
        LogSheetWindow::tr("lit %1 %2 · the plan’s times as expected at %3: they shift with the cone")
            .arg(preferences.date(record.firing.began), preferences.clockTime(record.firing.began),
                 preferences.clockTime(session.now()));
    for (const auto& pack : record.packs)
        for (const auto& cone : pack.cones)
            if (const auto name = QString::fromStdString(cone); !sheet.cones.contains(name))
                sheet.cones << name;
    if (const auto* follower = session.follower())
        for (const auto& step : follower->ahead().steps)
            sheet.plan.push_back({preferences.clockTime(step.start),
                                  stepWords(follower->plan().steps[step.step], preferences)});
    return sheet;
}

LogSheet logSheetOf(const std::optional<Plan>& plan, const Preferences& preferences) {
    LogSheet sheet = emptySheet(preferences);
    if (!plan || plan->steps.empty() || !check(*plan))
        return sheet;
    sheet.summary = LogSheetWindow::tr("plan “%1” · its times count from lighting, and shift with the cone")
                        .arg(QString::fromStdString(plan->name));
    const auto planned = planCurve(*plan, contextOf(typicalBasis(), *plan));
    for (const auto& step : planned.steps)
        sheet.plan.push_back({QStringLiteral("+ ") + preferences.span(step.start - planned.start()),
                              stepWords(plan->steps[step.step], preferences)});
    return sheet;
}

void LogSheetWindow::open(QWidget* parent, const FiringSession* session, const std::optional<Plan>& plan,
                          const Preferences& preferences) {
    auto* window = new LogSheetWindow(
        session ? logSheetOf(*session, preferences) : logSheetOf(plan, preferences), parent);
    window->setAttribute(Qt::WA_DeleteOnClose);
    window->show();
}

LogSheetWindow::LogSheetWindow(LogSheet sheet, QWidget* parent) : QDialog(parent), m_pane(new ReportPane) {
    setWindowTitle(tr("Blank log sheet"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(m_pane);
    const QString title = sheet.title.isEmpty() ? tr("Firing log") : sheet.title + tr(", blank log");
    m_pane->setPages(title, [sheet = std::move(sheet)](Paper paper) { return layOutLogSheet(sheet, paper); });
    m_pane->setFocus();
    m_pane->preview().fit(ReportPreview::Fit::page);
    resize(760, 760);
}

} // namespace ringhold
