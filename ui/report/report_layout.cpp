#include "ui/report/report_layout.h"

#include "core/report/report_words.h"
#include "ui/report/report_plot.h"
#include "ui/report/report_sections.h"

#include <QStringList>

#include <algorithm>

namespace ringhold {

namespace {

constexpr int mostPages = 3;      ///< and one more for photos
constexpr double fewLines = 0.35; ///< of a page; for less it is worth setting the log closer
constexpr double curveHeight = 228;
constexpr double halfGap = 24;
constexpr double sectionGap = 12;

QString fromStd(const std::string& text) {
    return QString::fromStdString(text);
}

/// Packs and crystal, two to a row.
void addCones(PageFlow& flow, const ReportContent& content) {
    const double half = (flow.width() - halfGap) / 2;
    std::vector<PageBlock> halves;
    for (const auto& pack : content.packs)
        if (!pack.cones.empty())
            halves.push_back(packBlock(pack, content.style, half));
    if (content.crystal)
        halves.insert(halves.begin() + (halves.empty() ? 0 : 1), crystalBlock(*content.crystal, half));
    for (std::size_t i = 0; i < halves.size(); i += 2) {
        PageBlock row =
            i + 1 < halves.size() ? sideBySide(halves[i], halves[i + 1], half + halfGap) : halves[i];
        row.gapBefore = sectionGap;
        flow.add(std::move(row));
    }
}

void addSmallPrint(PageFlow& flow, const ReportContent& content) {
    QStringList figures;
    for (const auto& remark : remarks(content))
        figures << fromStd(remark);
    QStringList cautions;
    for (const auto caution : content.cautions)
        cautions << fromStd(cautionWords(caution, content.style));
    for (const auto& sentences : {figures, cautions}) {
        PageBlock block = smallPrint(sentences.join(u' '), flow.width());
        block.gapBefore = sectionGap;
        flow.add(std::move(block));
    }
}

PageDocument layOut(const ReportContent& content, Paper paper, LogDensity density) {
    PageFlow flow(paper);
    flow.add(headerBlock(content, flow.width()));
    PageBlock curve = curveBlock(content, flow.width(), curveHeight);
    curve.gapBefore = 8;
    flow.add(std::move(curve));
    addCones(flow, content);
    addHolds(flow, content);
    addRings(flow, content);
    addUse(flow, content);
    addAlarms(flow, content);
    addWare(flow, content);
    addPhotos(flow, content);
    addLog(flow, content, density);
    addSmallPrint(flow, content);
    return flow.finish(fromStd(titleWords(content)));
}

} // namespace

PageDocument layOutReport(const ReportContent& content, Paper paper) {
    PageDocument roomy = layOut(content, paper, LogDensity::roomy);
    const bool pictured = std::ranges::any_of(content.ware, [](const auto& w) { return !w.photos.empty(); });
    const int most = mostPages + (pictured ? 1 : 0);
    const bool wellFilled = roomy.pageCount() == 1 || roomy.lastPageShare() > fewLines;
    if (wellFilled && roomy.pageCount() <= most)
        return roomy;
    PageDocument columns = layOut(content, paper, LogDensity::columns);
    if (columns.pageCount() <= most)
        return columns.pageCount() < roomy.pageCount() ? columns : roomy;
    return layOut(content, paper, LogDensity::columnsWithoutHandReadings);
}

} // namespace ringhold
