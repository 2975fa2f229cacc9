#include "ui/instrument/raw_lines_model.h"

#include "ui/session/preferences.h"

namespace ringhold {

namespace {

QString valueWords(const Sample& sample, const Preferences& preferences) {
    if (!sample.value)
        return RawLinesModel::tr("probe open");
    switch (sample.quantity) {
    case Quantity::temperature:
        return preferences.temperature(Temperature::fromCelsius(*sample.value), 1);
    case Quantity::lineVolts:
        return QStringLiteral("%1 V").arg(*sample.value, 0, 'f', 1);
    case Quantity::lineAmps:
        return QStringLiteral("%1 A").arg(*sample.value, 0, 'f', 1);
    case Quantity::oxygenMillivolts:
        return QStringLiteral("%1 mV").arg(*sample.value, 0, 'f', 0);
    case Quantity::duty:
        return QStringLiteral("%1 %").arg(100 * *sample.value, 0, 'f', 0);
    }
    return {};
}

} // namespace

RawLinesModel::RawLinesModel(const Preferences& preferences, QObject* parent)
    : QAbstractTableModel(parent), m_preferences(preferences) {
    connect(&preferences, &Preferences::changed, this, [this] {
        if (!m_rows.empty())
            Q_EMIT dataChanged(index(0, 0), index(rowCount() - 1, columns - 1));
    });
}

void RawLinesModel::clear() {
    beginResetModel();
    m_rows.clear();
    m_sendsText = false;
    m_heard = m_unread = 0;
    endResetModel();
}

void RawLinesModel::append(Row row) {
    if (rowCount() == mostRows) {
        beginRemoveRows({}, 0, 0);
        m_rows.pop_front();
        endRemoveRows();
    }
    beginInsertRows({}, rowCount(), rowCount());
    m_rows.push_back(std::move(row));
    ++m_heard;
    endInsertRows();
}

void RawLinesModel::addLine(Instant at, const QString& line, bool understood) {
    m_sendsText = true;
    m_unread += understood ? 0 : 1;
    append({at, line, understood});
}

void RawLinesModel::addSample(const Sample& sample) {
    if (!m_sendsText)
        return append({sample.at, QString::fromStdString(sample.label), true, {sample}});
    if (m_rows.empty())
        return;
    m_rows.back().samples.push_back(sample);
    const auto changed = index(rowCount() - 1, Understood);
    Q_EMIT dataChanged(changed, changed);
}

QString RawLinesModel::summary() const {
    if (m_heard == 0)
        return tr("Nothing heard yet");
    const QString lines = m_heard == 1 ? tr("1 line heard") : tr("%1 lines heard").arg(m_heard);
    return m_unread == 0 ? tr("%1, all of them read").arg(lines)
                         : tr("%1, %2 of them cannot be read").arg(lines).arg(m_unread);
}

QString RawLinesModel::decoded(const Row& row) const {
    QStringList words;
    for (const auto& sample : row.samples) {
        const QString label = m_sendsText ? QString::fromStdString(sample.label) : QString();
        words << (label.isEmpty() ? QString() : label + QLatin1Char(' ')) + valueWords(sample, m_preferences);
    }
    if (!row.understood)
        words << tr("cannot be read");
    else if (words.isEmpty())
        words << tr("read");
    return words.join(QStringLiteral(", "));
}

int RawLinesModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

int RawLinesModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : columns;
}

QVariant RawLinesModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid() || (role != Qt::DisplayRole && role != Qt::ToolTipRole))
        return {};
    const auto& row = m_rows[static_cast<std::size_t>(index.row())];
    switch (index.column()) {
    case Time:
        return m_preferences.clockTime(row.at, true);
    case Line:
        return row.line;
    default:
        return decoded(row);
    }
}

QVariant RawLinesModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole)
        return {};
    return section == Time ? tr("Heard") : section == Line ? tr("Line as it came") : tr("Read as");
}

} // namespace ringhold
