#include "ui/report/page_flow.h"

#include "ui/report/page_text.h"
#include "ui/report/report_talk.h"
#include "ui/theme/palette.h"

#include <QPainter>

#include <algorithm>
#include <numeric>

namespace ringhold {

namespace {

constexpr double gutter = 18;
constexpr double footerGap = 16;

double heightWithGap(const PageBlock& block) {
    return block.gapBefore + block.height;
}

} // namespace

PageBlock stacked(const std::vector<PageBlock>& blocks) {
    PageBlock whole;
    for (const auto& block : blocks)
        whole.height += heightWithGap(block);
    whole.paint = [blocks](QPainter& painter, QPointF at) {
        for (const auto& block : blocks) {
            block.paint(painter, at + QPointF(0, block.gapBefore));
            at.ry() += heightWithGap(block);
        }
    };
    return whole;
}

PageBlock sideBySide(const PageBlock& left, const PageBlock& right, double offset) {
    PageBlock whole;
    whole.height = std::max(left.height, right.height);
    whole.paint = [left, right, offset](QPainter& painter, QPointF at) {
        left.paint(painter, at);
        right.paint(painter, at + QPointF(offset, 0));
    };
    return whole;
}

void PageDocument::paint(QPainter& painter, int page) const {
    painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
    for (const auto& [topLeft, paintBlock] : m_pages[static_cast<std::size_t>(page)])
        paintBlock(painter, topLeft);
    const QRectF body = bodyOf(m_paper);
    const PageType small{.points = 7.5, .ink = builtInPalettes().paper.soft};
    const QString number = ReportTalk::tr("page %1 of %2").arg(page + 1).arg(pageCount());
    const QPointF foot = body.bottomLeft() + QPointF(0, footerGap);
    PageText(ReportTalk::tr("%1 · kept with Ringhold").arg(m_title), small, body.width())
        .paint(painter, foot);
    PageText(number, small, body.width(), Qt::AlignRight).paint(painter, foot);
}

void PageFlow::newPage() {
    m_pages.emplace_back();
    m_y = m_body.top();
}

void PageFlow::place(const PageBlock& block) {
    if (!atTop())
        m_y += block.gapBefore;
    m_pages.back().push_back({{m_body.left(), m_y}, block.paint});
    m_y += block.height;
}

void PageFlow::add(PageBlock block) {
    m_waiting.push_back(std::move(block));
    if (!m_waiting.back().keepWithNext)
        placeWaiting(0);
}

void PageFlow::placeWaiting(double after) {
    double needed = after;
    for (const auto& block : m_waiting)
        needed += heightWithGap(block);
    const bool breaks = m_pages.empty() || (needed > room() && !atTop());
    if (breaks)
        newPage();
    if (breaks && m_pages.size() > 1 && !m_waiting.empty() && m_waiting.front().heading)
        place(*m_waiting.front().heading);
    for (const auto& block : m_waiting)
        place(block);
    m_waiting.clear();
}

double PageFlow::columnWidth(int columns) const {
    return (m_body.width() - gutter * (columns - 1)) / columns;
}

void PageFlow::addColumns(const std::vector<PageBlock>& blocks, int columns) {
    if (blocks.empty())
        return;
    const auto together = static_cast<double>(std::min<std::size_t>(blocks.size(), 3));
    placeWaiting(together * blocks.front().height);
    std::span<const PageBlock> rest(blocks);
    while (!rest.empty()) {
        rest = fillColumns(rest, columns);
        if (!rest.empty())
            newPage();
    }
}

std::span<const PageBlock> PageFlow::fillColumns(std::span<const PageBlock> blocks, int columns) {
    const double total =
        std::accumulate(blocks.begin(), blocks.end(), 0.0,
                        [](double sum, const PageBlock& block) { return sum + block.height; });
    const double tallest = std::ranges::max_element(blocks, {}, &PageBlock::height)->height;
    // enough for an even share: no column falls short by more than a block
    const double limit = std::min(room(), total / columns + tallest);
    double lowest = 0;
    for (int column = 0; column < columns && !blocks.empty(); ++column) {
        const QPointF top(m_body.left() + column * (columnWidth(columns) + gutter), m_y);
        double y = 0;
        do {
            m_pages.back().push_back({top + QPointF(0, y), blocks.front().paint});
            y += blocks.front().height;
            blocks = blocks.subspan(1);
        } while (!blocks.empty() && y + blocks.front().height <= limit);
        lowest = std::max(lowest, y);
    }
    m_y += lowest;
    return blocks;
}

PageDocument PageFlow::finish(const QString& title) {
    if (!m_waiting.empty())
        placeWaiting(0);
    if (m_pages.empty())
        newPage();
    return {m_paper, title, std::move(m_pages), (m_y - m_body.top()) / m_body.height()};
}

} // namespace ringhold
