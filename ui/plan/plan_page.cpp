#include "ui/plan/plan_page.h"

#include "core/plan/plan_file.h"
#include "ui/common/undo_buttons.h"
#include "ui/common/unit_button.h"
#include "ui/common/words_on_page.h"
#include "ui/plan/basis_chooser.h"
#include "ui/plan/crystal_view.h"
#include "ui/plan/figures_view.h"
#include "ui/plan/plan_card_window.h"
#include "ui/plan/plan_curve_view.h"
#include "ui/plan/plan_files.h"
#include "ui/plan/plan_list_view.h"
#include "ui/plan/plan_message.h"
#include "ui/plan/rehearsal_view.h"
#include "ui/plan/step_editor.h"
#include "ui/session/notebook.h"
#include "ui/theme/theme.h"

#include <QAction>
#include <QHBoxLayout>
#include <QPushButton>
#include <QTabBar>
#include <QTabWidget>
#include <QVBoxLayout>

#include <algorithm>

namespace ringhold {

namespace {

constexpr int typingPause_ms = 200;
constexpr int narrowestRight = 320;
/// Below this the crystal is told in words alone.
constexpr int roomForCrystal = 580;

} // namespace

PlanPage::PlanPage(Notebook& notebook, const Theme& theme, QWidget* parent)
    : QWidget(parent), m_notebook(notebook), m_theme(theme), m_kept(notebook),
      m_model(notebook.preferences()), m_files(new PlanFiles(*this)) {
    setObjectName(QStringLiteral("planPage"));
    m_typingPause.setSingleShot(true);
    m_typingPause.setInterval(typingPause_ms);
    QVBoxLayout* column = nullptr;
    auto* whole = new QVBoxLayout(this);
    whole->setContentsMargins(0, 0, 0, 0);
    whole->addWidget(sheet(column));
    auto* spread = new QHBoxLayout;
    spread->setSpacing(24);
    spread->addWidget(makeLeft());
    spread->addWidget(makeRight());
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

QWidget* PlanPage::makeRight() {
    auto* right = new QWidget(this);
    right->setMinimumWidth(narrowestRight);
    right->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred); // takes what the table leaves
    m_card = new QPushButton(tr("Plan card …"), right);
    m_card->setObjectName(QStringLiteral("planCard"));
    m_card->setAccessibleName(tr("Plan card to print"));
    m_curve = new PlanCurveView(m_theme, m_notebook.preferences(), right);
    m_basis = new BasisChooser(m_notebook, right);
    m_figures = new FiguresView(right);
    m_crystal = new CrystalView(m_theme, right);
    auto* titleRow = new QHBoxLayout;
    titleRow->addWidget(new Heading(m_theme, TextSize::large, tr("What it will draw"), right), 1);
    auto* unit = new UnitButton(m_notebook.preferences(), right);
    connect(unit, &UnitButton::refused, this, &PlanPage::warn);
    titleRow->addWidget(unit);
    titleRow->addWidget(m_card);
    auto* column = new QVBoxLayout(right);
    column->setContentsMargins(0, 0, 0, 0);
    column->addLayout(titleRow);
    column->addWidget(m_curve, 1);
    column->addWidget(m_basis);
    column->addWidget(makeReckoned());
    return right;
}

QWidget* PlanPage::makeReckoned() {
    auto* figures = new QWidget;
    auto* row = new QHBoxLayout(figures);
    row->setContentsMargins(0, 4, 0, 0);
    row->addWidget(m_figures, 1);
    row->addWidget(m_crystal);
    m_rehearsal = new RehearsalView(m_notebook);
    auto* tabs = new QTabWidget;
    tabs->setObjectName(QStringLiteral("planReckoned"));
    tabs->setDocumentMode(true);
    tabs->setAccessibleName(tr("What is reckoned from the plan"));
    tabs->tabBar()->setAccessibleName(tr("What is reckoned from the plan"));
    tabs->addTab(figures, tr("F&igures"));
    tabs->addTab(m_rehearsal, tr("Re&hearsal"));
    tabs->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Maximum);
    return tabs;
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
        m_curve->selectStep(row < 0 ? std::nullopt : std::optional(static_cast<std::size_t>(row)));
    });
    connect(m_curve, &PlanCurveView::stepPicked, m_steps, &StepEditor::selectStep);
    connect(m_basis, &BasisChooser::changed, this, &PlanPage::reckon);
    connect(m_basis, &BasisChooser::bandWanted, &m_model, &PlanModel::holdGrowthWithin);
    connect(m_rehearsal, &RehearsalView::rehearsed, this,
            [this](const auto& rehearsal) { m_curve->showRehearsal(rehearsal); });
    connect(m_card, &QPushButton::clicked, this, &PlanPage::showCard);
    connect(&m_typingPause, &QTimer::timeout, this, &PlanPage::reckonEnergy);
    connect(&m_notebook.preferences(), &Preferences::changed, this, &PlanPage::showFigures);
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
    m_model.setPlan(row < 0 ? Plan() : m_kept.plan(row));
    m_steps->setEnabled(row >= 0);
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
    if (!m_planned)
        return nullptr;
    auto* card = new PlanCardWindow(m_model.plan(), m_basis->basis(), m_notebook.clock().now(),
                                    m_notebook.preferences(), this);
    card->show();
    return card;
}

void PlanPage::reckon() {
    m_energy.reset();
    m_planned.reset();
    m_model.setConeType(m_basis->basis().cones);
    m_card->setEnabled(m_row >= 0 && m_model.isSound());
    if (m_row < 0) {
        m_curve->showNothing(tr("No plan is chosen. Begin one under “New plan”."));
    } else if (!m_model.isSound()) {
        m_curve->showNothing(tr("The curve is drawn when the plan has no fault."));
    } else {
        const auto& plan = m_model.plan();
        m_planned = planCurve(plan, contextOf(m_basis->basis(), plan));
        std::vector<Duration> durations;
        for (const auto& step : m_planned->steps)
            durations.push_back(step.end - step.start);
        m_curve->show(plan, *m_planned);
        m_model.setDurations(std::move(durations));
        m_typingPause.start();
    }
    m_rehearsal->show(m_planned ? plan() : std::nullopt, m_basis->basis());
    showFigures();
}

void PlanPage::reckonEnergy() {
    m_typingPause.stop();
    if (!m_planned || !hasEnergyModel(m_basis->basis()))
        return;
    m_energy = planEnergy(*m_planned, contextOf(m_basis->basis(), m_model.plan()));
    m_curve->showKiln(*m_energy);
    showFigures();
}

void PlanPage::showFigures() {
    showCrystal();
    if (!m_planned) {
        m_figures->show({}, {});
        return;
    }
    const auto* energy = m_energy ? &*m_energy : nullptr;
    const auto& basis = m_basis->basis();
    m_figures->show(planFigures(m_model.plan(), *m_planned, energy, basis, m_notebook.preferences()),
                    planWarnings(m_model.plan(), *m_planned, energy, basis, m_notebook.preferences()));
}

void PlanPage::showCrystal() {
    const bool hasRoom = height() >= roomForCrystal;
    m_crystal->show(hasRoom && m_planned ? planCrystal(m_model.plan(), *m_planned, m_basis->basis())
                                         : std::nullopt);
}

void PlanPage::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    if ((height() >= roomForCrystal) == m_crystal->isHidden())
        showCrystal();
}

void PlanPage::showTitle() {
    m_title->say(m_row < 0 ? tr("No plans yet") : QString::fromStdString(m_model.plan().name));
}

} // namespace ringhold
