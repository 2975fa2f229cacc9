#include "core/report/fired_cones.h"
#include "core/report/report_curves.h"
#include "tests/core/report/made_up_firing.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace ringhold::test {
namespace {

class OffsetsToldTest : public testing::Test {
  protected:
    void cold(const std::string& cone, double hour) {
        m_record.looks.push_back({LookId{static_cast<int>(m_record.looks.size()) + 1}, PackId{1},
                                  minuteIn(3000), cone, hour, true, false});
    }
    Curve control() const { return curveOf(m_record, *controlChannel(m_record)); }
    std::vector<FiledOffset> told() const { return offsetsTold(m_record, control()); }

    FiringRecord m_record = madeUpFiring();
};

TEST_F(OffsetsToldTest, NothingIsToldByNoLook) {
    EXPECT_TRUE(told().empty());
}

TEST_F(OffsetsToldTest, TheColdPackTellsTheOffset) {
    cold("9", 6);
    cold("10", 6);
    cold("11", 0);
    const auto standing = told();
    ASSERT_EQ(standing.size(), 1U);
    EXPECT_EQ(standing[0].firing, m_record.firing.id);
    EXPECT_EQ(standing[0].probe, ProbeId{1});
    EXPECT_EQ(standing[0].place, "middle shelf");
    EXPECT_EQ(standing[0].at, *m_record.firing.ended) << "it is of the firing, not of the day it was read";
    m_record.looks.back().hour = 4;
    const auto bent = told();
    EXPECT_LT(bent[0].mean.celsius(), standing[0].mean.celsius() - 2)
        << "a cone that bent further felt more than the probe read";
    EXPECT_LT(bent[0].sd.celsius(), 6) << "than the 8.4 °C of a new probe";
    m_record.looks.back().struck = true;
    EXPECT_GT(told()[0].sd.celsius(), bent[0].sd.celsius()) << "a struck one counts for nothing";
}

/// The forecast starts from what earlier firings filed; what is filed must not hold it once more.
TEST_F(OffsetsToldTest, WhatEarlierFiringsFiledIsNotFiledTwice) {
    cold("10", 6);
    cold("11", 2);
    const auto degrees = [](double d) { return TemperatureDifference::fromCelsius(d); };
    const FiledOffset earlier{FiringId{22},    KilnId{1},   ProbeId{1}, "middle shelf",
                              minuteIn(-9000), degrees(15), degrees(1)};
    const auto withHistory = firedCones(m_record, control(), {earlier});
    const auto alone = firedCones(m_record, control(), {});
    ASSERT_TRUE(withHistory && alone);
    EXPECT_GT(withHistory->forecast.packs[0].offsetMean.celsius(),
              alone->forecast.packs[0].offsetMean.celsius() + 1);
    // without the pull of any prior, towards 0 or 15
    const double told_C = told()[0].mean.celsius();
    EXPECT_GT(std::abs(told_C), std::abs(alone->forecast.packs[0].offsetMean.celsius()));
    EXPECT_GT(told()[0].sd.celsius(), alone->forecast.packs[0].offsetSd.celsius());
}

/// A cold cone has felt the cooling too, which the readings may not go on to.
TEST_F(OffsetsToldTest, ReadingsThatEndAtTheTopLeaveTheCoolingToBeReckoned) {
    cold("10", 6);
    cold("11", 2);
    const auto whole = told();
    Curve toTheTop = control();
    const auto top = std::ranges::max_element(toTheTop, {}, &CurvePoint::temperature);
    toTheTop.erase(std::next(top), toTheTop.end());
    const auto cut = offsetsTold(m_record, toTheTop);
    ASSERT_EQ(cut.size(), 1U);
    EXPECT_NEAR(cut[0].mean.celsius(), whole[0].mean.celsius(), 3);
}

TEST_F(OffsetsToldTest, AFiringThatGoesOnFilesNothing) {
    cold("10", 6);
    m_record.firing.ended.reset();
    EXPECT_TRUE(told().empty());
}

} // namespace
} // namespace ringhold::test
