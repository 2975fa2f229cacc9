#include "ui/plan/plan_list_view.h"

#include "core/plan/plan_examples.h"
#include "ui/plan/kept_plans_model.h"

#include <QAction>
#include <QHBoxLayout>
#include <QListView>
#include <QMenu>
#include <QPushButton>
#include <QVBoxLayout>

namespace ringhold {

namespace {

QPushButton* menuButton(const QString& text, const QString& name, const QString& objectName,
                        QWidget* parent) {
    auto* button = new QPushButton(text, parent);
    button->setObjectName(objectName);
    button->setAccessibleName(name);
    button->setToolTip(name);
    return button;
}

} // namespace

PlanListView::PlanListView(KeptPlansModel& plans, QWidget* parent)
    : QWidget(parent), m_plans(plans), m_list(new QListView(this)) {
    m_list->setObjectName(QStringLiteral("planList"));
    m_list->setAccessibleName(tr("Your plans"));
    m_list->setModel(&plans);
    m_list->setEditTriggers(QAbstractItemView::EditKeyPressed | QAbstractItemView::DoubleClicked);
    m_list->setSpacing(1);
    m_list->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Ignored); // as high as the buttons beside it
    auto* fresh = menuButton(tr("New plan"), tr("Begin a plan"), QStringLiteral("newPlan"), this);
    fresh->setMenu(makeNewMenu(fresh));
    auto* more = menuButton(tr("This plan"), tr("What else to do with the chosen plan"),
                            QStringLiteral("thisPlan"), this);
    more->setMenu(makeMoreMenu(more));
    auto* buttons = new QVBoxLayout;
    buttons->addWidget(fresh);
    buttons->addWidget(more);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(m_list, 1);
    row->addLayout(buttons);
    connect(m_list->selectionModel(), &QItemSelectionModel::currentChanged, this, [this] {
        showState();
        Q_EMIT chosen(current());
    });
    showState();
}

QMenu* PlanListView::makeNewMenu(QWidget* parent) {
    auto* menu = new QMenu(parent);
    menu->addAction(tr("Empty"), this, [this] { Q_EMIT planWanted({"New plan", {}}); });
    for (const auto& example : examplePlans())
        menu->addAction(tr("Example: %1").arg(QString::fromStdString(example.plan.name)), this,
                        [this, plan = example.plan] { Q_EMIT planWanted(plan); });
    menu->addSeparator();
    m_onAPlan << menu->addAction(tr("Copy of the chosen plan"), this, &PlanListView::copyWanted);
    menu->addAction(tr("From a plan file …"), this, &PlanListView::bringInWanted);
    return menu;
}

QMenu* PlanListView::makeMoreMenu(QWidget* parent) {
    auto* menu = new QMenu(parent);
    m_onAPlan << menu->addAction(tr("Rename"), this, &PlanListView::renameCurrent);
    m_onAPlan << menu->addAction(tr("Write to a plan file …"), this, &PlanListView::writeOutWanted);
    auto* remove = menu->addAction(tr("Remove"), this, &PlanListView::removeWanted);
    auto* removeByKey = new QAction(m_list);
    removeByKey->setShortcut(Qt::Key_Delete);
    removeByKey->setShortcutContext(Qt::WidgetShortcut);
    connect(removeByKey, &QAction::triggered, remove, &QAction::trigger);
    m_list->addAction(removeByKey);
    m_onAPlan << remove;
    return menu;
}

int PlanListView::current() const {
    const auto index = m_list->currentIndex();
    return index.isValid() ? index.row() : -1;
}

void PlanListView::select(int row) {
    m_list->setCurrentIndex(m_plans.index(row));
}

void PlanListView::renameCurrent() {
    m_list->setFocus();
    m_list->edit(m_list->currentIndex());
}

void PlanListView::showState() {
    for (auto* action : m_onAPlan)
        action->setEnabled(current() >= 0);
}

} // namespace ringhold
