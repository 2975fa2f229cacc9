#include "core/watch/alarm_board.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace ringhold {
namespace {

using namespace std::chrono_literals;
using testing::ElementsAre;
using testing::IsEmpty;
using enum AlarmLevel;

const Instant start{std::chrono::hours(492000)};

AlarmFinding finding(AlarmCause cause, AlarmLevel level) {
    return {cause, level, "evidence"};
}

std::vector<AlarmChange> changesOf(const std::vector<AlarmEvent>& events) {
    std::vector<AlarmChange> changes;
    for (const auto& event : events)
        changes.push_back(event.change);
    return changes;
}

TEST(AlarmCauses, HaveAWordAndATitleEach) {
    int seen = 0;
    for (const auto cause : allAlarmCauses()) {
        EXPECT_EQ(causeOfWord(causeWord(cause)), cause);
        EXPECT_FALSE(causeTitle(cause).empty());
        ++seen;
    }
    EXPECT_EQ(seen, 21);
    EXPECT_FALSE(causeOfWord("nothing"));
}

struct Escalated {
    AlarmLevel level;
    Duration after;
    AlarmStage stage;
};

class Escalates : public testing::TestWithParam<Escalated> {};

TEST_P(Escalates, WhileNobodyAnswers) {
    AlarmBoard board(FiringId{3});
    board.update(start, {finding(AlarmCause::sag, GetParam().level)});
    board.update(start + GetParam().after, {finding(AlarmCause::sag, GetParam().level)});
    EXPECT_EQ(board.stage(start + GetParam().after), GetParam().stage);
    EXPECT_EQ(board.level(start + GetParam().after), GetParam().level);
}

INSTANTIATE_TEST_SUITE_P(Stages, Escalates,
                         testing::Values(Escalated{notice, 0s, AlarmStage::banner},
                                         Escalated{notice, 1h, AlarmStage::banner},
                                         Escalated{warning, 0s, AlarmStage::sound},
                                         Escalated{warning, 119s, AlarmStage::sound},
                                         Escalated{warning, 2min, AlarmStage::repeatedSound},
                                         Escalated{warning, 10min, AlarmStage::fullWindow},
                                         Escalated{urgent, 0s, AlarmStage::sound},
                                         Escalated{urgent, 15s, AlarmStage::repeatedSound},
                                         Escalated{urgent, 1min, AlarmStage::fullWindow}));

TEST(AlarmBoard, TellsALifeInEvents) {
    AlarmBoard board(FiringId{3});
    const auto raised = board.update(start, {finding(AlarmCause::sag, warning)});
    ASSERT_EQ(raised.size(), 1u);
    EXPECT_EQ(raised[0].firing, FiringId{3});
    EXPECT_EQ(raised[0].cause, "sag");
    EXPECT_EQ(raised[0].change, AlarmChange::raised);
    EXPECT_EQ(raised[0].words, "evidence");
    EXPECT_THAT(board.update(start + 1s, {finding(AlarmCause::sag, warning)}), IsEmpty());
    const auto seen = board.acknowledge(AlarmCause::sag, start + 30s, "Mara");
    ASSERT_EQ(seen.size(), 1u);
    EXPECT_EQ(seen[0].who, "Mara");
    EXPECT_THAT(board.acknowledge(AlarmCause::sag, start + 40s, "Mara"), IsEmpty());
    EXPECT_EQ(board.stage(start + 40s), AlarmStage::quiet);
    const auto worse = board.update(start + 60s, {finding(AlarmCause::sag, urgent)});
    EXPECT_THAT(changesOf(worse), ElementsAre(AlarmChange::worsened));
    EXPECT_EQ(board.stage(start + 60s), AlarmStage::sound); // the answer was to less
    EXPECT_THAT(board.update(start + 100s, {}), IsEmpty());
    EXPECT_THAT(changesOf(board.update(start + 180s, {})), ElementsAre(AlarmChange::ended));
    ASSERT_EQ(board.alarms().size(), 1u); // over, but nobody has seen that it was there
    EXPECT_EQ(board.alarms()[0].first, start);
    board.acknowledge(AlarmCause::sag, start + 200s, "Mara");
    EXPECT_THAT(board.alarms(), IsEmpty());
}

TEST(AlarmBoard, DoesNotFlutter) {
    AlarmBoard board(FiringId{3});
    int events = 0;
    for (int second = 0; second < 600; ++second) {
        std::vector<AlarmFinding> findings;
        if (second % 60 < 10)
            findings.push_back(finding(AlarmCause::bandLeft, warning));
        events += static_cast<int>(board.update(start + std::chrono::seconds(second), findings).size());
    }
    EXPECT_EQ(events, 1);
}

TEST(AlarmBoard, LetsALookAnswerTheConesAlarmBeforeItCoversTheWindow) {
    AlarmBoard board(FiringId{3});
    const auto cone = finding(AlarmCause::coneUnseen, urgent);
    board.update(start, {cone});
    EXPECT_THAT(board.update(start + 19s, {}), IsEmpty());
    EXPECT_THAT(board.update(start + 25s, {cone}), IsEmpty()) << "a forecast's flutter is none";
    EXPECT_THAT(changesOf(board.update(start + 45s, {})), ElementsAre(AlarmChange::ended));
    EXPECT_LT(board.stage(start + 61s), AlarmStage::repeatedSound) << "it only waits to be seen";
}

TEST(AlarmBoard, EndsAcknowledgedAlarmsByThemselves) {
    AlarmBoard board(FiringId{3});
    board.update(start, {finding(AlarmCause::sag, warning)});
    board.acknowledge(AlarmCause::sag, start, "Mara");
    EXPECT_THAT(changesOf(board.update(start + 2min, {})), ElementsAre(AlarmChange::ended));
    EXPECT_THAT(board.alarms(), IsEmpty());
}

TEST(AlarmBoard, NeverQuietsAnUnseenCone) {
    AlarmBoard board(FiringId{3});
    const auto cone = finding(AlarmCause::coneUnseen, urgent);
    board.update(start, {cone});
    board.keepQuietUntil(start + 8h);
    EXPECT_THAT(changesOf(board.acknowledge(AlarmCause::coneUnseen, start + 5s, "Mara")),
                ElementsAre(AlarmChange::acknowledged));
    for (const auto after : {10s, 30s, 300s}) {
        board.update(start + after, {cone});
        EXPECT_GE(board.stage(start + after), AlarmStage::sound) << after.count();
    }
    EXPECT_EQ(board.stage(start + 300s), AlarmStage::fullWindow);
}

TEST(AlarmBoard, CallsAgainForWhatStaysUrgent) {
    AlarmBoard board(FiringId{3});
    const auto stuck = finding(AlarmCause::relayStuck, urgent);
    board.update(start, {stuck});
    board.acknowledge(AlarmCause::relayStuck, start + 1min, "Mara");
    board.update(start + 10min, {stuck});
    EXPECT_EQ(board.stage(start + 10min), AlarmStage::quiet);
    board.update(start + 11min, {stuck});
    EXPECT_EQ(board.stage(start + 11min), AlarmStage::sound);
    EXPECT_THAT(changesOf(board.acknowledge(AlarmCause::relayStuck, start + 12min, "Mara")),
                ElementsAre(AlarmChange::acknowledged));
    EXPECT_EQ(board.stage(start + 12min), AlarmStage::quiet);
}

TEST(AlarmBoard, KeepsQuietOnlyAsAskedAndNeverForUrgentOnes) {
    AlarmBoard board(FiringId{3});
    board.keepQuietUntil(start + 8h);
    board.update(start, {finding(AlarmCause::sag, warning)});
    EXPECT_EQ(board.stage(start + 1h), AlarmStage::banner);
    board.update(start + 1h, {finding(AlarmCause::sag, warning), finding(AlarmCause::relayStuck, urgent)});
    EXPECT_EQ(board.stage(start + 1h), AlarmStage::sound);
    EXPECT_EQ(board.alarms().front().cause, AlarmCause::relayStuck);
    board.acknowledge(AlarmCause::relayStuck, start + 1h, "Mara");
    board.update(start + 8h, {finding(AlarmCause::sag, warning)});
    EXPECT_EQ(board.stageOf(*board.find(AlarmCause::sag), start + 8h), AlarmStage::sound);
}

TEST(AlarmBoard, TakesUpWhereAnEarlierRunLeftOff) {
    AlarmBoard before(FiringId{3});
    std::vector<AlarmEvent> log;
    const auto keep = [&](const std::vector<AlarmEvent>& events) {
        log.insert(log.end(), events.begin(), events.end());
    };
    keep(before.update(start, {finding(AlarmCause::sag, warning), finding(AlarmCause::noisy, notice)}));
    keep(before.acknowledge(AlarmCause::noisy, start + 10s, "Mara"));
    keep(before.update(start + 20s, {finding(AlarmCause::sag, urgent), finding(AlarmCause::noisy, notice)}));
    AlarmBoard after(FiringId{3});
    after.restore(log);
    ASSERT_EQ(after.alarms().size(), 2u);
    EXPECT_EQ(after.find(AlarmCause::sag)->level, urgent);
    EXPECT_EQ(after.find(AlarmCause::sag)->first, start);
    EXPECT_EQ(after.find(AlarmCause::noisy)->acknowledgedBy, "Mara");
    EXPECT_THAT(
        after.update(start + 30s, {finding(AlarmCause::sag, urgent), finding(AlarmCause::noisy, notice)}),
        IsEmpty());
    EXPECT_THAT(changesOf(after.close(start + 40s)), ElementsAre(AlarmChange::ended, AlarmChange::ended));
}

} // namespace
} // namespace ringhold
