#include "ui/cones/cone_shape.h"

#include <QLineF>
#include <QPolygonF>
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace ringhold {
namespace {

double degrees(double radians) {
    return radians * 180 / std::numbers::pi;
}

/// From upright, clockwise: 0 up, 90 right, 180 down.
double fromUpright_deg(QPointF direction) {
    return degrees(std::atan2(direction.x(), -direction.y()));
}

/// The leaning face alone: the outline up to the tip.
QPainterPath leaningFace(const ConeShape& shape) {
    QPainterPath face;
    const auto& outline = shape.outline;
    face.moveTo(outline.elementAt(0));
    for (int i = 1; i + 2 < outline.elementCount(); i += 3) {
        face.cubicTo(outline.elementAt(i), outline.elementAt(i + 1), outline.elementAt(i + 2));
        if (QLineF(outline.elementAt(i + 2), shape.tip).length() < 1e-9)
            return face;
    }
    ADD_FAILURE() << "the tip is not on the outline";
    return face;
}

class ConeAtHour : public testing::TestWithParam<double> {
  protected:
    const double m_hour = GetParam();
    const ConePlace m_place{{100, 300}, 150, false};
    const ConeShape m_shape = coneShape(m_hour, m_place);
};

TEST_P(ConeAtHour, PointsWhereTheHourSays) {
    const auto face = leaningFace(m_shape);
    const auto& last = face.elementAt(face.elementCount() - 1);
    const auto& before = face.elementAt(face.elementCount() - 2);
    EXPECT_NEAR(fromUpright_deg(QPointF(last) - QPointF(before)), 30 * m_hour, 0.5);
}

TEST_P(ConeAtHour, HasItsChordHalfAsFarRound) {
    const QPointF chord = m_shape.tip - m_place.foot;
    EXPECT_NEAR(fromUpright_deg(chord), 15 * m_hour, 0.1);
}

TEST_P(ConeAtHour, KeepsItsLength) {
    EXPECT_NEAR(leaningFace(m_shape).length(), m_place.length, 0.001 * m_place.length);
}

TEST_P(ConeAtHour, CrossesItselfNowhere) {
    const auto polygon = m_shape.outline.toFillPolygon();
    ASSERT_GT(polygon.size(), 20);
    for (int i = 0; i + 1 < polygon.size(); ++i)
        for (int j = i + 2; j + 1 < polygon.size(); ++j) {
            if (i == 0 && j + 2 == polygon.size())
                continue; // the neighbours at the foot
            EXPECT_NE(
                QLineF(polygon[i], polygon[i + 1]).intersects(QLineF(polygon[j], polygon[j + 1]), nullptr),
                QLineF::BoundedIntersection)
                << "pieces " << i << " and " << j;
        }
}

TEST_P(ConeAtHour, HasItsRidgeInside) {
    for (double share = 0.02; share < 1; share += 0.02)
        EXPECT_TRUE(m_shape.outline.contains(m_shape.ridge.pointAtPercent(share))) << share;
}

TEST_P(ConeAtHour, IsMirroredWhenItLeansLeft) {
    auto leftPlace = m_place;
    leftPlace.leansLeft = true;
    const auto left = coneShape(m_hour, leftPlace);
    ASSERT_EQ(left.outline.elementCount(), m_shape.outline.elementCount());
    for (int i = 0; i < left.outline.elementCount(); ++i) {
        EXPECT_NEAR(left.outline.elementAt(i).x, 2 * m_place.foot.x() - m_shape.outline.elementAt(i).x, 1e-9);
        EXPECT_NEAR(left.outline.elementAt(i).y, m_shape.outline.elementAt(i).y, 1e-9);
    }
}

TEST_P(ConeAtHour, IsFoundAgainFromItsTip) {
    const double inHalves = std::round(2 * m_hour) / 2;
    EXPECT_DOUBLE_EQ(hourOfTipAt(m_shape.tip, m_place), inHalves);
    auto leftPlace = m_place;
    leftPlace.leansLeft = true;
    EXPECT_DOUBLE_EQ(hourOfTipAt(coneShape(m_hour, leftPlace).tip, leftPlace), inHalves);
}

TEST_P(ConeAtHour, StaysWithinItsReach) {
    const auto bounds = m_shape.outline.boundingRect();
    EXPECT_LE(bounds.right() - m_place.foot.x(), coneReach() * m_place.length + 0.5);
    EXPECT_GE(bounds.left() - m_place.foot.x(), -coneBaseWidth() * m_place.length - 0.5);
    EXPECT_LE(m_place.foot.y() - bounds.top(), 1.02 * m_place.length);
}

INSTANTIATE_TEST_SUITE_P(Hours, ConeAtHour,
                         testing::Values(0, 0.1, 0.5, 1, 1.5, 2, 2.5, 3, 3.5, 4, 4.6, 5, 5.5, 6));

TEST(ConeShape, IsLevelWithItsFootWhenDown) {
    const ConePlace place{{0, 0}, 1, false};
    const auto down = coneShape(6, place);
    EXPECT_NEAR(down.tip.y(), 0, 1e-3);
    EXPECT_GT(down.tip.x(), 0.5);
}

TEST(ConeShape, PointsLevelAtThree) {
    const auto level = coneShape(3, {{0, 0}, 1, false});
    EXPECT_NEAR(-level.tip.y(), level.tip.x(), 1e-3); // chord at 45°
}

TEST(ConeShape, LeansEightDegreesWhenItStands) {
    const auto bounds = coneShape(0, {{0, 0}, 1, false}).outline.boundingRect();
    EXPECT_NEAR(-bounds.left(), coneBaseWidth(), 1e-9);
    const auto outline = coneShape(0, {{0, 0}, 1, false}).outline;
    const auto tipBack = outline.elementAt(39); // after 12 pieces of the face and the tip
    const QPointF tipMiddle((tipBack.x + 0) / 2, (tipBack.y - 1) / 2);
    const QPointF baseMiddle(-coneBaseWidth() / 2, 0);
    EXPECT_NEAR(fromUpright_deg(tipMiddle - baseMiddle), 8, 0.01);
}

TEST(ConeShape, TakesHoursOutsideToTheNearest) {
    const ConePlace place{{0, 0}, 1, false};
    EXPECT_EQ(coneShape(-1, place).tip, coneShape(0, place).tip);
    EXPECT_EQ(coneShape(9, place).tip, coneShape(6, place).tip);
}

TEST(TipByHand, BelowTheFootIsDownAndBehindItStands) {
    const ConePlace place{{0, 0}, 100, false};
    EXPECT_DOUBLE_EQ(hourOfTipAt({30, 20}, place), 6);
    EXPECT_DOUBLE_EQ(hourOfTipAt({-30, 20}, place), 6);
    EXPECT_DOUBLE_EQ(hourOfTipAt({-30, -20}, place), 0);
    EXPECT_DOUBLE_EQ(hourOfTipAt({70, -70}, place), 3);
}

} // namespace
} // namespace ringhold
