#include "core/watch/cone_due.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace ringhold {
namespace {

using namespace std::chrono_literals;
using testing::HasSubstr;

const Instant noon{std::chrono::hours(24 * 365 * 56 + 12)};

/// Due at 12:30, 12:20 to 12:45.
ConeForecast nine() {
    ConeForecast cone;
    cone.cone = "9";
    cone.down = {noon + 20min, noon + 30min, noon + 45min};
    return cone;
}

Look look(Duration after, const std::string& cone, double hour) {
    return {LookId{1}, PackId{1}, noon + after, cone, hour, false, false};
}

struct Case {
    Duration at;
    std::vector<Look> looks;
    std::optional<AlarmCause> cause;
    AlarmLevel level = AlarmLevel::warning;
};

class CallsThePotter : public testing::TestWithParam<Case> {};

TEST_P(CallsThePotter, WhenTheConeIsDue) {
    const auto cone = nine();
    const auto due = coneDue({cone, GetParam().looks}, noon + GetParam().at, {});
    ASSERT_EQ(due.has_value(), GetParam().cause.has_value());
    if (due) {
        EXPECT_EQ(due->cause, *GetParam().cause);
        EXPECT_EQ(due->level, GetParam().level);
    }
}

Look struckOut(Look look) {
    look.struck = true;
    return look;
}

using enum AlarmLevel;
INSTANTIATE_TEST_SUITE_P(
    Times, CallsThePotter,
    testing::Values(Case{9min, {}, {}}, Case{10min, {}, AlarmCause::coneDue}, // 10 min before the early edge
                    Case{29min, {}, AlarmCause::coneDue}, Case{30min, {}, AlarmCause::coneUnseen, urgent},
                    Case{90min, {}, AlarmCause::coneUnseen, urgent},
                    // an older look says nothing of now
                    Case{31min, {look(15min, "9", 2)}, AlarmCause::coneUnseen, urgent},
                    // seen standing, against the model: believed for ten minutes
                    Case{35min, {look(32min, "9", 4)}, AlarmCause::coneDue},
                    Case{43min, {look(32min, "9", 4)}, AlarmCause::coneUnseen, urgent},
                    Case{35min, {look(32min, "10", 0)}, AlarmCause::coneDue},
                    Case{35min, {struckOut(look(32min, "9", 4))}, AlarmCause::coneUnseen, urgent},
                    Case{35min, {look(32min, "9", 6)}, {}},
                    Case{35min, {look(32min, "8", 6)}, AlarmCause::coneDue},
                    Case{35min, {struckOut(look(32min, "9", 6))}, AlarmCause::coneUnseen, urgent}));

TEST(ConeDue, SaysWhatIsKnown) {
    const auto cone = nine();
    EXPECT_EQ(coneDue({cone, {}}, noon + 12min, {})->words,
              "cone 9 is due at 12:30 (12:20 to 12:45). Be at the spyhole.");
    EXPECT_THAT(coneDue({cone, {}}, noon + 31min, {})->words, HasSubstr("Nobody has looked. Look now."));
}

TEST(ConeDue, IsQuietWhereTheConeNeverGoesDown) {
    auto cone = nine();
    cone.down = {};
    EXPECT_FALSE(coneDue({cone, {}}, noon + 5h, {}));
}

} // namespace
} // namespace ringhold
