#include "ui/kiln/series_model.h"

namespace ringhold {

void SeriesModel::show(std::vector<OffsetSeries> series, const Preferences& preferences) {
    beginResetModel();
    m_series = std::move(series);
    m_words.clear();
    for (const auto& s : m_series)
        m_words << seriesName(s) + QLatin1Char(' ') + seriesWords(s, preferences);
    endResetModel();
}

int SeriesModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_series.size());
}

QVariant SeriesModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid) ||
        (role != Qt::DisplayRole && role != Qt::ToolTipRole))
        return {};
    return m_words.at(index.row());
}

} // namespace ringhold
