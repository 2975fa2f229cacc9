#include "ui/start/plan_choice.h"

#include "core/book/kept_plans.h"
#include "core/plan/plan_check.h"
#include "core/plan/plan_examples.h"
#include "core/plan/plan_file.h"
#include "ui/session/notebook.h"

#include <QFileDialog>
#include <QStandardItemModel>

#include <algorithm>

namespace ringhold {

PlanChoice::PlanChoice(Notebook& notebook, QWidget* parent) : QComboBox(parent), m_notebook(notebook) {
    setAccessibleName(tr("Plan"));
    setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    setMinimumContentsLength(20);
    load();
    const auto sound = std::ranges::find_if(m_plans, [](const Plan& p) { return check(p).ok(); });
    setCurrentIndex(sound == m_plans.end() ? 0 : 1 + static_cast<int>(sound - m_plans.begin()));
    m_before = currentIndex();
    connect(this, &QComboBox::activated, this, [this](int index) {
        if (index == count() - 1)
            return chooseFile();
        m_before = index;
        Q_EMIT chosen();
    });
}

std::optional<Plan> PlanChoice::plan() const {
    const int index = currentIndex() - 1;
    return index >= 0 && index < static_cast<int>(m_plans.size())
               ? std::optional(m_plans[static_cast<std::size_t>(index)])
               : std::nullopt;
}

void PlanChoice::showEvent(QShowEvent* event) {
    QComboBox::showEvent(event);
    const auto before = plan();
    load();
    const auto named = [&](const Plan& p) { return before && p.name == before->name; };
    const auto found = std::ranges::find_if(m_plans, named);
    if (found != m_plans.end())
        setCurrentIndex(1 + static_cast<int>(found - m_plans.begin()));
    m_before = currentIndex();
}

void PlanChoice::load() {
    clear();
    m_plans.clear();
    addItem(tr("no plan"));
    for (const auto& plan : m_fromFiles)
        offer(plan, tr("from a file"));
    if (const auto kept = keptPlans(m_notebook.reader()))
        for (const auto& plan : *kept)
            offer(plan, tr("yours"));
    for (const auto& example : examplePlans())
        offer(example.plan, tr("example"));
    addItem(tr("from a plan file …"));
}

/// A draft with faults is shown and cannot be chosen. Of two that are called the same, the first.
void PlanChoice::offer(const Plan& plan, const QString& kind) {
    if (std::ranges::any_of(m_plans, [&](const Plan& p) { return p.name == plan.name; }))
        return;
    const bool sound = check(plan).ok();
    m_plans.push_back(plan);
    const QString name = QString::fromStdString(plan.name);
    addItem(sound ? tr("%1 · %2").arg(name, kind) : tr("%1 · has a fault").arg(name));
    if (auto* items = qobject_cast<QStandardItemModel*>(model()); items && !sound)
        items->item(count() - 1)->setEnabled(false);
}

void PlanChoice::chooseFile() {
    setCurrentIndex(m_before);
    auto* dialog = new QFileDialog(this, tr("A plan file"), {}, tr("Plans (*.json)"));
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->setFileMode(QFileDialog::ExistingFile);
    connect(dialog, &QFileDialog::fileSelected, this, [this](const QString& file) {
        if (const auto taken = takeFile(file); !taken)
            Q_EMIT refused(QString::fromStdString(taken.error().text()));
    });
    dialog->open();
}

Status PlanChoice::takeFile(const QString& file) {
    const auto plan = readPlan(file.toStdString());
    if (!plan)
        return plan.error();
    std::erase_if(m_fromFiles, [&](const Plan& p) { return p.name == plan->name; });
    m_fromFiles.push_back(*plan);
    load();
    const auto found = std::ranges::find(m_plans, plan->name, &Plan::name);
    m_before = 1 + static_cast<int>(found - m_plans.begin());
    setCurrentIndex(m_before);
    Q_EMIT chosen();
    return {};
}

} // namespace ringhold
