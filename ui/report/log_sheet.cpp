#include "ui/report/log_sheet.h"

#include "ui/report/page_text.h"
#include "ui/theme/palette.h"

#include <QCoreApplication>
#include <QPainter>

namespace ringhold {

namespace {

constexpr double marginWidth = 112; ///< of the plan's times
constexpr double marginGap = 14;
constexpr double rowHeight = 21; ///< room for a pencil
constexpr double headHeight = 16;
constexpr double footHeight = 40;

struct SheetWords {
    Q_DECLARE_TR_FUNCTIONS(LogSheet)
};

const Palette& paperInks() {
    return builtInPalettes().paper;
}

PageType inkType(double points, QFont::Weight weight = QFont::Normal) {
    return {.points = points, .ink = paperInks().ink, .weight = weight};
}

PageType softType(double points) {
    return {.points = points, .ink = paperInks().soft};
}

struct SheetColumn {
    QString head;
    double share; ///< of the table's width
};

std::vector<SheetColumn> columnsFor(const LogSheet& sheet) {
    QString look = SheetWords::tr("look");
    if (!sheet.cones.isEmpty())
        look += QStringLiteral(": ") + sheet.cones.join(QStringLiteral(" · "));
    return {{SheetWords::tr("time"), 0.12},
            {SheetWords::tr("reading %1").arg(sheet.unit), 0.16},
            {SheetWords::tr("setting"), 0.19},
            {look, 0.23},
            {SheetWords::tr("note"), 0.30}};
}

/// The ruled table, as many rows as there is room for.
PageBlock ruled(const LogSheet& sheet, double width, double height) {
    PageBlock block;
    block.height = height;
    block.paint = [columns = columnsFor(sheet), width, height](QPainter& painter, QPointF at) {
        const int rows = static_cast<int>((height - headHeight) / rowHeight);
        const double bottom = headHeight + rows * rowHeight;
        double x = 0;
        for (const auto& column : columns) {
            PageText(column.head, softType(8.5), column.share * width - 4)
                .paint(painter, at + QPointF(x + 3, 0));
            painter.setPen(QPen(paperInks().faint, 0.5));
            if (x > 0)
                painter.drawLine(at + QPointF(x, headHeight), at + QPointF(x, bottom));
            x += column.share * width;
        }
        for (int row = 0; row <= rows; ++row) {
            const double y = headHeight + row * rowHeight;
            painter.setPen(QPen(row == 0 ? paperInks().soft : paperInks().faint, row == 0 ? 0.8 : 0.5));
            painter.drawLine(at + QPointF(0, y), at + QPointF(width, y));
        }
    };
    return block;
}

PageBlock planMargin(const LogSheet& sheet, double height) {
    std::vector<std::pair<PageText, PageText>> lines;
    double left = height - headHeight;
    for (const auto& [when, what] : sheet.plan) {
        lines.emplace_back(PageText(when, inkType(9.5, QFont::Bold), marginWidth),
                           PageText(what, inkType(8.5), marginWidth));
        left -= lines.back().first.height() + lines.back().second.height() + 5;
        if (left < 0) {
            lines.pop_back();
            break;
        }
    }
    PageBlock block;
    block.height = height;
    block.paint = [lines](QPainter& painter, QPointF at) {
        PageText(SheetWords::tr("the plan"), softType(8.5), marginWidth).paint(painter, at);
        at.ry() += headHeight + 2;
        for (const auto& [when, what] : lines) {
            when.paint(painter, at);
            what.paint(painter, at + QPointF(0, when.height()));
            at.ry() += when.height() + what.height() + 5;
        }
    };
    return block;
}

PageBlock head(const LogSheet& sheet, double width) {
    const PageText title(sheet.title.isEmpty() ? SheetWords::tr("Firing log") : sheet.title,
                         inkType(18, QFont::Bold), width);
    const PageText summary(sheet.summary, softType(9.5), width);
    const PageText day(SheetWords::tr("date, and who sits by the kiln"), softType(8.5), 200);
    PageBlock block;
    block.height = title.height() + (sheet.summary.isEmpty() ? 0 : summary.height()) + 24;
    block.paint = [=, height = block.height](QPainter& painter, QPointF at) {
        title.paint(painter, at);
        summary.paint(painter, at + QPointF(0, title.height()));
        day.paint(painter, at + QPointF(0, height - 18));
        painter.setPen(QPen(paperInks().faint, 0.5));
        painter.drawLine(at + QPointF(day.naturalWidth() + 8, height - 8), at + QPointF(width, height - 8));
    };
    return block;
}

PageBlock foot(double width) {
    const PageText words(
        SheetWords::tr(
            "Write the clock’s time. An hour of a cone is where its tip points: 12 standing, 3 level, "
            "6 down. At the spyhole wear infrared-rated eyewear. When the power comes back the "
            "controller may heat again by itself: stay with the kiln. Typed in later under "
            "Write, “From a paper log”."),
        softType(8), width);
    PageBlock block;
    block.height = footHeight;
    block.gapBefore = 4;
    block.paint = [words](QPainter& painter, QPointF at) { words.paint(painter, at + QPointF(0, 4)); };
    return block;
}

} // namespace

PageDocument layOutLogSheet(const LogSheet& sheet, Paper paper) {
    PageFlow flow(paper);
    const double width = flow.width();
    const double body = bodyOf(paper).height();
    PageBlock top = head(sheet, width);
    const double room = body - top.height - footHeight - 4;
    const double left = sheet.plan.empty() ? 0 : marginWidth + marginGap;
    PageBlock table = ruled(sheet, width - left, room);
    flow.add(std::move(top));
    flow.add(left > 0 ? sideBySide(planMargin(sheet, room), table, left) : std::move(table));
    flow.add(foot(width));
    flow.add(ruled(sheet, width, body));
    return flow.finish(sheet.title.isEmpty() ? SheetWords::tr("Firing log") : sheet.title);
}

} // namespace ringhold
