#include "ui/spread/supply_line.h"

#include "ui/session/firing_session.h"
#include "ui/session/preferences.h"
#include "ui/theme/theme.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QToolButton>

namespace ringhold {

namespace {

constexpr int tick_ms = 1000;
constexpr int reckon_ms = 30'000;
const QString gap = QStringLiteral(" &nbsp;·&nbsp; ");

QLabel* richLabel() {
    auto* label = new QLabel;
    label->setTextFormat(Qt::RichText);
    label->setWordWrap(true);
    return label;
}

} // namespace

SupplyLine::SupplyLine(const FiringSession& session, const Preferences& preferences, const Theme& theme,
                       QWidget* parent)
    : QWidget(parent), m_session(session), m_preferences(preferences), m_theme(theme), m_now(richLabel()),
      m_energyWords(richLabel()), m_meter(new QToolButton) {
    setAccessibleName(tr("Power and atmosphere"));
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(8, 0, 8, 0);
    row->setSpacing(14);
    row->addWidget(m_now, 1);
    row->addWidget(m_energyWords, 1);
    row->addWidget(m_meter, 0, Qt::AlignTop);
    m_now->setObjectName(QStringLiteral("supplyNow"));
    m_energyWords->setObjectName(QStringLiteral("supplyEnergy"));
    m_energyWords->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
    m_meter->setText(tr("Meter"));
    m_meter->setToolTip(tr("Writes down what the electricity or gas meter shows (Ctrl+M)"));
    m_meter->setAccessibleName(tr("Write a meter’s stand"));
    m_meter->setProperty("choice", true);
    m_meter->setProperty("size", QStringLiteral("small"));
    connect(m_meter, &QToolButton::clicked, this, &SupplyLine::meterWanted);
    connect(&session, &FiringSession::linesChanged, this, &SupplyLine::reckon);
    connect(&preferences, &Preferences::changed, this, &SupplyLine::refresh);
    connect(&theme, &Theme::changed, this, &SupplyLine::dress);
    connect(&m_tick, &QTimer::timeout, this, &SupplyLine::refresh);
    connect(&m_reckon, &QTimer::timeout, this, &SupplyLine::reckon);
    m_tick.start(tick_ms);
    m_reckon.start(reckon_ms);
    reckon();
    dress();
}

void SupplyLine::reckon() {
    m_energy = m_session.watch().energy(m_session.now());
    refresh();
}

void SupplyLine::dress() {
    for (QLabel* label : {m_now, m_energyWords})
        label->setFont(m_theme.text(TextSize::small));
    refresh();
}

QString SupplyLine::marked(const SupplyField& field) const {
    const QString faint = m_theme.palette().soft.name();
    const QString value = field.live ? QStringLiteral("<b>%1</b>").arg(field.value.toHtmlEscaped())
                                     : QStringLiteral("<span style='color:%1'><s>%2</s></span>")
                                           .arg(faint, field.value.toHtmlEscaped());
    return QStringLiteral("<span style='color:%1'>%2</span>&nbsp;%3 <span style='color:%1'>%4</span>")
        .arg(faint, field.name.toHtmlEscaped(), value, field.age.toHtmlEscaped());
}

void SupplyLine::refresh() {
    m_words = supplyWords(m_session, m_preferences, m_energy);
    QStringList parts;
    for (const auto& field : m_words.fields)
        parts << marked(field);
    if (!m_words.evidence.isEmpty())
        parts << QStringLiteral("<b style='color:%1'>%2</b>")
                     .arg(m_theme.palette().warning.name(), m_words.evidence.toHtmlEscaped());
    m_now->setText(parts.join(gap));
    m_energyWords->setText(m_words.energy.toHtmlEscaped());
    setAccessibleDescription(spokenWords(m_words));
    if (m_words.empty())
        hide();
    else if (parentWidget()) // it would be a window of its own before
        show();
}

} // namespace ringhold
