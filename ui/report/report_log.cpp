#include "core/report/report_words.h"
#include "ui/report/page_table.h"
#include "ui/report/report_sections.h"
#include "ui/report/report_talk.h"

namespace ringhold {

namespace {

constexpr double sectionGap = 12;
constexpr int columnsWhenLong = 2;

QString fromStd(const std::string& text) {
    return QString::fromStdString(text);
}

PageRow rowOf(const LogLine& line, const WordStyle& style) {
    QString words = fromStd(lineWords(line, style));
    if (line.struck)
        words = ReportTalk::tr("%1 (struck out)").arg(words);
    return {{fromStd(clockWords(line.at, style)), words}, false, line.struck};
}

/// With a row for each new day.
std::vector<PageRow> rowsOf(const std::vector<LogLine>& log, const ReportContent& content) {
    std::vector<PageRow> rows;
    std::string day = dateWords(content.began, content.style, true);
    for (const auto& line : log) {
        if (const auto its = dateWords(line.at, content.style, true); its != day)
            rows.push_back({.cells = {QString(), fromStd(its)}, .stressed = true, .keepWithNext = true});
        day = dateWords(line.at, content.style, true);
        rows.push_back(rowOf(line, content.style));
    }
    return rows;
}

std::vector<LogLine> withoutHandReadings(std::vector<LogLine> log) {
    std::erase_if(log,
                  [](const LogLine& line) { return std::holds_alternative<HandReadingLine>(line.what); });
    return log;
}

} // namespace

void addLog(PageFlow& flow, const ReportContent& content, LogDensity density) {
    const bool roomy = density == LogDensity::roomy;
    const bool all = density != LogDensity::columnsWithoutHandReadings;
    const auto log = all ? content.log : withoutHandReadings(content.log);
    const PageTable table{.heads = {},
                          .rows = rowsOf(log, content),
                          .wrapping = {1},
                          .rules = roomy,
                          .points = roomy ? 9.5 : 8.0,
                          .padding = roomy ? 2.2 : 0.9};
    if (table.rows.empty())
        return;
    PageBlock heading = headingBlock(ReportTalk::tr("Log"), flow.width());
    heading.gapBefore = sectionGap;
    flow.add(std::move(heading));
    if (log.size() < content.log.size()) {
        PageBlock note = smallPrint(
            ReportTalk::tr("%1 readings by hand are in the curve and in the book; here they are left out.")
                .arg(content.log.size() - log.size()),
            flow.width());
        note.keepWithNext = true;
        flow.add(std::move(note));
    }
    if (roomy)
        addTable(flow, table);
    else
        flow.addColumns(blocksOf(table, flow.columnWidth(columnsWhenLong)), columnsWhenLong);
}

} // namespace ringhold
