#include "core/report/log_line.h"
#include "tests/core/report/made_up_firing.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace ringhold {
namespace {

using namespace test;
using testing::ElementsAre;

const WordStyle inParis{TemperatureScale::celsius, "Europe/Paris"};

std::vector<std::string> wordsOf(const std::vector<LogLine>& lines) {
    std::vector<std::string> words;
    for (const auto& line : lines)
        words.push_back(clockWords(line.at, inParis) + (line.struck ? " x " : " ") +
                        lineWords(line, inParis));
    return words;
}

TEST(LogLines, AreInTimeOrderWithStruckOnes) {
    auto record = madeUpFiring();
    record.notes = {{NoteId{1}, FiringId{23}, minuteIn(30), "lid\npropped"},
                    {NoteId{2}, FiringId{23}, minuteIn(40), "wrong kiln", true}};
    record.settings = {{SettingId{1}, FiringId{23}, minuteIn(35), "damper", "half open"}};
    record.readings.push_back({ChannelId{1}, minuteIn(37), 112, Origin::hand});
    EXPECT_THAT(wordsOf(logLines(record)), ElementsAre("09:30 lid propped", "09:35 damper half open",
                                                       "09:37 112 °C, by hand", "09:40 x wrong kiln"));
}

TEST(LogLines, PutTheConesOfOneVisitTogether) {
    auto record = madeUpFiring();
    addLook(record, 537, "9", 3);
    addLook(record, 537.4, "10", 0);
    addLook(record, 537.6, "10", 1, false, true); // struck: not with the others
    addLook(record, 540, "9", 4);
    addLook(record, 1500, "11", 1.5, true);
    EXPECT_THAT(wordsOf(logLines(record)),
                ElementsAre("17:57 Look · 9 at 3 o’clock, 10 standing", "17:57 x Look · 10 at 1 o’clock",
                            "18:00 Look · 9 at 4 o’clock", "10:00 Cold pack · 11 at 1½ o’clock"));
}

TEST(LogLines, NameThePlaceOnlyWhereThereAreSeveral) {
    auto record = madeUpFiring();
    record.packs.push_back({PackId{2}, FiringId{23}, "top shelf", ConeType::selfSupporting, {"9"}});
    addLook(record, 537, "9", 3);
    record.looks.push_back({LookId{9}, PackId{2}, minuteIn(537.2), "9", 4});
    EXPECT_THAT(wordsOf(logLines(record)), ElementsAre("17:57 Look · middle shelf: 9 at 3 o’clock",
                                                       "17:57 Look · top shelf: 9 at 4 o’clock"));
}

TEST(LogLines, TellAlarmsWithTheirEndAndWhoHeardThem) {
    AlarmRecord alarm;
    alarm.level = "alarm";
    alarm.cause = "Below the band";
    alarm.detail = "down to 1067 °C";
    alarm.first = minuteIn(714);
    alarm.ended = minuteIn(721);
    AlarmRecord unheard = alarm;
    unheard.first = minuteIn(730);
    unheard.ended.reset();
    alarm.acknowledged = Acknowledgement{minuteIn(715), "potter"};
    const auto lines = logLines(madeUpFiring(), {alarm, unheard},
                                {{FiringId{23}, minuteIn(740), "instrument lost", "T1"},
                                 {FiringId{23}, minuteIn(741), "struck", "note"}});
    EXPECT_THAT(
        wordsOf(lines),
        ElementsAre("20:54 Alarm · Below the band: down to 1067 °C. Over at 21:01. Acknowledged 20:55 by "
                    "potter.",
                    "21:10 Alarm · Below the band: down to 1067 °C. Not acknowledged.",
                    "21:20 instrument lost: T1"));
}

TEST(LogLines, TellAlarmsByTheirTitles) {
    AlarmRecord alarm;
    alarm.cause = "relay-stuck";
    alarm.detail = "Looks like a relay stuck on.";
    alarm.first = minuteIn(714);
    EXPECT_THAT(wordsOf(logLines({}, {alarm})),
                ElementsAre("20:54 Alarm · Relay stuck on? Looks like a relay stuck on. Not acknowledged."));
}

TEST(LogLines, TellStepsSetByHandAndMetersRead) {
    FiringRecord record = madeUpFiring();
    const auto before = logLines(record).size();
    ASSERT_TRUE(record.firing.plan);
    const auto steps = record.firing.plan->steps.size();
    record.stepCorrections = {{record.firing.id, minuteIn(714), 1, true, StepCorrectionId{7}},
                              {record.firing.id, minuteIn(900), steps, false, StepCorrectionId{8}}};
    record.meterStands = {{MeterStandId{9}, record.firing.id, minuteIn(5), 4711.5, MeterUnit::kilowattHours}};
    const auto lines = logLines(record);
    ASSERT_EQ(lines.size(), before + 3);
    const auto words = wordsOf(lines);
    EXPECT_THAT(
        words, testing::Contains("20:54 x Step by hand · the kiln is in step 2 of " + std::to_string(steps)));
    EXPECT_THAT(words, testing::Contains(testing::HasSubstr("Step by hand · the plan is done")));
    EXPECT_THAT(words, testing::Contains(testing::HasSubstr("Meter · 4711.5 kWh")));
    EXPECT_TRUE(std::ranges::any_of(lines, [](const LogLine& line) {
        return line.struck && line.keys == std::vector<LineKey>{StepCorrectionId{7}};
    }));
}

} // namespace
} // namespace ringhold
