#include "ui/spread/crystal_panel.h"

#include "ui/common/words_on_page.h"
#include "ui/plan/crystal_view.h"
#include "ui/session/firing_session.h"
#include "ui/session/preferences.h"
#include "ui/spread/live_crystal.h"

#include <QDoubleSpinBox>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QScrollArea>
#include <QVBoxLayout>

namespace ringhold {

namespace {

constexpr double farthest_mm = 200;

QLabel* wrapped() {
    auto* label = new QLabel;
    label->setWordWrap(true);
    label->setTextInteractionFlags(Qt::TextSelectableByMouse);
    return label;
}

} // namespace

CrystalPanel::CrystalPanel(const LiveCrystalModel& model, const Preferences& preferences, const Theme& theme,
                           QWidget* parent)
    : QFrame(parent), m_model(model), m_preferences(preferences), m_view(new CrystalView(theme)),
      m_figures(wrapped()), m_radius(new QDoubleSpinBox), m_answer(wrapped()) {
    setProperty("card", true);
    setAccessibleName(tr("Growth"));
    m_view->setObjectName(QStringLiteral("liveCrystalRings"));
    m_figures->setObjectName(QStringLiteral("crystalFigures"));
    m_figures->setAlignment(Qt::AlignTop);
    m_answer->setObjectName(QStringLiteral("dipAnswer"));
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(14, 8, 14, 8);
    row->setSpacing(14);
    row->addWidget(m_view, 2);
    auto* column = new QVBoxLayout;
    auto* scroll = new QScrollArea;
    scroll->setWidget(m_figures);
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->viewport()->setAutoFillBackground(false); // on the card's own paper
    m_figures->setAutoFillBackground(false);
    scroll->setAccessibleName(tr("The crystal’s figures"));
    column->addWidget(scroll, 1);
    auto* ask = new QHBoxLayout;
    auto* question = new QLabel(tr("A ring at"));
    question->setBuddy(m_radius);
    m_radius->setAccessibleName(tr("A ring how far out, mm"));
    m_radius->setRange(0.5, farthest_mm);
    m_radius->setDecimals(1);
    m_radius->setButtonSymbols(QAbstractSpinBox::NoButtons);
    m_radius->setValue(12);
    m_radius->setSuffix(QStringLiteral("\u202fmm"));
    ask->addWidget(question);
    ask->addWidget(m_radius);
    ask->addWidget(m_answer, 1);
    column->addLayout(ask);
    row->addLayout(column, 3);
    connect(m_radius, &QDoubleSpinBox::valueChanged, this, &CrystalPanel::answer);
    connect(&model, &LiveCrystalModel::changed, this, &CrystalPanel::refresh);
    connect(&preferences, &Preferences::changed, this, &CrystalPanel::refresh);
}

void CrystalPanel::begin() {
    m_radius->setFocus(Qt::ShortcutFocusReason);
    m_radius->selectAll();
}

void CrystalPanel::refresh() {
    if (!isVisible())
        return;
    const auto& crystal = m_model.crystal();
    m_view->show(crystal ? std::optional(crystal->drawn) : std::nullopt);
    QStringList lines;
    if (crystal) {
        lines << tr("The crystal is %1 now, %2.").arg(sizeWords(crystal->drawn), sourceWords(crystal->drawn))
              << ringLines(*crystal, m_preferences) << excursionLines(*crystal, m_preferences)
              << markerLine(*crystal, m_model.session().now(), m_preferences);
        lines.removeAll(QString());
    }
    m_figures->setText(lines.join(QLatin1Char('\n')));
    answer();
}

void CrystalPanel::answer() {
    const auto& crystal = m_model.crystal();
    m_answer->setText(crystal ? dipLine(*crystal, m_radius->value(), m_model.session().now(), m_preferences)
                              : QString());
    m_radius->setAccessibleDescription(m_answer->text());
}

void CrystalPanel::showEvent(QShowEvent* event) {
    QFrame::showEvent(event);
    refresh();
}

void CrystalPanel::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape)
        Q_EMIT folded();
    else
        QFrame::keyPressEvent(event);
}

} // namespace ringhold
