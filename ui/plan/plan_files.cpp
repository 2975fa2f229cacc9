#include "ui/plan/plan_files.h"

#include "core/exchange/file.h"
#include "core/plan/plan_check.h"
#include "core/plan/plan_file.h"

#include <QFileDialog>

namespace ringhold {

namespace {

QString planFilter() {
    return PlanFiles::tr("Plan files (*.json)");
}

QString because(const QString& what, const Error& error) {
    return QStringLiteral("%1: %2").arg(what, QString::fromStdString(error.text()));
}

} // namespace

PlanFiles::PlanFiles(QWidget& page) : QObject(&page), m_page(page) {}

void PlanFiles::bringIn(const QString& file) {
    const auto plan = readPlan(file.toStdString());
    if (plan)
        Q_EMIT brought(*plan);
    else
        Q_EMIT refused(because(tr("No plan was brought in"), plan.error()));
}

void PlanFiles::writeOut(const Plan& plan, const QString& file) {
    if (const auto sound = check(plan); !sound)
        return Q_EMIT refused(because(tr("A plan with faults is not written to a file"), sound.error()));
    const auto kept = writeFile(file.toStdString(), formatPlan(plan));
    if (kept)
        Q_EMIT written(file);
    else
        Q_EMIT refused(because(tr("Not written"), kept.error()));
}

void PlanFiles::askForPlanFile() {
    auto* dialog = new QFileDialog(&m_page, tr("A plan file to take into the book"));
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->setFileMode(QFileDialog::ExistingFile);
    dialog->setNameFilters({planFilter(), tr("All files (*)")});
    connect(dialog, &QFileDialog::fileSelected, this, &PlanFiles::bringIn);
    dialog->show();
}

void PlanFiles::askWhereToWrite(const Plan& plan) {
    auto* dialog = new QFileDialog(&m_page, tr("Write the plan to a file"));
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->setAcceptMode(QFileDialog::AcceptSave);
    dialog->setNameFilter(planFilter());
    dialog->setDefaultSuffix(QStringLiteral("json"));
    connect(dialog, &QFileDialog::fileSelected, this,
            [this, plan](const QString& file) { writeOut(plan, file); });
    dialog->show();
}

} // namespace ringhold
