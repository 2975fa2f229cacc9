#include "core/report/fired_cones.h"
#include "core/report/report_curves.h"
#include "tests/core/report/made_up_firing.h"

#include <gtest/gtest.h>

namespace ringhold::test {
namespace {

class OffsetsToldTest : public testing::Test {
  protected:
    void cold(const std::string& cone, double hour) {
        m_record.looks.push_back({LookId{static_cast<int>(m_record.looks.size()) + 1}, PackId{1},
                                  minuteIn(3000), cone, hour, true, false});
    }
    std::vector<FiledOffset> told(const std::vector<FiledOffset>& history = {}) const {
        return offsetsTold(m_record, curveOf(m_record, *controlChannel(m_record)), history);
    }

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

/// What this firing filed at its end, and what came later, must not be its own prior.
TEST_F(OffsetsToldTest, OnlyEarlierFiringsAreItsPrior) {
    cold("10", 6);
    cold("11", 2);
    const auto alone = told();
    const auto degrees = [](double d) { return TemperatureDifference::fromCelsius(d); };
    const FiledOffset own{m_record.firing.id, KilnId{1},   ProbeId{1}, "middle shelf",
                          minuteIn(1060),     degrees(30), degrees(1)};
    FiledOffset later = own;
    later.firing = FiringId{24};
    later.at = minuteIn(9000);
    EXPECT_EQ(told({own, later})[0].mean.celsius(), alone[0].mean.celsius());
    FiledOffset earlier = later;
    earlier.firing = FiringId{22};
    earlier.at = minuteIn(-9000);
    EXPECT_GT(told({earlier})[0].mean.celsius(), alone[0].mean.celsius() + 1);
}

TEST_F(OffsetsToldTest, AFiringThatGoesOnFilesNothing) {
    cold("10", 6);
    m_record.firing.ended.reset();
    EXPECT_TRUE(told().empty());
}

} // namespace
} // namespace ringhold::test
