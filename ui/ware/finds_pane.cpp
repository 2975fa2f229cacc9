#include "ui/ware/finds_pane.h"

#include "core/growth/ring_times.h"
#include "ui/common/choice_row.h"
#include "ui/common/word_style.h"
#include "ui/common/words_on_page.h"
#include "ui/ware/ring_words.h"

#include <QHBoxLayout>
#include <QLineEdit>
#include <QVBoxLayout>

#include <algorithm>
#include <array>

namespace ringhold {

namespace {

constexpr std::array sights{SagSight::yes, SagSight::no, SagSight::unsure};

bool sameSags(const std::vector<GrowthSag>& a, const std::vector<GrowthSag>& b) {
    return std::ranges::equal(a, b, {}, &GrowthSag::at, &GrowthSag::at);
}

QString placeWords(const SizeRange& radius) {
    return QStringLiteral("%1 (%2–%3)")
        .arg(radius.likely_mm, 0, 'f', 0)
        .arg(radius.low_mm, 0, 'f', 0)
        .arg(radius.high_mm, 0, 'f', 0);
}

} // namespace

FindsPane::FindsPane(const Preferences& preferences, PieceFinds& finds, QWidget* parent)
    : QWidget(parent), m_preferences(preferences), m_finds(finds), m_ask(new QLabel), m_rings(new QLineEdit),
      m_drawn(softLabel()), m_rows(new QVBoxLayout), m_rate(publishedGrowthRate()) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(4);
    auto* head = new QHBoxLayout;
    m_ask->setBuddy(m_rings);
    head->addWidget(m_ask);
    m_rings->setPlaceholderText(tr("4.2  6.1  –  8.0"));
    m_rings->setAccessibleName(tr("Radii of the rings in mm, the innermost first"));
    m_rings->setToolTip(tr("Measured from the crystal’s centre; – for a ring that cannot be seen"));
    head->addWidget(m_rings, 1);
    column->addLayout(head);
    column->addWidget(m_drawn);
    m_rows->setSpacing(2);
    column->addLayout(m_rows);
    column->addStretch(1);
    connect(m_rings, &QLineEdit::editingFinished, this, &FindsPane::takeRings);
    connect(&finds, &PieceFinds::changed, this, &FindsPane::tell);
}

void FindsPane::show(const GrowthMarks& marks, const GrowthRate& rate) {
    m_rate = rate;
    const CrystalGrowth growth(marks.felt, rate);
    m_ringPlaces.clear();
    for (const auto& ring : marks.rings)
        m_ringPlaces.push_back(growth.radiusAt(turnOf(ring)));
    layRows(marks.sags);
    for (auto& row : m_sags)
        row.radius = growth.radiusAt(row.sag.at);
    tell();
}

void FindsPane::layRows(const std::vector<GrowthSag>& sags) {
    std::vector<GrowthSag> laid;
    for (const auto& row : m_sags)
        laid.push_back(row.sag);
    if (sameSags(laid, sags))
        return;
    for (const auto& row : m_sags)
        delete row.row;
    m_sags.clear();
    for (const auto& sag : sags) {
        auto* widget = new QWidget;
        auto* line = new QHBoxLayout(widget);
        line->setContentsMargins(0, 0, 0, 0);
        auto* question = new QLabel;
        question->setWordWrap(true);
        line->addWidget(question, 1);
        auto* answer =
            new ChoiceRow(tr("Is it to be seen?"), {{tr("Yes"), {}}, {tr("No"), {}}, {tr("Unsure"), {}}});
        answer->setMayBeNone(true);
        line->addWidget(answer, 0, Qt::AlignVCenter);
        m_rows->addWidget(widget);
        const std::size_t at = m_sags.size();
        connect(answer, &ChoiceRow::chosen, this, [this, at](std::optional<int> chosen) {
            const auto& row = m_sags[at];
            m_finds.answerSag(
                row.sag.at, chosen ? std::optional(sights[static_cast<std::size_t>(*chosen)]) : std::nullopt,
                row.radius.likely_mm);
        });
        m_sags.push_back({sag, {}, widget, question, answer});
    }
}

QString FindsPane::question(const SagRow& row) const {
    const auto size = m_preferences.difference(
        row.sag.depth < TemperatureDifference() ? -row.sag.depth : row.sag.depth, 0, false);
    const QString what = row.sag.depth < TemperatureDifference() ? tr("The sag of %1").arg(size)
                                                                 : tr("The bulge of %1").arg(size);
    return QString::fromStdString(
        momentWords(what.toStdString(), row.sag.at, row.radius, styleOf(m_preferences)));
}

/// Where the firing's rings are to be looked for.
QString FindsPane::drawnWords() const {
    if (m_ringPlaces.empty())
        return tr("The firing’s plan and curve know of no rings.");
    QStringList places;
    for (const auto& place : m_ringPlaces)
        places << placeWords(place);
    const QString basis = m_rate.basis == GrowthBasis::measured ? tr("this glaze’s own growth rate")
                                                                : tr("published growth rates");
    return tr("The firing drew %1, about %2 mm out by %3.")
        .arg(places.size() == 1 ? tr("one ring") : tr("%1 rings").arg(places.size()),
             places.join(QStringLiteral(", ")), basis);
}

void FindsPane::tell() {
    const bool some = m_finds.piece().has_value();
    setEnabled(some);
    m_ask->setText(
        some
            ? tr("R&ings of %1, radii in mm").arg(QString(m_finds.name()).replace(u'&', QStringLiteral("&&")))
            : tr("R&ings, radii in mm"));
    const QString text = ringsText(m_finds.rings());
    if (m_rings->text() != text)
        m_rings->setText(text);
    m_drawn->setText(drawnWords());
    for (const auto& row : m_sags) {
        row.question->setText(question(row));
        row.answer->setAccessibleDescription(row.question->text());
        const auto answer = m_finds.answer(row.sag.at);
        const auto at = answer ? std::ranges::find(sights, *answer) - sights.begin() : -1;
        row.answer->setCurrent(answer ? std::optional(static_cast<int>(at)) : std::nullopt);
    }
}

void FindsPane::takeRings() {
    if (!m_finds.piece() || m_rings->text() == ringsText(m_finds.rings()))
        return;
    auto rings = ringsTyped(m_rings->text(), m_finds.rings());
    if (!rings) {
        Q_EMIT troubled(QString::fromStdString(rings.error().text()));
        return;
    }
    m_finds.setRings(std::move(*rings));
    tell();
}

} // namespace ringhold
