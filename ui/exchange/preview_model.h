// The first rows of a CSV file as a table, and above each column how it would be taken.
#pragma once

#include "core/exchange/csv_preview.h"

#include <QAbstractTableModel>

namespace ringhold {

/// "°C", "left out", "share of full power": what a column holds.
QString meaningWords(std::optional<ColumnMeaning> meaning);

class PreviewModel : public QAbstractTableModel {
    Q_OBJECT

  public:
    using QAbstractTableModel::QAbstractTableModel;

    void show(const CsvPreview& preview);

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    /// The file's own heading, and below it the role: "the time", "control probe, °C".
    QVariant headerData(int section, Qt::Orientation orientation, int role = Qt::DisplayRole) const override;

  private:
    CsvPreview m_preview;
};

} // namespace ringhold
