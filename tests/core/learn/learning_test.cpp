#include "core/learn/learning.h"
#include "core/learn/next_experiment.h"
#include "tests/core/learn/made_up_pieces.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

namespace ringhold {
namespace {

using test::MadeUpFiring;
using test::madeUpPieces;

/// Holds from 1060 to 1120 °C, in no order that other causes follow.
std::vector<MadeUpFiring> wideHolds(int count) {
    std::vector<MadeUpFiring> firings;
    for (int i = 0; i < count; ++i)
        firings.push_back(
            {1060 + 60.0 * ((i * 7) % count) / (count - 1), 3.5 + 0.25 * (i % 5), 1268 + 2.0 * (i % 3)});
    return firings;
}

double peaked(const MadeUpFiring& firing) {
    return 30 - 0.01 * std::pow(firing.hold_C - 1088, 2);
}

double flat(const MadeUpFiring&) {
    return 25;
}

const Lesson& on(const std::vector<Lesson>& lessons, Cause cause) {
    return *std::ranges::find(lessons, cause, &Lesson::cause);
}

TEST(Learning, FewFiringsAreNotEnough) {
    const auto lessons = learnFrom(madeUpPieces(wideHolds(3), 8, 2, peaked), {});
    ASSERT_EQ(lessons.size(), 5U);
    for (const auto& lesson : lessons) {
        EXPECT_EQ(lesson.verdict, Verdict::notEnough);
        EXPECT_EQ(lesson.shortfall, Shortfall::tooFewFirings);
        EXPECT_FALSE(lesson.claim);
    }
    EXPECT_EQ(lessons.front().pieces, 24);
    EXPECT_EQ(lessons.front().firings, 3);
    EXPECT_EQ(learnFrom({}, {}).front().verdict, Verdict::notEnough);
}

TEST(Learning, ClaimsABestTemperatureThatIsThere) {
    const auto pieces = madeUpPieces(wideHolds(12), 4, 2, peaked);
    const auto lesson = on(learnFrom(pieces, {}), Cause::growthHold);
    ASSERT_EQ(lesson.verdict, Verdict::claimed);
    EXPECT_EQ(lesson.pieces, 48);
    EXPECT_EQ(lesson.firings, 12);
    EXPECT_EQ(lesson.claim->trend, Trend::best);
    EXPECT_NEAR(*lesson.claim->bestAt, 1088, 4);
    EXPECT_LT(lesson.claim->bestAt90->low, 1088);
    EXPECT_GT(lesson.claim->bestAt90->high, 1088);
    EXPECT_NEAR(lesson.claim->change, 0.01 * 32 * 32, 3) << "from 1120 °C, the farther end";
    EXPECT_DOUBLE_EQ(lesson.curve.front().cause, 1060);
    EXPECT_DOUBLE_EQ(lesson.curve.back().cause, 1120);
    EXPECT_NEAR(lesson.curve[16].value, peaked({1090}), 1.5);
    EXPECT_LE(lesson.chance, 0.05);
}

TEST(Learning, ManyPiecesOfFewFiringsAreNoMoreThanTheirFirings) {
    // one odd firing, a hundred pieces each: a fit of the pieces would claim surely
    auto firings = wideHolds(4);
    const auto odd = [](const MadeUpFiring& firing) {
        return firing.hold_C > 1115 ? 35.0 : firing.hold_C > 1090 ? 24.0 : 26.0;
    };
    const auto lesson = on(learnFrom(madeUpPieces(firings, 100, 2, odd), {}), Cause::growthHold);
    EXPECT_EQ(lesson.verdict, Verdict::notEnough);
    EXPECT_EQ(lesson.shortfall, Shortfall::unclear);
    EXPECT_EQ(lesson.firings, 4);
    EXPECT_EQ(lesson.pieces, 400);
}

TEST(Learning, SaysWhenNothingIsSeen) {
    const auto lesson = on(learnFrom(madeUpPieces(wideHolds(12), 8, 5, flat), {}), Cause::growthHold);
    EXPECT_EQ(lesson.verdict, Verdict::nothingSeen);
    EXPECT_FALSE(lesson.claim);
    EXPECT_FALSE(lesson.shortfall);
}

TEST(Learning, HoldsThatWereAllAlikeTellNothing) {
    auto firings = wideHolds(8);
    for (auto& firing : firings)
        firing.hold_C = 1090;
    EXPECT_EQ(on(learnFrom(madeUpPieces(firings, 4, 2, flat), {}), Cause::growthHold).shortfall,
              Shortfall::allAlike);
}

TEST(Learning, UnsureOffsetsWidenOrForbid) {
    const auto sharp = on(learnFrom(madeUpPieces(wideHolds(12), 4, 2, peaked), {}), Cause::growthHold);
    const auto shared = on(learnFrom(madeUpPieces(wideHolds(12), 4, 2, peaked, 0, 8), {}), Cause::growthHold);
    EXPECT_DOUBLE_EQ(shared.sharedSd_C, 8);
    const auto width = [](const Lesson& lesson) {
        return lesson.claim->bestAt90->high - lesson.claim->bestAt90->low;
    };
    EXPECT_GT(width(shared), 2 * 1.64 * 8);
    EXPECT_LT(width(sharp), 20);
    const auto own = on(learnFrom(madeUpPieces(wideHolds(12), 4, 2, peaked, 6, 0), {}), Cause::growthHold);
    EXPECT_DOUBLE_EQ(own.ownSd_C, 6);
    EXPECT_GT(own.curve.front().cause, 1060) << "pulled towards the mean";
    const auto forbidden =
        on(learnFrom(madeUpPieces(wideHolds(12), 4, 2, peaked, 25, 0), {}), Cause::growthHold);
    EXPECT_EQ(forbidden.shortfall, Shortfall::temperaturesUnsure);
    EXPECT_FALSE(forbidden.claim);
}

TEST(Learning, TwoSeriesDoNotShareTheirError) {
    auto pieces = madeUpPieces(wideHolds(12), 4, 2, peaked, 0, 3);
    for (std::size_t i = 0; i < pieces.size() / 2; ++i)
        pieces[i].growthHold->series = "K2";
    const auto lesson = on(learnFrom(pieces, {}), Cause::growthHold);
    EXPECT_DOUBLE_EQ(lesson.ownSd_C, 3);
    EXPECT_DOUBLE_EQ(lesson.sharedSd_C, 0);
}

TEST(Learning, PointsOutThatHotHoldsWereOnOneShelf) {
    auto firings = wideHolds(10);
    for (auto& firing : firings)
        firing.position = firing.hold_C > 1090 ? "bottom" : firing.hold_C > 1075 ? "middle" : "top";
    const auto rising = [](const MadeUpFiring& firing) { return 0.2 * (firing.hold_C - 1000); };
    const auto lesson = on(learnFrom(madeUpPieces(firings, 4, 1, rising), {}), Cause::growthHold);
    ASSERT_EQ(lesson.verdict, Verdict::claimed);
    EXPECT_EQ(lesson.claim->trend, Trend::rises);
    ASSERT_FALSE(lesson.confounders.empty());
    EXPECT_EQ(lesson.confounders.front().with, Cause::position);
    EXPECT_GT(lesson.confounders.front().shared, 0.7);
    EXPECT_EQ(lesson.confounders.front().upperHalfOn, "bottom");
    EXPECT_EQ(lesson.confounders.front().lowerHalfOn, "") << "on two";
}

TEST(Learning, PointsOutCollinearCauses) {
    auto firings = wideHolds(12);
    for (std::size_t i = 0; i < firings.size(); ++i)
        firings[i].hold_h = 4 + (firings[i].hold_C - 1090) / 20 + (i % 2 == 0 ? 0.0 : 0.6);
    const auto byTime = [](const MadeUpFiring& firing) { return 5 * firing.hold_h; };
    const auto lessons = learnFrom(madeUpPieces(firings, 4, 1, byTime), {});
    const auto& hold = on(lessons, Cause::growthHold);
    ASSERT_EQ(hold.verdict, Verdict::claimed) << "by itself it looks so";
    ASSERT_FALSE(hold.confounders.empty());
    EXPECT_EQ(hold.confounders.front().with, Cause::holdTime);
    EXPECT_EQ(hold.confounders.front().standsBesides, false);
    EXPECT_EQ(on(lessons, Cause::holdTime).confounders.front().with, Cause::growthHold);
    EXPECT_EQ(on(lessons, Cause::holdTime).confounders.front().standsBesides, true);
}

TEST(Learning, ComparesApplicationAndPositionWithinFirings) {
    auto pieces = madeUpPieces(wideHolds(8), 6, 1, peaked);
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        pieces[i].application = 8.0 + static_cast<double>((i * 7) % 5);
        pieces[i].position = i % 3 == 0 ? "bottom" : i % 3 == 1 ? "middle" : "top";
        *pieces[i].largest_mm += 2 * *pieces[i].application + (i % 3 == 2 ? 6 : 0);
    }
    const auto lessons = learnFrom(pieces, {});
    const auto& application = on(lessons, Cause::application);
    ASSERT_EQ(application.verdict, Verdict::claimed);
    EXPECT_EQ(application.claim->trend, Trend::rises);
    EXPECT_NEAR(application.claim->change, 8, 4);
    const auto& position = on(lessons, Cause::position);
    ASSERT_EQ(position.verdict, Verdict::claimed);
    EXPECT_EQ(position.claim->trend, Trend::differs);
    EXPECT_EQ(position.positions.front().position, "top");
    EXPECT_NEAR(position.claim->change, 6, 3);
    EXPECT_EQ(position.positions.front().pieces, 16);
    double sum = 0;
    for (const auto& effect : position.positions)
        sum += effect.difference.value;
    EXPECT_NEAR(sum, 0, 1e-9);
}

TEST(Learning, MoreQuestionsMakeClaimsRarer) {
    const auto pieces = madeUpPieces(wideHolds(8), 3, 4, peaked);
    const double one = *on(learnFrom(pieces, {Judged::largest, 1}), Cause::growthHold).chance;
    EXPECT_GT(*on(learnFrom(pieces, {Judged::largest, 3}), Cause::growthHold).chance, one);
}

constexpr FeasibleRange holds{Cause::growthHold, 1050, 1130};

TEST(NextExperiment, BeginsAtTheEnds) {
    const auto first = nextExperiment({}, Judged::largest, std::vector{holds});
    ASSERT_TRUE(first);
    EXPECT_EQ(first->aim, Aim::tellMost);
    EXPECT_GT(first->bits, 0);
    EXPECT_THAT(first->values.front().value, testing::AnyOf(1050, 1130));
    // many at the cold end: go to the hot one
    std::vector<MadeUpFiring> cold(5, MadeUpFiring{1052});
    const auto second = nextExperiment(madeUpPieces(cold, 3, 3, flat), Judged::largest, std::vector{holds});
    EXPECT_DOUBLE_EQ(second->values.front().value, 1130);
    // both ends: the middle, where a bend would show
    std::vector<MadeUpFiring> ends(10, MadeUpFiring{1050});
    for (std::size_t i = 0; i < 5; ++i)
        ends[i].hold_C = 1130;
    const auto third = nextExperiment(madeUpPieces(ends, 3, 3, flat), Judged::largest, std::vector{holds});
    EXPECT_NEAR(third->values.front().value, 1090, 7);
}

TEST(NextExperiment, SharpensABestOnceClaimed) {
    const auto pieces = madeUpPieces(wideHolds(12), 4, 2, peaked);
    const auto next =
        nextExperiment(pieces, Judged::largest, std::vector{holds, FeasibleRange{Cause::holdTime, 2, 6}});
    ASSERT_TRUE(next);
    EXPECT_EQ(next->aim, Aim::sharpenBest);
    EXPECT_LT(*next->bestSdThen_C, *next->bestSdNow_C);
    ASSERT_EQ(next->values.size(), 2U);
    EXPECT_GT(std::abs(next->values[0].value - 1088), 15) << "the flanks tell where the top is";
}

TEST(NextExperiment, BreaksUpHoldAndShelf) {
    auto firings = wideHolds(10);
    for (auto& firing : firings)
        firing.position = firing.hold_C > 1090 ? "bottom" : "top";
    const auto rising = [](const MadeUpFiring& firing) { return 0.2 * (firing.hold_C - 1000); };
    const auto next =
        nextExperiment(madeUpPieces(firings, 4, 1, rising), Judged::largest, std::vector{holds});
    EXPECT_EQ(next->alsoOn, next->values.front().value > 1090 ? "top" : "bottom");
}

TEST(NextExperiment, SaysHowFarItMayBeMissed) {
    const auto pieces = madeUpPieces(wideHolds(12), 4, 2, peaked);
    const auto next =
        nextExperiment(pieces, Judged::largest, std::vector{holds, FeasibleRange{Cause::holdTime, 2, 6}});
    for (const auto& value : next->values) {
        EXPECT_LE(value.low, value.value);
        EXPECT_GE(value.high, value.value);
        EXPECT_GT(value.high, value.low);
    }
    EXPECT_GE(next->values[0].low, 1050);
    EXPECT_LE(next->values[0].high, 1130);
    EXPECT_LT(next->values[0].high - next->values[0].low, 40)
        << "the top of the curve tells nothing of itself";
}

TEST(NextExperiment, ProposesAPeakWhereThePeakMatters) {
    EXPECT_FALSE(peaksToTry({}, Judged::largest));
    auto firings = wideHolds(9);
    for (std::size_t i = 0; i < firings.size(); ++i)
        firings[i].peak_C = 1260 + 2.5 * static_cast<double>((5 * i) % firings.size());
    const auto byPeak = [](const MadeUpFiring& firing) { return firing.peak_C - 1230; };
    const auto peaks = peaksToTry(madeUpPieces(firings, 4, 1, byPeak), Judged::largest);
    ASSERT_TRUE(peaks);
    EXPECT_EQ(peaks->cause, Cause::peak);
    EXPECT_LT(peaks->low, 1260);
    EXPECT_GT(peaks->high, 1280);
    const auto next =
        nextExperiment(madeUpPieces(firings, 4, 1, byPeak), Judged::largest, std::vector{holds, *peaks});
    ASSERT_EQ(next->values.size(), 2U);
    EXPECT_EQ(next->values[1].cause, Cause::peak);
    for (auto& firing : firings)
        firing.peak_C = 1268;
    EXPECT_FALSE(peaksToTry(madeUpPieces(firings, 4, 1, flat), Judged::largest))
        << "nothing to be seen of it";
}

TEST(NextExperiment, RefusesBadRanges) {
    EXPECT_FALSE(nextExperiment({}, Judged::largest, {}));
    EXPECT_FALSE(nextExperiment({}, Judged::largest, std::vector{FeasibleRange{Cause::growthHold, 5, 5}}));
    EXPECT_FALSE(nextExperiment({}, Judged::largest, std::vector{FeasibleRange{Cause::position, 1, 2}}));
    EXPECT_FALSE(nextExperiment({}, Judged::largest, std::vector{holds, holds}));
}

} // namespace
} // namespace ringhold
