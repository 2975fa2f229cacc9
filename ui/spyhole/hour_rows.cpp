#include "ui/spyhole/hour_rows.h"

#include "core/cones/bending.h"
#include "ui/common/choice_row.h"
#include "ui/common/words_on_page.h"
#include "ui/cones/cone_words.h"

#include <QGridLayout>
#include <QKeyEvent>
#include <QToolButton>

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

std::vector<ChoiceRow::Choice> hoursFor(const QString& cone) {
    std::vector<ChoiceRow::Choice> choices;
    for (double hour = hourStanding; hour <= hourDown; hour += 0.5) {
        const bool half = hour > 1 && hour != std::floor(hour);
        const QString text = hour == 0.5 ? HourRows::tr("just\nleaning") : hourOnButton(hour);
        choices.push_back({half ? QStringLiteral("½") : text, coneInWords(cone, hour), half});
    }
    return choices;
}

} // namespace

HourRows::HourRows(const Theme& theme, QWidget* parent)
    : QWidget(parent), m_theme(theme), m_grid(new QGridLayout(this)) {
    m_grid->setContentsMargins(0, 0, 0, 0);
    m_grid->setVerticalSpacing(10);
    m_grid->setHorizontalSpacing(12);
    m_grid->setColumnStretch(1, 1);
}

void HourRows::setCones(const QStringList& cones, const QStringList& notes) {
    while (auto* item = m_grid->takeAt(0)) {
        delete item->widget();
        delete item;
    }
    m_rows.clear();
    for (const auto& cone : cones) {
        const auto index = m_rows.size();
        auto* row = new ChoiceRow(tr("Hour of cone %1").arg(cone), hoursFor(cone));
        row->setMayBeNone(true);
        for (const int worded : {0, 1, row->count() - 1})
            row->button(worded)->setProperty("size", QStringLiteral("small"));
        connect(row, &ChoiceRow::chosen, this, [this, index](std::optional<int> choice) {
            Q_EMIT chosen(index, choice ? std::optional(*choice / 2.0) : std::nullopt);
        });
        auto* name = new Heading(m_theme, TextSize::title, cone);
        name->setToolTip(notes.value(static_cast<int>(index)));
        row->setAccessibleDescription(name->toolTip());
        m_grid->addWidget(name, static_cast<int>(index), 0);
        m_grid->addWidget(row, static_cast<int>(index), 1, Qt::AlignLeft);
        m_rows.push_back(row);
    }
}

void HourRows::setHour(std::size_t cone, std::optional<double> hour) {
    m_rows[cone]->setCurrent(hour ? std::optional(static_cast<int>(std::lround(*hour * 2))) : std::nullopt);
}

void HourRows::focusOn(std::size_t cone) {
    m_rows[cone]->button(m_rows[cone]->current().value_or(0))->setFocus(Qt::OtherFocusReason);
}

void HourRows::keyPressEvent(QKeyEvent* event) {
    const int step = event->key() == Qt::Key_Down ? 1 : event->key() == Qt::Key_Up ? -1 : 0;
    const auto at = std::ranges::find_if(
        m_rows, [this](const ChoiceRow* row) { return row->isAncestorOf(focusWidget()); });
    const auto next = at - m_rows.begin() + step;
    if (step == 0 || at == m_rows.end() || next < 0 || next >= static_cast<int>(m_rows.size()))
        QWidget::keyPressEvent(event);
    else
        focusOn(static_cast<std::size_t>(next));
}

} // namespace ringhold
