#include "ui/plan/rehearsal_view.h"

#include "core/plan/plan_check.h"
#include "ui/common/fitted_table.h"
#include "ui/common/words_on_page.h"
#include "ui/plan/plan_figures.h"
#include "ui/plan/rehearsal_model.h"
#include "ui/session/notebook.h"

#include <QDoubleSpinBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QVBoxLayout>

namespace ringhold {

namespace {

constexpr int typingPause_ms = 400;
constexpr double usualVolts = 230;
constexpr double mostMore_kg = 400;

} // namespace

RehearsalView::RehearsalView(Notebook& notebook, QWidget* parent)
    : QWidget(parent), m_notebook(notebook), m_basis(typicalBasis()), m_fields(new QWidget),
      m_words(softLabel()), m_warnings(new QLabel), m_steps(new RehearsalModel(notebook.preferences(), this)),
      m_table(new FittedTable) {
    auto* row = new QHBoxLayout(m_fields);
    row->setContentsMargins(0, 0, 0, 0);
    m_load = addField(tr("&Load against the usual"), tr("Load more or less than usual, kg"), tr(" kg"));
    m_load->setRange(-mostMore_kg, mostMore_kg);
    m_load->setSingleStep(5);
    m_line = addField(tr("l&ine"), tr("Line volts today"), tr(" V"));
    m_line->setRange(90, 480);
    m_line->setValue(usualVolts);
    row->addStretch(1);
    m_warnings->setProperty("tone", QStringLiteral("warning"));
    m_warnings->setWordWrap(true);
    m_table->setModel(m_steps);
    m_table->setAccessibleName(tr("Steps as rehearsed"));
    m_table->setColumns({{16, 2}, {21, 1}, {11, 0}, {12, 0}});
    m_table->setShowGrid(false);
    m_table->setMinimumHeight(80);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 4, 0, 0);
    column->setSpacing(4);
    column->addWidget(m_fields);
    column->addWidget(m_words);
    column->addWidget(m_warnings);
    column->addWidget(m_table, 1);
    column->addStretch();
    m_soon.setSingleShot(true);
    m_soon.setInterval(typingPause_ms);
    for (auto* field : {m_load, m_line})
        connect(field, &QDoubleSpinBox::valueChanged, &m_soon, qOverload<>(&QTimer::start));
    connect(&m_soon, &QTimer::timeout, this, &RehearsalView::rehearseNow);
    connect(&notebook, &Notebook::bookChanged, this, [this] {
        m_fit.reset();
        m_soon.start();
    });
    connect(&notebook.preferences(), &Preferences::changed, &m_soon, qOverload<>(&QTimer::start));
    sayOnly({});
}

QDoubleSpinBox* RehearsalView::addField(const QString& words, const QString& name, const QString& unit) {
    auto* label = new QLabel(words);
    label->setProperty("tone", QStringLiteral("soft"));
    auto* field = new QDoubleSpinBox;
    field->setDecimals(0);
    field->setSuffix(unit);
    field->setAccessibleName(name);
    label->setBuddy(field);
    m_fields->layout()->addWidget(label);
    m_fields->layout()->addWidget(field);
    return field;
}

void RehearsalView::show(const std::optional<Plan>& plan, const PlanBasis& basis) {
    const auto idOf = [](const PlanBasis& b) { return b.kiln ? std::optional(b.kiln->id) : std::nullopt; };
    const bool another = idOf(basis) != idOf(m_basis);
    m_work.forget();
    m_plan = plan && check(*plan) ? plan : std::nullopt;
    m_basis = basis;
    if (another)
        takeKiln();
    m_soon.start();
}

void RehearsalView::takeKiln() {
    m_fit.reset();
    if (m_basis.kiln && m_basis.kiln->ratedVolts)
        m_line->setValue(m_basis.kiln->ratedVolts->volts);
}

void RehearsalView::rehearseNow() {
    m_soon.stop();
    m_work.forget();
    if (!m_plan)
        return sayOnly(tr("A plan without faults can be rehearsed."));
    if (!m_basis.kiln)
        return sayOnly(tr("Choose one of your kilns: a plan is rehearsed on what its past firings showed."));
    if (!hasEnergyModel(m_basis))
        return sayOnly(tr("There is no model of a kiln that burns its fuel."));
    if (!m_fit)
        m_words->setText(tr("The kiln is being fitted to its past firings …"));
    const RehearsalWish wish{*m_plan, *m_basis.kiln, Volts{m_line->value()}, m_load->value(),
                             m_basis.offset.prior};
    m_work.ask(
        [file = m_notebook.file(), wish, known = m_fit] { return rehearseFromBook(file, wish, known); },
        [this, plan = *m_plan](const Result<RehearsalTold>& told) { tell(plan, told); });
}

void RehearsalView::sayOnly(const QString& words) {
    m_fields->hide();
    m_table->hide();
    m_warnings->hide();
    m_words->setText(words);
    Q_EMIT rehearsed(std::nullopt);
}

void RehearsalView::tell(const Plan& plan, const Result<RehearsalTold>& told) {
    if (!told)
        return sayOnly(QString::fromStdString(told.error().text()));
    m_fit = told->fit;
    if (!told->rehearsal)
        return sayOnly(
            tr("Not enough firings yet: %1 of this kiln tell volts and amps, or duty, all through; a "
               "rehearsal wants %2.")
                .arg(told->firings)
                .arg(firingsToRehearse));
    const auto& preferences = m_notebook.preferences();
    const auto warnings = rehearsalWarnings(plan, *told->rehearsal, preferences);
    m_words->setText(rehearsalWords(*told->rehearsal, *m_basis.kiln, preferences) + QStringLiteral(" · ") +
                     tr("by %1 past firings, 90 % ranges").arg(told->firings));
    m_warnings->setText(warnings.join(QLatin1Char('\n')));
    m_warnings->setVisible(!warnings.isEmpty());
    m_steps->show(plan, told->rehearsal->steps);
    m_table->setFont(m_words->font());
    m_fields->show();
    m_table->show();
    Q_EMIT rehearsed(told->rehearsal);
}

} // namespace ringhold
