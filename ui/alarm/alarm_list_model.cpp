#include "ui/alarm/alarm_list_model.h"

#include "ui/alarm/alarm_phrases.h"
#include "ui/session/notebook.h"

#include <QFont>

#include <algorithm>
#include <functional>

namespace ringhold {

namespace {

AlarmLevel levelOfWord(const std::string& word) {
    return word == "urgent"    ? AlarmLevel::urgent
           : word == "warning" ? AlarmLevel::warning
                               : AlarmLevel::notice;
}

AlarmRow pastRow(const AlarmRecord& record, AlarmCause cause, const FiringSession& session,
                 const Preferences& preferences) {
    Alarm alarm;
    alarm.cause = cause;
    alarm.first = record.first;
    alarm.ended = record.ended;
    if (record.acknowledged) {
        alarm.acknowledged = record.acknowledged->at;
        alarm.acknowledgedBy = record.acknowledged->by;
    }
    return {record.firing,
            cause,
            levelOfWord(record.level),
            record.first,
            false,
            false,
            kilnWords(session),
            titleWords(alarm),
            sinceWords(alarm, session.now(), preferences),
            QString::fromStdString(record.detail),
            answerWords(alarm, preferences)};
}

} // namespace

AlarmListModel::AlarmListModel(const LiveAlarms& alarms, Notebook& notebook, QObject* parent)
    : QAbstractTableModel(parent), m_alarms(alarms), m_notebook(notebook) {
    connect(&alarms, &LiveAlarms::changed, this, &AlarmListModel::refresh);
    connect(&notebook, &Notebook::sessionsChanged, this, &AlarmListModel::readBook);
    connect(&notebook.preferences(), &Preferences::changed, this, &AlarmListModel::readBook);
    readBook();
}

void AlarmListModel::readBook() {
    m_past.clear();
    const auto reader = m_notebook.reader();
    for (const auto& session : m_notebook.sessions()) {
        const auto records = reader.alarms(session->record().firing.id);
        if (!records)
            continue;
        for (const auto& record : *records)
            if (const auto cause = causeOfWord(record.cause); cause && record.ended && record.acknowledged)
                m_past.push_back(pastRow(record, *cause, *session, m_notebook.preferences()));
    }
    std::ranges::stable_sort(m_past, std::greater{}, &AlarmRow::first);
    refresh();
}

std::vector<AlarmRow> AlarmListModel::reckon() const {
    std::vector<AlarmRow> rows;
    const auto& preferences = m_notebook.preferences();
    for (const auto& live : m_alarms.alarms()) {
        const auto& alarm = live.alarm;
        rows.push_back({live.session->record().firing.id, alarm.cause, alarm.level, alarm.first, true,
                        live.calls() && (!alarm.acknowledged || quietOnceAcknowledged(alarm.cause)),
                        kilnWords(*live.session), titleWords(alarm), sinceWords(alarm, live.now, preferences),
                        QString::fromStdString(alarm.words), answerWords(alarm, preferences)});
    }
    const auto onBoard = rows.size();
    for (const auto& past : m_past)
        if (std::none_of(rows.begin(), rows.begin() + static_cast<std::ptrdiff_t>(onBoard),
                         [&](const AlarmRow& row) { return row.isSame(past); }))
            rows.push_back(past);
    return rows;
}

void AlarmListModel::refresh() {
    auto rows = reckon();
    if (std::ranges::equal(rows, m_rows, [](const auto& a, const auto& b) { return a.isSame(b); })) {
        m_rows = std::move(rows);
        if (!m_rows.empty())
            Q_EMIT dataChanged(index(0, 0), index(rowCount() - 1, Columns - 1));
        return;
    }
    beginResetModel();
    m_rows = std::move(rows);
    endResetModel();
}

int AlarmListModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

int AlarmListModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : Columns;
}

QString AlarmListModel::text(const AlarmRow& row, int column) const {
    switch (column) {
    case Level:
        return levelWords(row.level);
    case Title:
        return row.title;
    case Kiln:
        return row.kiln;
    case Since:
        return row.since;
    case Answer:
        return row.answer;
    default:
        return row.evidence;
    }
}

QVariant AlarmListModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid() || index.row() >= rowCount())
        return {};
    const auto& row = this->row(index.row());
    if (role == Qt::DisplayRole || role == Qt::ToolTipRole)
        return text(row, index.column());
    if (role == Qt::FontRole && row.mayAcknowledge) {
        QFont font;
        font.setBold(true);
        return font;
    }
    if (role == Qt::AccessibleTextRole)
        return QStringList{levelWords(row.level), row.title, row.kiln, row.since, row.answer}.join(
            QStringLiteral(", "));
    return {};
}

QVariant AlarmListModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole)
        return {};
    const QStringList heads{tr("Level"), tr("Alarm"), tr("Kiln"), tr("When"), tr("Answer"), tr("Evidence")};
    return heads.value(section);
}

} // namespace ringhold
