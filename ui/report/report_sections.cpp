#include "ui/report/report_sections.h"

#include "core/report/report_words.h"
#include "ui/cones/pack_drawing.h"
#include "ui/report/crystal_drawing.h"
#include "ui/report/page_table.h"
#include "ui/report/report_talk.h"
#include "ui/theme/palette.h"

#include <QPainter>

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

constexpr double sectionGap = 12;
constexpr double packHeight = 62;
constexpr double crystalSide = 140;
constexpr double pointsPerMm = 72 / 25.4;

const Palette& paper() {
    return builtInPalettes().paper;
}

QString fromStd(const std::string& text) {
    return QString::fromStdString(text);
}

PageBlock textBlock(const QString& words, const PageType& type, double width,
                    Qt::Alignment alignment = Qt::AlignLeft) {
    const PageText text(words, type, width, alignment);
    PageBlock block;
    block.height = text.height();
    block.paint = [text](QPainter& painter, QPointF at) { text.paint(painter, at); };
    return block;
}

PageTable tableOf(const ReportTable& table) {
    PageTable laid;
    laid.spread = true;
    for (const auto& head : table.heads)
        laid.heads << fromStd(head);
    for (std::size_t i = 0; i < table.rows.size(); ++i) {
        auto& row = laid.rows.emplace_back();
        row.stressed = table.stressed[i];
        for (const auto& cell : table.rows[i])
            row.cells << fromStd(cell);
    }
    return laid;
}

DrawnPack drawnPack(const ReportedPack& pack) {
    DrawnPack drawn;
    drawn.leansLeft = pack.leansLeft;
    for (const auto& cone : pack.cones) {
        const auto& last = cone.last;
        auto& shape = drawn.cones.emplace_back(DrawnCone{fromStd(cone.cone), last.hour, {}, cone.waitedFor});
        if (last.source == ConeSource::model)
            shape.ghost = GhostCone{last.hour, last.model.p05, last.model.p95};
    }
    return drawn;
}

/// A scale at which the crystal's farthest edge has room.
struct CrystalScale {
    double share;
    QString words;
};

CrystalScale scaleFor(const SizeRange& radius) {
    for (const auto& [share, words] : {CrystalScale{1, ReportTalk::tr("drawn life size")},
                                       CrystalScale{0.5, ReportTalk::tr("drawn at half its size")}})
        if (2 * radius.high_mm * pointsPerMm * share <= crystalSide)
            return {share, words};
    return {crystalSide / (2 * radius.high_mm * pointsPerMm), ReportTalk::tr("drawn smaller, to scale")};
}

void addSection(PageFlow& flow, const QString& heading) {
    PageBlock block = headingBlock(heading, flow.width());
    block.gapBefore = sectionGap;
    flow.add(std::move(block));
}

} // namespace

PageBlock headerBlock(const ReportContent& content, double width) {
    const PageType big{.points = 18, .ink = paper().ink, .weight = QFont::Bold, .leading = 1.2};
    const PageType soft{.points = 9.5, .ink = paper().soft};
    const QString dates = fromStd(datesWords(content));
    const PageText title(fromStd(titleWords(content)), big, width);
    const double datesWidth = PageText::widthOf(dates, soft) + 1;
    const bool onOneLine = title.naturalWidth() + datesWidth + 20 <= width;
    const PageText when(dates, soft, onOneLine ? datesWidth : width);
    const PageText summary(fromStd(summaryWords(content)), soft, width);
    const double datesTop = onOneLine ? title.baseline() - when.baseline() : title.height();
    const double summaryTop = std::max(title.height(), datesTop + when.height()) + 2;
    PageBlock block;
    block.height = summaryTop + summary.height() + 6;
    const QPointF whenAt(onOneLine ? width - datesWidth : 0, datesTop);
    block.paint = [=, height = block.height](QPainter& painter, QPointF at) {
        title.paint(painter, at);
        when.paint(painter, at + whenAt);
        summary.paint(painter, at + QPointF(0, summaryTop));
        painter.setPen(QPen(paper().faint, 0.6));
        painter.drawLine(at + QPointF(0, height), at + QPointF(width, height));
    };
    return block;
}

PageBlock headingBlock(const QString& words, double width) {
    const PageType type{
        .points = 12.5, .ink = paper().ink, .weight = QFont::DemiBold, .face = PageFace::heading};
    PageBlock block = textBlock(words, type, width);
    block.height += 1;
    block.keepWithNext = true;
    return block;
}

PageBlock smallPrint(const QString& words, double width) {
    return textBlock(words, {.points = 8, .ink = paper().soft}, width);
}

PageBlock packBlock(const ReportedPack& pack, const WordStyle& style, double width) {
    const QString heading =
        pack.place.empty() ? ReportTalk::tr("Cones") : ReportTalk::tr("Cones, %1").arg(fromStd(pack.place));
    const PageType nameType{.points = 9, .ink = paper().ink};
    PageBlock cones;
    cones.height = packHeight + 14;
    cones.gapBefore = 4;
    cones.paint = [drawn = drawnPack(pack), width, nameType](QPainter& painter, QPointF at) {
        const PackDrawing drawing(drawn, QRectF(at, QSizeF(width, packHeight)), 0);
        drawing.paint(painter, PackInks::onPaper(paper()), QFont());
        for (std::size_t i = 0; i < drawn.cones.size(); ++i) {
            PageType type = nameType;
            type.weight = drawn.cones[i].picked ? QFont::Bold : QFont::Normal;
            const QRectF below = drawing.nameRect(i);
            PageText(drawn.cones[i].name, type, 60, Qt::AlignHCenter)
                .paint(painter, {below.center().x() - 30, below.top() + 1});
        }
    };
    std::vector<PageBlock> parts{headingBlock(heading, width), cones};
    auto rows = blocksOf(tableOf(coneTable(pack, style)), width);
    std::ranges::move(rows, std::back_inserter(parts));
    return stacked(parts);
}

PageBlock crystalBlock(const ReportedCrystal& crystal, double width) {
    const auto scale = scaleFor(crystal.radius);
    const double textLeft = crystalSide + 8;
    const double textWidth = width - textLeft;
    std::vector<PageBlock> lines;
    const auto say = [&](const QString& words, double points, const QColor& ink) {
        lines.push_back(textBlock(words, {.points = points, .ink = ink, .leading = 1.25}, textWidth));
        lines.back().gapBefore = lines.size() > 1 ? 4 : 0;
    };
    for (const auto& words : crystalWords(crystal))
        say(fromStd(words), lines.empty() ? 9.5 : 8, lines.empty() ? paper().ink : paper().soft);
    say(ReportTalk::tr("%1; the dashes are the least, the haze the most it may be").arg(scale.words), 8,
        paper().soft);
    PageBlock words = stacked(lines);
    PageBlock picture;
    picture.height = crystalSide;
    picture.paint = [crystal, scale](QPainter& painter, QPointF at) {
        paintCrystal(painter, {crystal.radius, crystal.rings}, at + QPointF(crystalSide, crystalSide) / 2,
                     pointsPerMm * scale.share, paper());
    };
    words.gapBefore = std::max(0.0, (crystalSide - words.height) / 2);
    PageBlock both = sideBySide(picture, stacked({words}), textLeft);
    both.gapBefore = 4;
    return stacked({headingBlock(ReportTalk::tr("The crystal it drew"), width), both});
}

void addHolds(PageFlow& flow, const ReportContent& content) {
    if (content.holds.empty())
        return;
    addSection(flow, ReportTalk::tr("Holds"));
    addTable(flow, tableOf(holdTable(content)));
    for (const auto& remark : holdRemarks(content))
        flow.add(smallPrint(fromStd(remark), flow.width()));
}

void addRings(PageFlow& flow, const ReportContent& content) {
    for (const auto& step : content.rings) {
        addSection(flow, ReportTalk::tr("Growth rings"));
        if (step.rings.empty())
            flow.add(smallPrint(ReportTalk::tr("None of the %1 planned is to be seen in the curve.")
                                    .arg(fromStd(countWords(step.planned))),
                                flow.width()));
        else
            addTable(flow, tableOf(ringTable(step, content.style)));
    }
}

void addUse(PageFlow& flow, const ReportContent& content) {
    const auto table = figureTable(content);
    if (table.rows.empty())
        return;
    addSection(flow, ReportTalk::tr("Energy and cost"));
    addTable(flow, tableOf(table));
}

void addAlarms(PageFlow& flow, const ReportContent& content) {
    const auto table = alarmTable(content);
    if (table.rows.empty())
        return;
    addSection(flow, QStringLiteral("Alarms"));
    addTable(flow, tableOf(table));
}

void addWare(PageFlow& flow, const ReportContent& content) {
    if (content.ware.empty())
        return;
    addSection(flow, ReportTalk::tr("Ware"));
    PageTable table = tableOf(wareTable(content));
    table.wrapping = {0, 1, 8};
    table.points = 8;
    addTable(flow, table);
}

} // namespace ringhold
