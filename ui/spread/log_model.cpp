#include "ui/spread/log_model.h"

#include "core/report/log_line.h"
#include "core/watch/setting_answer.h"
#include "ui/common/forecast_words.h"
#include "ui/common/word_style.h"
#include "ui/session/preferences.h"

#include <algorithm>

namespace ringhold {

namespace {

using Lines = std::vector<PageLine>;

struct KindOf {
    LogKind operator()(const LookLine&) const { return LogKind::look; }
    LogKind operator()(const NoteLine&) const { return LogKind::note; }
    LogKind operator()(const SettingLine&) const { return LogKind::setting; }
    LogKind operator()(const HandReadingLine&) const { return LogKind::reading; }
    LogKind operator()(const AlarmLine&) const { return LogKind::alarm; }
    LogKind operator()(const StepLine&) const { return LogKind::event; }
    LogKind operator()(const MeterLine&) const { return LogKind::reading; }
    LogKind operator()(const EventLine& event) const {
        return event.kind == "forecast" ? LogKind::forecast : LogKind::event;
    }
};

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

void addAnswers(Lines& lines, const std::vector<SettingAnswer>& answers, const WordStyle& style) {
    for (const auto& answer : answers)
        for (auto& line : lines)
            if (std::ranges::count(line.keys, LineKey(answer.setting.id)) > 0)
                line.remark = QString::fromStdString(answerWords(answer, style));
}

} // namespace

std::vector<PageLine> pageLines(const FiringRecord& record, const std::vector<LogEvent>& events,
                                const std::vector<AlarmRecord>& alarms, const Preferences& preferences,
                                const std::vector<LookDoubt>& doubts,
                                const std::vector<SettingAnswer>& answers) {
    Lines lines;
    const auto style = styleOf(preferences);
    for (auto& line : logLines(record, alarms, events))
        lines.push_back({line.at, std::visit(KindOf{}, line.what),
                         QString::fromStdString(lineWordsWithoutKind(line, style)), line.struck,
                         std::move(line.keys)});
    addRemarks(lines, doubts, preferences);
    addAnswers(lines, answers, style);
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
                 shown.struck ? tr(", struck out") : QString(),
                 shown.remark.isEmpty() ? QString() : QStringLiteral(". ") + shown.remark);
    default:
        return {};
    }
}

QString kindWords(LogKind kind) {
    switch (kind) {
    case LogKind::look:
        return LogModel::tr("look");
    case LogKind::note:
        return LogModel::tr("note");
    case LogKind::setting:
        return LogModel::tr("setting");
    case LogKind::reading:
        return LogModel::tr("reading by hand");
    case LogKind::alarm:
        return LogModel::tr("alarm");
    case LogKind::forecast:
        return LogModel::tr("forecast");
    case LogKind::event:
        return LogModel::tr("event");
    }
    return {};
}

} // namespace ringhold
