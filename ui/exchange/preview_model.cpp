#include "ui/exchange/preview_model.h"

namespace ringhold {

namespace {

QString roleWords(const PreviewColumn& column) {
    switch (column.role) {
    case PreviewColumn::Role::time:
        return PreviewModel::tr("the time");
    case PreviewColumn::Role::control:
        return PreviewModel::tr("control probe, %1").arg(meaningWords(column.meaning));
    case PreviewColumn::Role::value:
        return meaningWords(column.meaning);
    case PreviewColumn::Role::notTaken:
        break;
    }
    return PreviewModel::tr("left out");
}

} // namespace

QString meaningWords(std::optional<ColumnMeaning> meaning) {
    if (!meaning)
        return PreviewModel::tr("as its heading says");
    switch (*meaning) {
    case ColumnMeaning::celsius:
        return PreviewModel::tr("°C");
    case ColumnMeaning::fahrenheit:
        return PreviewModel::tr("°F");
    case ColumnMeaning::volts:
        return PreviewModel::tr("line volts");
    case ColumnMeaning::amps:
        return PreviewModel::tr("line amps");
    case ColumnMeaning::oxygenMillivolts:
        return PreviewModel::tr("mV of an oxygen probe");
    case ColumnMeaning::dutyShare:
        return PreviewModel::tr("share of full power, 0 to 1");
    case ColumnMeaning::dutyPercent:
        return PreviewModel::tr("percent of full power");
    case ColumnMeaning::leftOut:
        break;
    }
    return PreviewModel::tr("left out");
}

void PreviewModel::show(const CsvPreview& preview) {
    beginResetModel();
    m_preview = preview;
    endResetModel();
}

int PreviewModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_preview.rows.size());
}

int PreviewModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_preview.columns.size());
}

QVariant PreviewModel::data(const QModelIndex& index, int role) const {
    if (role != Qt::DisplayRole || !checkIndex(index, CheckIndexOption::IndexIsValid))
        return {};
    const auto& row = m_preview.rows[static_cast<std::size_t>(index.row())];
    return QString::fromStdString(row[static_cast<std::size_t>(index.column())]);
}

QVariant PreviewModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || section < 0 || section >= columnCount())
        return {};
    const auto& column = m_preview.columns[static_cast<std::size_t>(section)];
    if (role == Qt::TextAlignmentRole)
        return int(Qt::AlignLeft | Qt::AlignVCenter);
    if (role != Qt::DisplayRole)
        return {};
    const QString heading = QString::fromStdString(column.header);
    return m_preview.fault ? heading : heading + QLatin1Char('\n') + roleWords(column);
}

} // namespace ringhold
