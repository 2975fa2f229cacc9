#include "ui/spread/log_model.h"

#include "core/firing/firing_record.h"
#include "core/firing/live_firing.h"
#include "ui/common/forecast_words.h"
#include "ui/cones/cone_words.h"
#include "ui/session/preferences.h"

#include <algorithm>
#include <map>

namespace ringhold {

namespace {

using Lines = std::vector<PageLine>;

void addLooks(Lines& lines, const FiringRecord& record) {
    // one line for all cones of a pack that were looked at together
    std::map<std::tuple<Instant, PackId, bool>, PageLine> together;
    for (const auto& look : record.looks) {
        auto& line = together[{look.at, look.pack, look.struck}];
        const auto pack = std::ranges::find(record.packs, look.pack, &Pack::id);
        const QString prefix = look.cold ? QStringLiteral("Cold pack · ")
                               : record.packs.size() > 1 && pack != record.packs.end()
                                   ? QString::fromStdString(pack->place) + QStringLiteral(" · ")
                                   : QString();
        line.at = look.at;
        line.kind = LogKind::look;
        line.struck = look.struck;
        line.words += (line.words.isEmpty() ? prefix : QStringLiteral(", ")) +
                      coneInWords(QString::fromStdString(look.cone), look.hour);
        line.keys.emplace_back(look.id);
    }
    for (auto& [key, line] : together)
        lines.push_back(std::move(line));
}

void addReadings(Lines& lines, const FiringRecord& record, const Preferences& preferences) {
    for (const auto& channel : record.channels) {
        if (channel.quantity != Quantity::temperature)
            continue;
        for (const auto& reading : record.readings)
            if (reading.channel == channel.id && reading.origin == Origin::hand)
                lines.push_back({reading.at,
                                 LogKind::reading,
                                 QStringLiteral("Read by hand ") +
                                     preferences.temperature(Temperature::fromCelsius(reading.value)),
                                 reading.struck,
                                 {ReadingKey{reading.channel, reading.at}}});
    }
}

QString alarmWords(const AlarmRecord& alarm, const Preferences& preferences) {
    QString words = QString::fromStdString(alarm.detail.empty() ? alarm.cause : alarm.detail);
    if (alarm.acknowledged)
        words += QStringLiteral(" Acknowledged ") + preferences.clockTime(alarm.acknowledged->at) +
                 QLatin1Char('.');
    return words;
}

void addRemarks(Lines& lines, const std::vector<LookDoubt>& doubts, const Preferences& preferences) {
    for (const auto& doubt : doubts)
        for (auto& line : lines)
            if (std::ranges::count(line.keys, LineKey(doubt.look.id)) > 0) {
                const QString cone = line.keys.size() > 1
                                         ? QString::fromStdString(doubt.look.cone) + QStringLiteral(": ")
                                         : QString();
                line.remark += (line.remark.isEmpty() ? QString() : QStringLiteral("\n")) + cone +
                               doubtInShort(doubt, preferences);
            }
}

} // namespace

std::vector<PageLine> pageLines(const FiringRecord& record, const std::vector<LogEvent>& events,
                                const std::vector<AlarmRecord>& alarms, const Preferences& preferences,
                                const std::vector<LookDoubt>& doubts) {
    Lines lines;
    addLooks(lines, record);
    addReadings(lines, record, preferences);
    for (const auto& note : record.notes)
        lines.push_back({note.at, LogKind::note, QString::fromStdString(note.text), note.struck, {note.id}});
    for (const auto& setting : record.settings)
        lines.push_back({setting.at,
                         LogKind::setting,
                         QString::fromStdString(setting.what + ": " + setting.value),
                         setting.struck,
                         {setting.id}});
    for (const auto& event : events)
        if (event.kind == "forecast")
            lines.push_back({event.at, LogKind::forecast, QString::fromStdString(event.detail), false, {}});
    for (const auto& alarm : alarms)
        lines.push_back({alarm.first, LogKind::alarm, alarmWords(alarm, preferences), false, {}});
    addRemarks(lines, doubts, preferences);
    std::ranges::stable_sort(lines, {}, &PageLine::at);
    return lines;
}

void LogModel::setLines(std::vector<PageLine> lines, const Preferences& preferences) {
    const auto same = [](const PageLine& a, const PageLine& b) {
        return a.at == b.at && a.kind == b.kind && a.words == b.words && a.struck == b.struck &&
               a.remark == b.remark;
    };
    std::vector<QString> times;
    for (const auto& line : lines)
        times.push_back(preferences.clockTime(line.at));
    const bool appended = lines.size() > m_lines.size() &&
                          std::equal(m_lines.begin(), m_lines.end(), lines.begin(), same) &&
                          std::equal(m_times.begin(), m_times.end(), times.begin());
    if (appended)
        beginInsertRows({}, static_cast<int>(m_lines.size()), static_cast<int>(lines.size()) - 1);
    else
        beginResetModel();
    m_lines = std::move(lines);
    m_times = std::move(times);
    if (appended)
        endInsertRows();
    else
        endResetModel();
}

int LogModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_lines.size());
}

QVariant LogModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid() || index.row() >= rowCount())
        return {};
    const auto row = static_cast<std::size_t>(index.row());
    const auto& shown = m_lines[row];
    switch (role) {
    case Qt::DisplayRole:
        return shown.words;
    case TimeRole:
        return m_times[row];
    case KindRole:
        return static_cast<int>(shown.kind);
    case StruckRole:
        return shown.struck;
    case RemarkRole:
        return shown.remark;
    case Qt::ToolTipRole:
        return kindWords(shown.kind);
    case Qt::AccessibleTextRole:
        return QStringLiteral("%1, %2: %3%4%5")
            .arg(m_times[row], kindWords(shown.kind), shown.words,
                 shown.struck ? QStringLiteral(", struck out") : QString(),
                 shown.remark.isEmpty() ? QString() : QStringLiteral(". ") + shown.remark);
    default:
        return {};
    }
}

QString kindWords(LogKind kind) {
    switch (kind) {
    case LogKind::look:
        return QStringLiteral("look");
    case LogKind::note:
        return QStringLiteral("note");
    case LogKind::setting:
        return QStringLiteral("setting");
    case LogKind::reading:
        return QStringLiteral("reading by hand");
    case LogKind::alarm:
        return QStringLiteral("alarm");
    case LogKind::forecast:
        return QStringLiteral("forecast");
    case LogKind::event:
        return QStringLiteral("event");
    }
    return {};
}

} // namespace ringhold
