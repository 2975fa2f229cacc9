#include "ui/past/firings_model.h"

#include "ui/common/dates.h"
#include "ui/common/firing_words.h"
#include "ui/past/laid_over.h"
#include "ui/session/preferences.h"

#include <QStringList>

#include <algorithm>

namespace ringhold {

namespace {

FiringColumn columnOf(const QModelIndex& index) {
    return static_cast<FiringColumn>(index.column());
}

std::optional<Duration> lengthOf(const FiringSummary& firing) {
    const auto end = firing.ended ? firing.ended : firing.lastReading;
    return end && *end >= firing.began ? std::optional(*end - firing.began) : std::nullopt;
}

bool isFigure(FiringColumn column) {
    return column >= FiringColumn::length;
}

} // namespace

void FiringsModel::show(std::vector<FiringSummary> firings) {
    beginResetModel();
    m_firings = std::move(firings);
    std::ranges::reverse(m_firings);
    const auto gone = std::erase_if(m_ticked, [this](FiringId id) { return rowOf(id) < 0; });
    endResetModel();
    if (gone > 0)
        Q_EMIT tickedChanged();
}

int FiringsModel::rowOf(FiringId firing) const {
    const auto found = std::ranges::find(m_firings, firing, &FiringSummary::id);
    return found == m_firings.end() ? -1 : static_cast<int>(found - m_firings.begin());
}

void FiringsModel::untickAll() {
    if (m_ticked.empty())
        return;
    m_ticked.clear();
    Q_EMIT dataChanged(index(0, 0), index(rowCount() - 1, 0));
    Q_EMIT tickedChanged();
}

int FiringsModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_firings.size());
}

int FiringsModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : firingColumns;
}

QString FiringsModel::text(const FiringSummary& firing, FiringColumn column) const {
    switch (column) {
    case FiringColumn::tick:
        return {};
    case FiringColumn::began:
        return shortDate(firing.began, m_preferences);
    case FiringColumn::title:
        return firingTitle(firing);
    case FiringColumn::kiln:
        return QString::fromStdString(firing.kilnName);
    case FiringColumn::length:
        if (!firing.ended)
            return tr("fired now");
        return m_preferences.span(*firing.ended - firing.began);
    case FiringColumn::peak:
        return firing.peak ? m_preferences.temperature(*firing.peak) : QString();
    case FiringColumn::readings:
        return QString::number(firing.readings);
    }
    return {};
}

QVariant FiringsModel::sortValue(const FiringSummary& firing, FiringColumn column) const {
    switch (column) {
    case FiringColumn::tick:
        return std::ranges::find(m_ticked, firing.id) != m_ticked.end();
    case FiringColumn::began:
        return static_cast<qlonglong>(firing.began.time_since_epoch().count());
    case FiringColumn::length:
        return static_cast<qlonglong>(lengthOf(firing).value_or(Duration(-1)).count());
    case FiringColumn::peak:
        return firing.peak ? firing.peak->celsius() : -1000.0;
    case FiringColumn::readings:
        return static_cast<qlonglong>(firing.readings);
    default:
        return text(firing, column).toCaseFolded();
    }
}

QString FiringsModel::words(const FiringSummary& firing) const {
    return firingWords(firing, m_preferences) + QLatin1Char(' ') + shortDate(firing.began, m_preferences) +
           QLatin1Char(' ') + typedDate(firing.began, m_preferences);
}

QVariant FiringsModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid))
        return {};
    const auto& shown = firing(index.row());
    const auto column = columnOf(index);
    switch (role) {
    case Qt::DisplayRole:
        return text(shown, column);
    case Qt::TextAlignmentRole:
        return int((isFigure(column) ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter);
    case Qt::CheckStateRole:
        if (column != FiringColumn::tick)
            return {};
        return int(sortValue(shown, column).toBool() ? Qt::Checked : Qt::Unchecked);
    case Qt::AccessibleTextRole:
        return column == FiringColumn::tick ? tr("Lay over: %1").arg(firingTitle(shown))
                                            : text(shown, column);
    case Qt::ToolTipRole:
    case wordsRole:
        return words(shown);
    case sortRole:
        return sortValue(shown, column);
    default:
        return {};
    }
}

QVariant FiringsModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation == Qt::Horizontal && role == Qt::TextAlignmentRole)
        return int((isFigure(static_cast<FiringColumn>(section)) ? Qt::AlignRight : Qt::AlignLeft) |
                   Qt::AlignVCenter);
    if (role != Qt::DisplayRole)
        return {};
    if (orientation == Qt::Vertical)
        return section + 1;
    return QStringList{QString(),    tr("Began"), tr("Firing"),  tr("Kiln"),
                       tr("Length"), tr("Peak"),  tr("Readings")}
        .value(section);
}

Qt::ItemFlags FiringsModel::flags(const QModelIndex& index) const {
    if (!index.isValid())
        return Qt::NoItemFlags;
    const Qt::ItemFlags flags = Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemNeverHasChildren;
    return columnOf(index) == FiringColumn::tick ? flags | Qt::ItemIsUserCheckable : flags;
}

bool FiringsModel::setData(const QModelIndex& index, const QVariant& value, int role) {
    if (!index.isValid() || role != Qt::CheckStateRole || columnOf(index) != FiringColumn::tick)
        return false;
    const FiringId id = firing(index.row()).id;
    const bool tick = value.toInt() == Qt::Checked;
    const auto found = std::ranges::find(m_ticked, id);
    if (tick == (found != m_ticked.end()))
        return true;
    if (tick && m_ticked.size() >= static_cast<std::size_t>(mostLaidOver))
        return false;
    if (tick)
        m_ticked.push_back(id);
    else
        m_ticked.erase(found);
    Q_EMIT dataChanged(index, index);
    Q_EMIT tickedChanged();
    return true;
}

} // namespace ringhold
