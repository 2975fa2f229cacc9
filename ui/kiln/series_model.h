// The offset series of a kiln as a list: each by its name and what it tells.
#pragma once

#include "ui/kiln/offset_series.h"

#include <QAbstractListModel>

namespace ringhold {

class SeriesModel : public QAbstractListModel {
    Q_OBJECT

  public:
    explicit SeriesModel(QObject* parent = nullptr) : QAbstractListModel(parent) {}

    void show(std::vector<OffsetSeries> series, const Preferences& preferences);
    const OffsetSeries& series(int row) const { return m_series[static_cast<std::size_t>(row)]; }

    int rowCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;

  private:
    std::vector<OffsetSeries> m_series;
    QStringList m_words;
};

} // namespace ringhold
