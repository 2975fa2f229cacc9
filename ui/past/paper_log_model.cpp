#include "ui/past/paper_log_model.h"

#include "core/report/words.h"
#include "ui/common/cell_delegate.h"
#include "ui/common/dates.h"
#include "ui/session/preferences.h"

#include <algorithm>
#include <array>

namespace ringhold {

namespace {

constexpr int paperColumns = 4;

template <class Row>
auto& cellOf(Row& row, PaperColumn column) {
    return column == PaperColumn::time ? row.time : column == PaperColumn::reading ? row.reading : row.line;
}

QString whatWords(const WrittenLine& line, const Preferences& preferences) {
    if (const auto* reading = std::get_if<WrittenReading>(&line.what))
        return preferences.temperature(reading->value, 1);
    if (const auto* setting = std::get_if<WrittenSetting>(&line.what))
        return PaperLogModel::tr("setting: %1 %2")
            .arg(QString::fromStdString(setting->what), QString::fromStdString(setting->value));
    if (const auto* looks = std::get_if<WrittenLooks>(&line.what)) {
        std::vector<ConeHour> cones;
        for (const auto& look : looks->looks)
            cones.push_back({look.cone, look.hour});
        return PaperLogModel::tr("look: %1").arg(QString::fromStdString(lookWords(cones)));
    }
    return PaperLogModel::tr("note");
}

} // namespace

PaperLogModel::PaperLogModel(PaperContext context, const Preferences& preferences, QObject* parent)
    : QAbstractTableModel(parent), m_context(std::move(context)), m_preferences(preferences) {}

std::vector<WrittenLine> PaperLogModel::lines() const {
    std::vector<WrittenLine> all;
    for (const auto& read : m_read)
        all.insert(all.end(), read.lines.begin(), read.lines.end());
    return all;
}

int PaperLogModel::faults() const {
    return static_cast<int>(
        std::ranges::count_if(m_read, [](const PaperRowRead& read) { return !read.fault.empty(); }));
}

void PaperLogModel::clear() {
    beginResetModel();
    m_rows.clear();
    m_read.clear();
    endResetModel();
    Q_EMIT changed();
}

void PaperLogModel::drop(std::size_t written) {
    beginResetModel();
    std::vector<PaperRow> left;
    for (std::size_t i = 0; i < m_rows.size(); ++i) {
        const std::size_t its = m_read[i].lines.size();
        const bool done = its <= written && m_read[i].fault.empty();
        written -= done ? its : 0;
        if (done)
            continue;
        // the row above may have given it its time
        if (m_rows[i].time.empty() && m_read[i].at)
            m_rows[i].time = formatInZone(*m_read[i].at, m_context.zone, "%H:%M");
        left.push_back(m_rows[i]);
    }
    m_rows = std::move(left);
    m_read = readPaperLog(m_rows, m_context);
    endResetModel();
    Q_EMIT changed();
}

int PaperLogModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_rows.size()) + 1;
}

int PaperLogModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : paperColumns;
}

QString PaperLogModel::meaning(const PaperRowRead& read) const {
    if (!read.fault.empty())
        return QString::fromStdString(read.fault);
    if (!read.at)
        return {};
    QStringList parts;
    for (const auto& line : read.lines)
        parts << whatWords(line, m_preferences);
    return shortDate(*read.at, m_preferences) + QLatin1Char(' ') + m_preferences.clockTime(*read.at) +
           (parts.isEmpty() ? QString() : QStringLiteral(" · ") + parts.join(QStringLiteral(" · ")));
}

QVariant PaperLogModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid))
        return {};
    const auto column = static_cast<PaperColumn>(index.column());
    if (role == Qt::TextAlignmentRole)
        return int((column == PaperColumn::reading ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter);
    if (invites(index.row())) {
        const bool first = column == PaperColumn::time;
        if (first && role == Qt::DisplayRole)
            return tr("time …");
        return first && role == invitingRole ? QVariant(true) : QVariant();
    }
    const auto row = static_cast<std::size_t>(index.row());
    if (column == PaperColumn::meaning) {
        if (role == Qt::DisplayRole || role == Qt::ToolTipRole)
            return (m_read[row].fault.empty() ? QString() : QStringLiteral("! ")) + meaning(m_read[row]);
        return role == invitingRole ? QVariant(m_read[row].fault.empty()) : QVariant();
    }
    if (role == Qt::DisplayRole || role == Qt::EditRole)
        return QString::fromStdString(cellOf(m_rows[row], column));
    return {};
}

QVariant PaperLogModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || section < 0 || section >= paperColumns)
        return {};
    if (role == Qt::TextAlignmentRole)
        return int((section == int(PaperColumn::reading) ? Qt::AlignRight : Qt::AlignLeft) |
                   Qt::AlignVCenter);
    if (role != Qt::DisplayRole)
        return {};
    const std::array heads{tr("time"), tr("reading %1").arg(m_preferences.unitName()),
                           tr("setting, look or note"), tr("will be")};
    return heads[static_cast<std::size_t>(section)];
}

Qt::ItemFlags PaperLogModel::flags(const QModelIndex& index) const {
    auto flags = QAbstractTableModel::flags(index);
    if (index.isValid() && static_cast<PaperColumn>(index.column()) != PaperColumn::meaning)
        flags |= Qt::ItemIsEditable;
    return flags;
}

bool PaperLogModel::setData(const QModelIndex& index, const QVariant& value, int role) {
    const auto column = static_cast<PaperColumn>(index.column());
    if (!index.isValid() || role != Qt::EditRole || column == PaperColumn::meaning)
        return false;
    const std::string text = value.toString().trimmed().toStdString();
    if (invites(index.row())) {
        if (text.empty())
            return false;
        const int row = index.row();
        beginInsertRows({}, row, row);
        m_rows.emplace_back();
        m_read.emplace_back();
        endInsertRows();
        cellOf(m_rows.back(), column) = text;
    } else {
        cellOf(m_rows[static_cast<std::size_t>(index.row())], column) = text;
    }
    readAll();
    return true;
}

void PaperLogModel::readAll() {
    m_read = readPaperLog(m_rows, m_context);
    Q_EMIT dataChanged(index(0, 0), index(static_cast<int>(m_rows.size()) - 1, paperColumns - 1));
    Q_EMIT changed();
}

} // namespace ringhold
