#include "ui/plan/plan_outlook.h"

#include "ui/common/unit_button.h"
#include "ui/common/words_on_page.h"
#include "ui/plan/basis_chooser.h"
#include "ui/plan/crystal_view.h"
#include "ui/plan/figures_view.h"
#include "ui/plan/plan_curve_view.h"
#include "ui/plan/plan_model.h"
#include "ui/plan/rehearsal_view.h"
#include "ui/session/notebook.h"
#include "ui/theme/theme.h"

#include <QHBoxLayout>
#include <QPushButton>
#include <QTabBar>
#include <QTabWidget>
#include <QVBoxLayout>

namespace ringhold {

namespace {

constexpr int typingPause_ms = 200;
constexpr int narrowest = 320;
/// Below this the crystal is told in words alone.
constexpr int roomForCrystal = 546;

} // namespace

PlanOutlook::PlanOutlook(Notebook& notebook, PlanModel& model, const Theme& theme, QWidget* parent)
    : QWidget(parent), m_notebook(notebook), m_model(model), m_basis(new BasisChooser(notebook, this)),
      m_curve(new PlanCurveView(theme, notebook.preferences(), this)),
      m_rehearsal(new RehearsalView(notebook)), m_figures(new FiguresView(this)),
      m_crystal(new CrystalView(theme, this)), m_card(new QPushButton(tr("Plan card …"), this)) {
    setMinimumWidth(narrowest);
    setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred); // takes what the table leaves
    m_typingPause.setSingleShot(true);
    m_typingPause.setInterval(typingPause_ms);
    m_card->setObjectName(QStringLiteral("planCard"));
    m_card->setAccessibleName(tr("Plan card to print"));
    auto* unit = new UnitButton(notebook.preferences(), this);
    auto* titleRow = new QHBoxLayout;
    titleRow->addWidget(new Heading(theme, TextSize::large, tr("What it will draw"), this), 1);
    titleRow->addWidget(unit);
    titleRow->addWidget(m_card);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addLayout(titleRow);
    column->addWidget(m_curve, 1);
    column->addWidget(m_basis);
    column->addWidget(makeReckoned());
    connect(unit, &UnitButton::refused, this, &PlanOutlook::refused);
    connect(m_curve, &PlanCurveView::stepPicked, this, &PlanOutlook::stepPicked);
    connect(m_basis, &BasisChooser::changed, this, &PlanOutlook::basisChanged);
    connect(m_basis, &BasisChooser::bandWanted, &m_model, &PlanModel::holdGrowthWithin);
    connect(m_rehearsal, &RehearsalView::rehearsed, this,
            [this](const auto& rehearsal) { m_curve->showRehearsal(rehearsal); });
    connect(m_card, &QPushButton::clicked, this, &PlanOutlook::cardWanted);
    connect(&m_typingPause, &QTimer::timeout, this, &PlanOutlook::reckonEnergy);
    connect(&notebook.preferences(), &Preferences::changed, this, &PlanOutlook::showFigures);
}

QWidget* PlanOutlook::makeReckoned() {
    auto* figures = new QWidget;
    auto* row = new QHBoxLayout(figures);
    row->setContentsMargins(0, 4, 0, 0);
    row->addWidget(m_figures, 1);
    row->addWidget(m_crystal);
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

const PlanBasis& PlanOutlook::basis() const {
    return m_basis->basis();
}

void PlanOutlook::selectStep(std::optional<std::size_t> step) {
    m_curve->selectStep(step);
}

void PlanOutlook::reckon(bool any) {
    m_energy.reset();
    m_planned.reset();
    m_model.setConeType(basis().cones);
    m_card->setEnabled(any && m_model.isSound());
    if (!any)
        m_curve->showNothing(tr("No plan is chosen. Begin one under “New plan”."));
    else if (!m_model.isSound())
        m_curve->showNothing(tr("The curve is drawn when the plan has no fault."));
    else
        showPlanned();
    m_rehearsal->show(m_planned ? std::optional(m_model.plan()) : std::nullopt, basis());
    showFigures();
}

void PlanOutlook::showPlanned() {
    const auto& plan = m_model.plan();
    m_planned = planCurve(plan, contextOf(basis(), plan));
    std::vector<Duration> durations;
    for (const auto& step : m_planned->steps)
        durations.push_back(step.end - step.start);
    m_curve->show(plan, *m_planned);
    m_model.setDurations(std::move(durations));
    m_typingPause.start();
}

void PlanOutlook::reckonEnergy() {
    m_typingPause.stop();
    if (!m_planned || !hasEnergyModel(basis()))
        return;
    m_energy = planEnergy(*m_planned, contextOf(basis(), m_model.plan()));
    m_curve->showKiln(*m_energy);
    showFigures();
}

void PlanOutlook::showFigures() {
    showCrystal();
    if (!m_planned) {
        m_figures->show({}, {});
        return;
    }
    const auto* energy = m_energy ? &*m_energy : nullptr;
    const auto& preferences = m_notebook.preferences();
    m_figures->show(planFigures(m_model.plan(), *m_planned, energy, basis(), preferences),
                    planWarnings(m_model.plan(), *m_planned, energy, basis(), preferences));
}

void PlanOutlook::showCrystal() {
    const bool hasRoom = height() >= roomForCrystal;
    m_crystal->show(hasRoom && m_planned ? planCrystal(m_model.plan(), *m_planned, basis()) : std::nullopt);
}

void PlanOutlook::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    if ((height() >= roomForCrystal) == m_crystal->isHidden())
        showCrystal();
}

} // namespace ringhold
