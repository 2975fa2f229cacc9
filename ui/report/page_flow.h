// Blocks one under another, broken into pages.
#pragma once

#include "ui/report/page_paper.h"

#include <QPointF>
#include <QString>

#include <functional>
#include <memory>
#include <span>
#include <vector>

class QPainter;

namespace ringhold {

/// Something with a height that is never torn apart. Painters' unit is the point.
struct PageBlock {
    double height = 0;
    std::function<void(QPainter&, QPointF topLeft)> paint;
    double gapBefore = 0;                       ///< left out at the top of a page
    bool keepWithNext = false;                  ///< never the last on a page
    std::shared_ptr<const PageBlock> heading{}; ///< repeated above it where it begins a page
};

/// One under another as one block, gaps included.
PageBlock stacked(const std::vector<PageBlock>& blocks);
/// The second to the right of the first, `offset` from its left; tops level.
PageBlock sideBySide(const PageBlock& left, const PageBlock& right, double offset);

/// Finished pages, with a footer on each. Painting changes nothing: any page, any time, on any device.
class PageDocument {
  public:
    struct Placed {
        QPointF topLeft;
        std::function<void(QPainter&, QPointF)> paint;
    };
    using Page = std::vector<Placed>;

    PageDocument(Paper paper, QString title, std::vector<Page> pages, double lastPageShare)
        : m_paper(paper), m_title(std::move(title)), m_pages(std::move(pages)),
          m_lastPageShare(lastPageShare) {}

    Paper paper() const { return m_paper; }
    /// For the footer and a PDF's properties.
    const QString& title() const { return m_title; }
    int pageCount() const { return static_cast<int>(m_pages.size()); }
    /// How far down its last page is filled, 0 to 1.
    double lastPageShare() const { return m_lastPageShare; }
    /// The painter's origin is the sheet's corner, its unit the point. `page` counts from 0.
    void paint(QPainter& painter, int page) const;

  private:
    Paper m_paper;
    QString m_title;
    std::vector<Page> m_pages;
    double m_lastPageShare;
};

/// Takes blocks from top to bottom and breaks them into pages. A block higher than a page runs over its foot.
class PageFlow {
  public:
    explicit PageFlow(Paper paper) : m_paper(paper), m_body(bodyOf(paper)) {}

    /// Of a block's column.
    double width() const { return m_body.width(); }
    void add(PageBlock block);
    /// Blocks as wide as columnWidth(): down the first column, then down the next, then on the next page; the
    /// last ones are spread evenly over the columns.
    void addColumns(const std::vector<PageBlock>& blocks, int columns);
    double columnWidth(int columns) const;

    PageDocument finish(const QString& title);

  private:
    void place(const PageBlock& block);
    void newPage();
    double room() const { return m_body.bottom() - m_y; }
    bool atTop() const { return m_pages.empty() || m_pages.back().empty(); }
    /// The blocks that wait, on a page where `after` points are left below them.
    void placeWaiting(double after);
    std::span<const PageBlock> fillColumns(std::span<const PageBlock> blocks, int columns);

    Paper m_paper;
    QRectF m_body;
    double m_y = 0;
    std::vector<PageBlock> m_waiting; ///< that keep with the next
    std::vector<PageDocument::Page> m_pages;
};

} // namespace ringhold
