#include "ui/kiln/kiln_firings_model.h"

#include "ui/common/cost_words.h"
#include "ui/common/dates.h"
#include "ui/common/firing_words.h"
#include "ui/kiln/health_words.h"
#include "ui/session/preferences.h"

#include <algorithm>

namespace ringhold {

namespace {

bool isFigure(KilnFiringColumn column) {
    return column >= KilnFiringColumn::climb && column <= KilnFiringColumn::spread;
}

} // namespace

void KilnFiringsModel::show(std::vector<KilnFiring> firings) {
    beginResetModel();
    m_firings = std::move(firings);
    std::ranges::reverse(m_firings);
    endResetModel();
}

int KilnFiringsModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_firings.size());
}

int KilnFiringsModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : kilnFiringColumns;
}

QString KilnFiringsModel::text(const KilnFiring& told, KilnFiringColumn column) const {
    const auto& climb = told.health.climb;
    switch (column) {
    case KilnFiringColumn::began:
        return shortDate(told.firing.began, m_preferences);
    case KilnFiringColumn::firing:
        return firingTitle(told.firing);
    case KilnFiringColumn::climb:
        return climb ? m_preferences.span(durationFromMinutes(climb->minutes)) : QString();
    case KilnFiringColumn::volts:
        return climb && climb->line ? tr("%1 V").arg(climb->line->volts, 0, 'f', 0) : QString();
    case KilnFiringColumn::energy:
        return useText(told.use);
    case KilnFiringColumn::cost:
        return costText(told.use);
    case KilnFiringColumn::spread:
        return told.evenness ? spreadWords(*told.evenness, m_preferences) : QString();
    case KilnFiringColumn::places:
        return told.evenness ? placesWords(*told.evenness, m_preferences) : QString();
    }
    return {};
}

QVariant KilnFiringsModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid))
        return {};
    const auto column = static_cast<KilnFiringColumn>(index.column());
    if (role == Qt::TextAlignmentRole)
        return int((isFigure(column) ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter);
    return role == Qt::DisplayRole || role == Qt::ToolTipRole ? QVariant(text(firing(index.row()), column))
                                                              : QVariant();
}

QVariant KilnFiringsModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || section < 0 || section >= kilnFiringColumns)
        return {};
    if (role == Qt::TextAlignmentRole)
        return int((isFigure(static_cast<KilnFiringColumn>(section)) ? Qt::AlignRight : Qt::AlignLeft) |
                   Qt::AlignVCenter);
    if (role == Qt::DisplayRole)
        return QStringList{tr("Lit"),    tr("Firing"), tr("Climb"),  tr("Volts"),
                           tr("Energy"), tr("Cost"),   tr("Spread"), tr("Shelves, hottest first")}
            .value(section);
    if (role == Qt::ToolTipRole)
        return QStringList{QString(),
                           QString(),
                           tr("Time from %1 to %2")
                               .arg(m_preferences.temperatureFigure(Temperature::fromCelsius(1000)),
                                    m_preferences.temperature(Temperature::fromCelsius(1200))),
                           tr("Mean of the line in that climb"),
                           tr("By the meter’s stands, else by volts and amps, else by the duty"),
                           tr("At the price on the kiln’s card; + where something has no price"),
                           tr("From the coolest to the hottest place, by the cold packs"),
                           tr("Above or below the mean of the places, by the cold packs")}
            .value(section);
    return {};
}

} // namespace ringhold
