#include "ui/plan/plan_page.h"

#include "core/plan/plan_file.h"
#include "ui/common/undo_buttons.h"
#include "ui/common/words_on_page.h"
#include "ui/plan/plan_card_window.h"
#include "ui/plan/plan_files.h"
#include "ui/plan/plan_list_view.h"
#include "ui/plan/plan_message.h"
#include "ui/plan/plan_outlook.h"
#include "ui/plan/step_editor.h"
#include "ui/session/notebook.h"
#include "ui/theme/theme.h"

#include <QAction>
#include <QHBoxLayout>
#include <QVBoxLayout>

namespace ringhold {

PlanPage::PlanPage(Notebook& notebook, const Theme& theme, QWidget* parent)
    : QWidget(parent), m_notebook(notebook), m_theme(theme), m_kept(notebook),
      m_model(notebook.preferences()), m_files(new PlanFiles(*this)) {
    setObjectName(QStringLiteral("planPage"));
    QVBoxLayout* column = nullptr;
    auto* whole = new QVBoxLayout(this);
    whole->setContentsMargins(0, 0, 0, 0);
    whole->addWidget(sheet(column));
    auto* spread = new QHBoxLayout;
    spread->setSpacing(24);
    spread->addWidget(makeLeft());
    m_outlook = new PlanOutlook(notebook, m_model, theme, this);
    spread->addWidget(m_outlook);
    column->addLayout(spread);
    connectParts();
    addKeys();
    complain(m_kept.load(), tr("Your plans cannot be shown"));
    if (m_kept.rowCount() > 0)
        m_list->select(0);
    else
        choose(-1);
}

PlanPage::~PlanPage() = default;

QWidget* PlanPage::makeLeft() {
    auto* left = new QWidget(this);
    m_message = new PlanMessage(left);
    m_list = new PlanListView(m_kept, left);
    m_title = new Heading(m_theme, TextSize::large, {}, left);
    m_title->setObjectName(QStringLiteral("planTitle"));
    m_steps = new StepEditor(m_model, m_theme, left);
    auto* titleRow = new QHBoxLayout;
    titleRow->addWidget(m_title, 1);
    titleRow->addWidget(new UndoButtons(m_model.undoStack(), *this));
    auto* column = new QVBoxLayout(left);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(m_message);
    column->addWidget(m_list);
    column->addLayout(titleRow);
    column->addWidget(m_steps, 1);
    return left;
}

void PlanPage::connectParts() {
    connect(m_list, &PlanListView::chosen, this, &PlanPage::choose);
    connect(m_list, &PlanListView::planWanted, this, &PlanPage::addPlan);
    connect(m_list, &PlanListView::copyWanted, this, [this] { addPlan(m_model.plan()); });
    connect(m_list, &PlanListView::removeWanted, this, &PlanPage::removePlan);
    connect(m_list, &PlanListView::bringInWanted, m_files, &PlanFiles::askForPlanFile);
    connect(m_list, &PlanListView::writeOutWanted, this, &PlanPage::askWhereToWrite);
    connect(&m_kept, &KeptPlansModel::renameWanted, this, &PlanPage::renamePlan);
    connect(&m_model, &PlanModel::planChanged, this, &PlanPage::keep);
    connect(&m_model, &PlanModel::planChanged, this, &PlanPage::reckon);
    connect(&m_model, &PlanModel::refused, this, &PlanPage::warn);
    connect(m_files, &PlanFiles::refused, this, &PlanPage::warn);
    connect(m_files, &PlanFiles::brought, this, [this](const Plan& plan) {
        m_message->dismiss();
        addPlan(plan);
    });
    connect(m_files, &PlanFiles::written, this, [this](const QString& file) {
        m_message->say(PlanMessage::Tone::plain, tr("Written to %1").arg(file));
    });
    connect(m_steps, &StepEditor::currentStepChanged, this, [this](int row) {
        m_outlook->selectStep(row < 0 ? std::nullopt : std::optional(static_cast<std::size_t>(row)));
    });
    connect(m_outlook, &PlanOutlook::stepPicked, m_steps, &StepEditor::selectStep);
    connect(m_outlook, &PlanOutlook::basisChanged, this, &PlanPage::reckon);
    connect(m_outlook, &PlanOutlook::cardWanted, this, &PlanPage::showCard);
    connect(m_outlook, &PlanOutlook::refused, this, &PlanPage::warn);
}

void PlanPage::addKeys() {
    const auto add = [this](const QList<QKeySequence>& keys, auto what) {
        auto* action = new QAction(this);
        action->setShortcuts(keys);
        action->setShortcutContext(Qt::WidgetWithChildrenShortcut);
        connect(action, &QAction::triggered, this, what);
        addAction(action);
    };
    add({Qt::CTRL | Qt::Key_O}, [this] { m_files->askForPlanFile(); });
    add({Qt::CTRL | Qt::Key_S}, [this] { askWhereToWrite(); });
    add({Qt::CTRL | Qt::Key_P}, [this] { showCard(); });
    add({Qt::Key_Escape}, [this] { m_message->dismiss(); });
}

std::optional<Plan> PlanPage::plan() const {
    return m_row < 0 ? std::nullopt : std::optional(m_model.plan());
}

void PlanPage::warn(const QString& why) {
    m_message->say(PlanMessage::Tone::warning, why);
}

bool PlanPage::complain(const Status& status, const QString& what) {
    if (!status)
        warn(QStringLiteral("%1: %2").arg(what, QString::fromStdString(status.error().text())));
    return !status;
}

void PlanPage::choose(int row) {
    m_row = row;
    m_steps->setEnabled(row >= 0); // first: nothing is said of a plan that is none
    m_model.setPlan(row < 0 ? Plan() : m_kept.plan(row));
    if (row >= 0 && m_model.rowCount() > 0)
        m_steps->selectStep(0);
}

void PlanPage::keep() {
    showTitle();
    if (m_row < 0 || formatPlan(m_model.plan()) == formatPlan(m_kept.plan(m_row)))
        return;
    complain(m_kept.replace(m_row, m_model.plan()), tr("This change is not in the book"));
}

void PlanPage::addPlan(const Plan& plan) {
    const auto row = m_kept.insert(m_row < 0 ? m_kept.rowCount() : m_row + 1, plan);
    if (!row) {
        complain(row.error(), tr("The plan is not in the book"));
        return;
    }
    m_list->select(*row);
}

void PlanPage::removePlan() {
    if (m_row < 0)
        return;
    const int row = m_row;
    const Plan plan = m_model.plan();
    m_row = -1; // so that nothing is written for a row that goes
    if (complain(m_kept.remove(row), tr("The plan stays in the book"))) {
        m_row = row;
        return;
    }
    choose(m_list->current());
    m_message->say(PlanMessage::Tone::plain,
                   tr("“%1” is out of the book.").arg(QString::fromStdString(plan.name)), tr("Bring back"),
                   [this, row, plan] {
                       if (const auto back = m_kept.insert(row, plan))
                           m_list->select(*back);
                   });
}

void PlanPage::renamePlan(int row, const QString& name) {
    for (int other = 0; other < m_kept.rowCount(); ++other) {
        if (other != row && m_kept.plan(other).name == name.toStdString()) {
            m_message->say(PlanMessage::Tone::warning, tr("Another plan is called “%1” already.").arg(name));
            return;
        }
    }
    m_list->select(row);
    m_model.rename(name);
}

void PlanPage::bringIn(const QString& file) {
    m_files->bringIn(file);
}

void PlanPage::writeOut(const QString& file) {
    m_files->writeOut(m_model.plan(), file);
}

void PlanPage::askWhereToWrite() {
    if (m_row >= 0)
        m_files->askWhereToWrite(m_model.plan());
}

PlanCardWindow* PlanPage::showCard() {
    if (!m_outlook->drawn())
        return nullptr;
    auto* card = new PlanCardWindow(m_model.plan(), m_outlook->basis(), m_notebook.clock().now(),
                                    m_notebook.preferences(), this);
    card->show();
    return card;
}

void PlanPage::reckon() {
    m_outlook->reckon(m_row >= 0);
}

void PlanPage::reckonEnergy() {
    m_outlook->reckonEnergy();
}

void PlanPage::showTitle() {
    m_title->say(m_row < 0 ? tr("No plans yet") : QString::fromStdString(m_model.plan().name));
}

} // namespace ringhold
