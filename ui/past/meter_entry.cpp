#include "ui/past/meter_entry.h"

#include "ui/common/cost_words.h"
#include "ui/common/words_on_page.h"
#include "ui/session/notebook.h"

#include <QHBoxLayout>
#include <QLineEdit>
#include <QRegularExpression>
#include <QVBoxLayout>

namespace ringhold {

namespace {

QString figureOf(const std::optional<MeterStand>& stand) {
    return stand ? QString::number(stand->stand, 'f', 3).remove(QRegularExpression(QStringLiteral("\\.?0+$")))
                 : QString();
}

/// Nothing for an empty text; badInput for one that is no stand.
Result<std::optional<double>> standTyped(QString text) {
    text = text.trimmed();
    if (text.isEmpty())
        return std::optional<double>();
    bool isNumber = false;
    const double value = text.replace(QLatin1Char(','), QLatin1Char('.')).toDouble(&isNumber);
    if (!isNumber || !(value >= 0 && value < 1e12))
        return Error{ErrorKind::badInput,
                     MeterEntry::tr("A meter’s stand is a number, 0 or above.").toStdString()};
    return std::optional(value);
}

} // namespace

MeterEntry::MeterEntry(Notebook& notebook, QWidget* parent)
    : QWidget(parent), m_notebook(notebook), m_ask(new QLabel),
      m_before(addField(tr("Meter before the firing"))), m_after(addField(tr("Meter after the firing"))),
      m_words(softLabel()), m_trouble(new Remark(Remark::Kind::warning)) {
    auto* column = new QVBoxLayout(this);
    auto* row = new QHBoxLayout;
    row->addWidget(m_ask);
    row->addWidget(new QLabel(tr("before")));
    row->addWidget(m_before);
    row->addWidget(new QLabel(tr("after")));
    row->addWidget(m_after);
    row->addStretch(1);
    column->addLayout(row);
    column->addWidget(m_trouble);
    column->addWidget(m_words);
    column->addStretch(1);
    connect(m_before, &QLineEdit::editingFinished, this, [this] {
        if (m_firing)
            take(*m_before, stands().before, m_firing->record.firing.began);
    });
    connect(m_after, &QLineEdit::editingFinished, this, [this] {
        if (m_firing)
            take(*m_after, stands().after, m_firing->record.firing.ended.value_or(m_notebook.clock().now()));
    });
}

QLineEdit* MeterEntry::addField(const QString& name) {
    auto* field = new QLineEdit;
    field->setAccessibleName(name);
    field->setMaximumWidth(130);
    return field;
}

MeterUnit MeterEntry::unit() const {
    return m_firing->record.kiln.fuel == Fuel::gas ? MeterUnit::cubicMetres : MeterUnit::kilowattHours;
}

MeterEntry::Stands MeterEntry::stands() const {
    Stands found;
    const auto& firing = m_firing->record.firing;
    for (const auto& stand : m_firing->record.meterStands) {
        if (stand.struck || stand.unit != unit())
            continue;
        const bool early = !firing.ended || stand.at - firing.began < *firing.ended - stand.at;
        if (early && !found.before)
            found.before = stand;
        else
            found.after = stand;
    }
    return found;
}

void MeterEntry::show(std::shared_ptr<const OpenedFiring> firing) {
    m_firing = std::move(firing);
    setEnabled(m_firing != nullptr);
    m_trouble->say({});
    if (!m_firing)
        return;
    const auto [before, after] = stands();
    m_ask->setText(unit() == MeterUnit::cubicMetres ? tr("Gas meter, m³:") : tr("Electricity meter, kWh:"));
    m_before->setText(figureOf(before));
    m_after->setText(figureOf(after));
    const auto pieces = static_cast<int>(m_firing->record.pieces.size());
    const QString words = costWords(m_firing->use, pieces);
    const bool priced = !costText(m_firing->use).isEmpty();
    m_words->setText(
        (words.isEmpty() ? tr("What the firing took is not known.") : tr("It took %1.").arg(words)) +
        (priced ? QString() : QLatin1Char(' ') + tr("A price on the kiln’s card tells the cost.")));
}

void MeterEntry::take(QLineEdit& field, std::optional<MeterStand> kept, Instant at) {
    if (field.text().trimmed() == figureOf(kept))
        return;
    const auto typed = standTyped(field.text());
    const Status done = typed ? write(kept, *typed, at) : Status(typed.error());
    m_trouble->say(done ? QString() : QString::fromStdString(done.error().text()));
    if (done)
        Q_EMIT written();
}

Status MeterEntry::write(const std::optional<MeterStand>& kept, std::optional<double> typed, Instant at) {
    auto writer = m_notebook.writer();
    const Instant now = m_notebook.clock().now();
    if (kept && !typed)
        return writer.strike(kept->id, now);
    if (!typed)
        return {};
    MeterStand stand = kept.value_or(MeterStand{{}, m_firing->record.firing.id, at, 0, unit(), false});
    stand.stand = *typed;
    const auto id = kept ? writer.correct(stand, now) : writer.add(stand);
    return id ? Status() : Status(id.error());
}

} // namespace ringhold
