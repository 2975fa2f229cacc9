#include "ui/report/page_flow.h"
#include "ui/report/page_table.h"

#include <QImage>
#include <QPainter>
#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace ringhold {
namespace {

struct Painted {
    std::string name;
    QPointF at;
};

/// Blocks that note down where they are painted.
class Pages : public testing::Test {
  protected:
    PageBlock block(const std::string& name, double height, bool keepWithNext = false) {
        PageBlock made;
        made.height = height;
        made.keepWithNext = keepWithNext;
        made.paint = [this, name](QPainter&, QPointF at) { m_painted.push_back({name, at}); };
        return made;
    }

    std::vector<Painted> paintedOn(const PageDocument& document, int page) {
        QImage image(10, 10, QImage::Format_RGB32);
        QPainter painter(&image);
        m_painted.clear();
        document.paint(painter, page);
        return m_painted;
    }

    std::string namesOn(const PageDocument& document, int page) {
        std::string names;
        for (const auto& painted : paintedOn(document, page))
            names += painted.name + " ";
        return names;
    }

    const QRectF body = bodyOf(Paper::a4);
    std::vector<Painted> m_painted;
};

TEST_F(Pages, FillFromTopToBottom) {
    PageFlow flow(Paper::a4);
    flow.add(block("a", 100));
    auto b = block("b", body.height() - 110);
    b.gapBefore = 10;
    flow.add(b);
    auto c = block("c", 5);
    c.gapBefore = 10;
    flow.add(c);
    const auto document = flow.finish(QString());
    ASSERT_EQ(document.pageCount(), 2);
    const auto first = paintedOn(document, 0);
    ASSERT_EQ(first.size(), 2u);
    EXPECT_EQ(first[0].at, body.topLeft());
    EXPECT_EQ(first[1].at, body.topLeft() + QPointF(0, 110));
    const auto second = paintedOn(document, 1);
    ASSERT_EQ(second.size(), 1u);
    EXPECT_EQ(second[0].at, body.topLeft()); // its gap is not wanted there
}

TEST_F(Pages, KeepAHeadingWithWhatFollows) {
    PageFlow flow(Paper::a4);
    flow.add(block("text", body.height() - 30));
    flow.add(block("heading", 20, true));
    flow.add(block("table", 40));
    const auto document = flow.finish(QString());
    EXPECT_EQ(namesOn(document, 0), "text ");
    EXPECT_EQ(namesOn(document, 1), "heading table ");
}

TEST_F(Pages, RepeatTheHeadOfATableThatBreaks) {
    PageFlow flow(Paper::a4);
    flow.add(block("text", body.height() - 50));
    const auto head = std::make_shared<const PageBlock>(block("head", 10));
    flow.add(block("head", 10, true));
    for (const char* row : {"1", "2", "3", "4"}) {
        auto made = block(row, 20);
        made.heading = head;
        flow.add(made);
    }
    const auto document = flow.finish(QString());
    EXPECT_EQ(namesOn(document, 0), "text head 1 2 ");
    EXPECT_EQ(namesOn(document, 1), "head 3 4 ");
}

TEST_F(Pages, FillColumnsOneAfterTheOther) {
    PageFlow flow(Paper::a4);
    std::vector<PageBlock> lines;
    const int inColumn = static_cast<int>(body.height() / 10);
    for (int i = 0; i < 2 * inColumn + 10; ++i)
        lines.push_back(block(std::to_string(i), 10));
    flow.addColumns(lines, 2);
    flow.add(block("after", 10));
    const auto document = flow.finish(QString());
    ASSERT_EQ(document.pageCount(), 2);
    const auto first = paintedOn(document, 0);
    EXPECT_EQ(first.size(), 2u * inColumn);
    EXPECT_EQ(first[0].at.x(), body.left());
    EXPECT_EQ(first.back().at.x(), body.left() + flow.columnWidth(2) + 18);
    const auto second = paintedOn(document, 1);
    ASSERT_EQ(second.size(), 11u); // ten, spread over both columns, and what comes after
    EXPECT_LE(second.back().at.y(), body.top() + 60);
    EXPECT_GE(second.back().at.y(), body.top() + 50);
}

TEST_F(Pages, OfNothingAreOneEmptyPage) {
    EXPECT_EQ(PageFlow(Paper::letter).finish(QString()).pageCount(), 1);
}

TEST(PageTable, GivesWrappingColumnsWhatIsLeft) {
    const PageTable table{{QStringLiteral("a"), QStringLiteral("b")},
                          {{{QStringLiteral("18:08"), QStringLiteral("long words that go on and on")}}},
                          {1}};
    const auto columns = columnsOf(table, 300);
    ASSERT_EQ(columns.size(), 2u);
    EXPECT_LT(columns[0].width, 40);
    EXPECT_NEAR(columns[1].left + columns[1].width, 300, 0.01);
    const auto narrow = blocksOf(table, 120);
    EXPECT_GT(narrow[1].height, blocksOf(table, 300)[1].height); // its words take more lines
    EXPECT_TRUE(narrow[0].keepWithNext);
}

TEST(PageTable, SharesRoomFairlyAmongWrappingColumns) {
    const QString longWords = QStringLiteral("words ").repeated(40);
    const PageTable table{
        {}, {{{QStringLiteral("vase 1"), QStringLiteral("frost fern"), longWords}}}, {0, 1, 2}};
    const auto columns = columnsOf(table, 400);
    ASSERT_EQ(columns.size(), 3u);
    EXPECT_LT(columns[1].left, 50); // as wide as it needs to be
    EXPECT_NEAR(columns[2].left + columns[2].width, 400, 0.01);
    EXPECT_GT(columns[2].width, 280);
}

TEST(PageTable, KeepsAHeadingWithinItWithTheNextRow) {
    const PageTable table{
        {}, {{.cells = {QStringLiteral("Monday")}, .keepWithNext = true}, {{QStringLiteral("a")}}}};
    const auto rows = blocksOf(table, 100);
    EXPECT_TRUE(rows[0].keepWithNext);
    EXPECT_FALSE(rows[1].keepWithNext);
}

TEST(PageTable, SpreadsItsColumns) {
    PageTable table{{}, {{{QStringLiteral("a"), QStringLiteral("b"), QStringLiteral("c")}}}};
    const double together = columnsOf(table, 300)[2].left;
    table.spread = true;
    EXPECT_NEAR(columnsOf(table, 300)[2].left, together + 2 * 26, 0.01);
    EXPECT_NEAR(columnsOf(table, 30)[2].left, together, 0.01); // there is no room
}

} // namespace
} // namespace ringhold
