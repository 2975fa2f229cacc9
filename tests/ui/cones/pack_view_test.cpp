#include "tests/support/screens.h"
#include "ui/cones/pack_view.h"

#include <QImage>
#include <gtest/gtest.h>

namespace ringhold {
namespace {

DrawnPack pack() {
    return {{{QStringLiteral("9"), 4, GhostCone{4.6, 4, 5.2}, false},
             {QStringLiteral("10"), 0.5, GhostCone{0.9, 0.5, 1.4}, true},
             {QStringLiteral("11"), 0, GhostCone{0.1, 0, 0.3}, false}},
            false};
}

PackDrawing drawing(bool leansLeft = false) {
    auto drawn = pack();
    drawn.leansLeft = leansLeft;
    return PackDrawing(drawn, QRectF(10, 20, 340, 160), 20);
}

TEST(PackDrawing, KeepsEverythingInItsArea) {
    const QRectF area(10, 20, 340, 160);
    for (const bool leansLeft : {false, true}) {
        for (double hour = 0; hour <= 6; hour += 0.5) {
            auto drawn = pack();
            drawn.leansLeft = leansLeft;
            for (auto& cone : drawn.cones)
                cone.hour = hour;
            const PackDrawing placed(drawn, area, 20);
            EXPECT_TRUE(area.contains(placed.plaque()));
            for (std::size_t i = 0; i < 3; ++i) {
                EXPECT_TRUE(area.contains(coneShape(hour, placed.place(i)).outline.boundingRect())) << hour;
                EXPECT_TRUE(area.contains(placed.nameRect(i)));
            }
        }
    }
}

TEST(PackDrawing, IsMirroredWhenThePackLeansLeft) {
    const auto right = drawing(false);
    const auto left = drawing(true);
    for (std::size_t i = 0; i < 3; ++i)
        EXPECT_NEAR(left.place(i).foot.x() - 180, 180 - right.place(i).foot.x(), 1e-9);
    EXPECT_LT(right.place(0).foot.x(), right.place(1).foot.x());
}

TEST(PackDrawing, FindsTheConeAtItsTipBodyAndName) {
    for (const bool leansLeft : {false, true}) {
        const auto placed = drawing(leansLeft);
        for (std::size_t i = 0; i < 3; ++i) {
            const auto shape = coneShape(placed.pack().cones[i].hour, placed.place(i));
            EXPECT_EQ(placed.coneAt(shape.tip), i);
            EXPECT_EQ(placed.coneAt(shape.ridge.pointAtPercent(0.2)), i);
            EXPECT_EQ(placed.coneAt(placed.nameRect(i).center()), i);
        }
        EXPECT_EQ(placed.coneAt({-200, -200}), std::nullopt);
    }
}

TEST(PackView, TellsThePackInWords) {
    Theme theme;
    PackView view(theme);
    view.setPack(pack());
    EXPECT_FALSE(view.accessibleName().isEmpty());
    EXPECT_EQ(view.accessibleDescription(),
              QStringLiteral(
                  "9 at 4 o’clock, 10 just leaning, 11 standing; thought to be now: 9 at 4½ o’clock "
                  "(4 to 5), 10 at 1 o’clock (just leaning to 1½), 11 standing (standing to just leaning)"));
    view.resize(340, 170);
    keepScreens(view, theme, QStringLiteral("pack"));
}

/// How many pixels are exactly that colour.
int pixelsOf(const QImage& image, const QColor& colour) {
    int count = 0;
    for (int y = 0; y < image.height(); ++y)
        for (int x = 0; x < image.width(); ++x)
            count += image.pixelColor(x, y) == colour;
    return count;
}

TEST(PackView, PaintsInTheColoursOfTheThemeAndInFullAtTwoPixelsAPoint) {
    Theme theme;
    PackView view(theme);
    view.setPack({{{QStringLiteral("9"), 3, std::nullopt, false}}, false});
    view.resize(200, 160);
    for (const auto name : {ThemeName::paper, ThemeName::ember}) {
        theme.show(name);
        const int once = pixelsOf(pictureOf(view, 1), theme.palette().cone);
        const int twice = pixelsOf(pictureOf(view, 2), theme.palette().cone);
        EXPECT_GT(once, 500);
        EXPECT_GT(twice, 3.9 * once); // more inside, since less of it is edge
    }
}

} // namespace
} // namespace ringhold
