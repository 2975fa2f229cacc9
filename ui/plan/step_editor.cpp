#include "ui/plan/step_editor.h"

#include "ui/plan/plan_model.h"
#include "ui/plan/step_delegate.h"
#include "ui/theme/theme.h"

#include <QAction>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QMenu>
#include <QPushButton>
#include <QTableView>
#include <QVBoxLayout>

namespace ringhold {

namespace {

constexpr int mostFaultsShown = 3;
constexpr int narrowestTable = 300;

QPushButton* buttonFor(QAction* action, QWidget* parent) {
    auto* button = new QPushButton(action->text(), parent);
    button->setAccessibleName(action->toolTip());
    button->setToolTip(QStringLiteral("%1 (%2)").arg(action->toolTip(),
                                                     action->shortcut().toString(QKeySequence::NativeText)));
    QObject::connect(button, &QPushButton::clicked, action, &QAction::trigger);
    QObject::connect(action, &QAction::changed, button,
                     [button, action] { button->setEnabled(action->isEnabled()); });
    return button;
}

} // namespace

StepEditor::StepEditor(PlanModel& model, const Theme& theme, QWidget* parent)
    : QWidget(parent), m_model(model), m_theme(theme), m_table(new QTableView(this)),
      m_faults(new QLabel(this)) {
    makeTable();
    m_faults->setObjectName(QStringLiteral("planFaults"));
    m_faults->setAccessibleName(tr("What is wrong with the plan"));
    m_faults->setWordWrap(true);
    m_faults->setProperty("ground", QStringLiteral("warning"));
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_table, 1);
    layout->addWidget(m_faults);
    layout->addWidget(makeButtons());
    connect(&m_model, &PlanModel::planChanged, this, &StepEditor::showFaults);
    connect(&m_model, &PlanModel::dataChanged, this, &StepEditor::showFaults);
    connect(m_table->selectionModel(), &QItemSelectionModel::currentChanged, this, [this] {
        showState();
        Q_EMIT currentStepChanged(currentStep());
    });
    showFaults();
    showState();
}

void StepEditor::makeTable() {
    m_table->setObjectName(QStringLiteral("planSteps"));
    m_table->setAccessibleName(tr("Steps of the plan"));
    m_table->setModel(&m_model);
    m_table->setItemDelegate(new StepDelegate(m_theme, this));
    m_table->setEditTriggers(QAbstractItemView::AnyKeyPressed | QAbstractItemView::DoubleClicked |
                             QAbstractItemView::EditKeyPressed | QAbstractItemView::SelectedClicked);
    m_table->setSelectionMode(QAbstractItemView::SingleSelection);
    m_table->setShowGrid(false);
    m_table->setWordWrap(false);
    m_table->setMinimumSize(narrowestTable, 110);
    m_table->setSizeAdjustPolicy(QAbstractScrollArea::AdjustToContents); // wants all columns side by side
    m_table->setCornerButtonEnabled(false);
    m_table->setStyleSheet(
        QStringLiteral("QTableCornerButton::section { background: transparent; border: none; }"));
    m_table->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    m_table->horizontalHeader()->setHighlightSections(false);
    m_table->horizontalHeader()->setMinimumSectionSize(30);
    m_table->verticalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    m_table->verticalHeader()->setHighlightSections(false);
}

QAction* StepEditor::addAction(const QString& text, const QKeySequence& keys, void (StepEditor::*what)()) {
    auto* action = new QAction(text, m_table);
    action->setShortcut(keys);
    action->setShortcutContext(Qt::WidgetShortcut);
    connect(action, &QAction::triggered, this, what);
    m_table->addAction(action);
    return action;
}

QWidget* StepEditor::makeButtons() {
    auto* buttons = new QWidget(this);
    auto* row = new QHBoxLayout(buttons);
    row->setContentsMargins(0, 0, 0, 0);
    auto* add = new QPushButton(tr("Add step"), buttons);
    add->setObjectName(QStringLiteral("addStep"));
    add->setAccessibleName(tr("Add a step below the chosen one"));
    add->setToolTip(tr("Add a step below the chosen one (Ins)"));
    auto* kinds = new QMenu(add);
    for (int kind = 0; kind < stepKinds; ++kind)
        kinds->addAction(kindWords(static_cast<StepKind>(kind)), this,
                         [this, kind] { addStep(static_cast<StepKind>(kind)); });
    add->setMenu(kinds);
    auto* open = new QAction(tr("Add step"), m_table);
    open->setShortcut(Qt::Key_Insert);
    open->setShortcutContext(Qt::WidgetShortcut);
    connect(open, &QAction::triggered, add, [add] { add->menu()->popup(add->mapToGlobal(QPoint())); });
    m_table->addAction(open);

    m_remove = addAction(tr("Remove"), Qt::Key_Delete, &StepEditor::removeStep);
    m_remove->setToolTip(tr("Remove the chosen step"));
    m_up = addAction(tr("Up"), Qt::ALT | Qt::Key_Up, &StepEditor::moveUp);
    m_up->setToolTip(tr("Move the chosen step up"));
    m_down = addAction(tr("Down"), Qt::ALT | Qt::Key_Down, &StepEditor::moveDown);
    m_down->setToolTip(tr("Move the chosen step down"));
    row->addWidget(add);
    for (auto* action : {m_remove, m_up, m_down})
        row->addWidget(buttonFor(action, buttons));
    row->addStretch(1);
    return buttons;
}

int StepEditor::currentStep() const {
    const auto current = m_table->currentIndex();
    return current.isValid() ? current.row() : -1;
}

void StepEditor::selectStep(int row) {
    const int column = std::max(0, m_table->currentIndex().column());
    m_table->setCurrentIndex(m_model.index(row, column));
}

void StepEditor::addStep(StepKind kind) {
    const int row = currentStep() < 0 ? m_model.rowCount() : currentStep() + 1;
    m_model.addStep(kind, row);
    selectStep(row);
    m_table->setFocus();
}

void StepEditor::removeStep() {
    const int row = currentStep();
    m_model.removeStep(row);
    selectStep(std::min(row, m_model.rowCount() - 1));
}

void StepEditor::moveUp() {
    m_model.moveStep(currentStep(), currentStep() - 1);
    showState();
}

void StepEditor::moveDown() {
    m_model.moveStep(currentStep(), currentStep() + 1);
    showState();
}

void StepEditor::showFaults() {
    QStringList words;
    for (const auto& fault : m_model.faults())
        words << withItsStep(fault);
    const auto more = words.size() - mostFaultsShown;
    if (more > 0) {
        words = words.first(mostFaultsShown);
        words << tr("and %1 more").arg(more);
    }
    m_faults->setText(words.join(QLatin1Char('\n')));
    m_faults->setVisible(isEnabled() && !words.isEmpty());
    showState();
}

void StepEditor::showState() {
    if (!m_remove)
        return;
    const int row = currentStep();
    m_remove->setEnabled(row >= 0);
    m_up->setEnabled(row > 0);
    m_down->setEnabled(row >= 0 && row + 1 < m_model.rowCount());
}

} // namespace ringhold
