#include "core/exchange/firing_json.h"
#include "core/exchange/text_decoding.h"
#include "core/plan/plan_file.h"
#include "tests/core/exchange/scratch_folder.h"
#include "tests/support/record_fields.h"
#include "tests/support/sample_card.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <random>

namespace ringhold {
namespace {

using nlohmann::json;
using testing::HasSubstr;

Instant utc(const char* text) {
    return *parseIso8601(text);
}

Plan somePlan() {
    const auto celsius = [](double degrees) { return Temperature::fromCelsius(degrees); };
    return {
        "night \"two\"",
        {Climb{celsius(1180), Rate::fromCelsiusPerHour(150)},
         ConeWait{"9", Rate::fromCelsiusPerHour(60), celsius(1275), celsius(1290), durationFromMinutes(30)},
         Drop{celsius(1090), std::nullopt},
         Hold{celsius(1090), durationFromMinutes(180), TemperatureDifference::fromCelsius(4)},
         Rings{5, celsius(1040), durationFromMinutes(10), celsius(1090), durationFromMinutes(20)},
         Cool{celsius(100), std::nullopt}}};
}

/// Bytes of every value, as a picture has them.
std::string someBytes() {
    std::string bytes("\xFF\xD8");
    for (int byte = 0; byte < 256; ++byte)
        bytes += static_cast<char>(byte);
    return bytes + "\xFF\xD9";
}

GlazeCard someCard() {
    GlazeCard card = test::sampleCard();
    card.id = GlazeCardId{81};
    return card;
}

void addWhatCameWithVersion2(FiringRecord& r) {
    const Instant at = utc("2026-03-01T20:54:00.250Z");
    r.alarmEvents = {{FiringId{7}, at, "sag", AlarmChange::raised, AlarmLevel::warning, "218 V", ""},
                     {FiringId{7}, at, "sag", AlarmChange::acknowledged, AlarmLevel::urgent, "", "me"}};
    r.stepCorrections = {{FiringId{7}, at, 3, true, StepCorrectionId{91}}};
    r.meterStands = {{MeterStandId{95}, FiringId{7}, at, 31415.9, MeterUnit::cubicMetres, true}};
    r.logEvents = {{FiringId{7}, at, "struck", "look 31"}, {std::nullopt, at, "copied", ""}};
    r.photos = {{PhotoId{71}, PieceId{61}, at, 640, 480, "from the \"left\"", someBytes()},
                {PhotoId{72}, PieceId{62}, std::nullopt, 1, 1, "", ""}};
    const std::array<PhotoPoint, 4> ends{{{0.1, 0.2}, {0.3, 0.25}, {0, 0}, {1, 1}}};
    r.photoMeasures = {{PhotoMeasureId{75}, PhotoId{71}, "largest", 50, 41.3, 0.7, ends},
                       {PhotoMeasureId{76}, PhotoId{72}, "", 50, 8, 1, std::nullopt}};
    r.ringRadii = {{PieceId{61}, 0, 3.1, 0.5}, {PieceId{61}, 1, 6.3, 0.25}};
    r.sagsSeen = {{PieceId{61}, at, SagSight::yes, 11.3}, {PieceId{62}, at, SagSight::unsure, {}}};
    r.glazeCards = {someCard(), {GlazeCardId{82}, "plain"}};
}

/// Every field has a value that is not its first one.
FiringRecord fullRecord() {
    FiringRecord r;
    r.firing = {FiringId{7},
                KilnId{2},
                "Früh \"kalt\"\nnachgelegt",
                utc("2026-03-01T06:00:00.001Z"),
                utc("2026-03-02T01:00:00Z"),
                somePlan(),
                R"({"p": 1.35})"};
    r.kiln = {KilnId{2},    "shed kiln", Fuel::gas,     210.5, Power{11e3},
              Volts{239.5}, 0.1 + 0.2,   "door sticks", 1.19};
    r.probes = {{ProbeId{3}, KilnId{2}, "P1", ThermocoupleType::S, "upper third", utc("2025-01-01T12:00:00Z"),
                 utc("2026-04-01T12:00:00Z")},
                {ProbeId{4}, KilnId{2}, "P2", ThermocoupleType::N, "", std::nullopt, std::nullopt}};
    r.channels = {{ChannelId{11}, FiringId{7}, Quantity::temperature, "T1", ProbeId{3}},
                  {ChannelId{12}, FiringId{7}, Quantity::lineVolts, "", std::nullopt},
                  {ChannelId{13}, FiringId{7}, Quantity::lineAmps, "a", std::nullopt},
                  {ChannelId{14}, FiringId{7}, Quantity::oxygenMillivolts, "b", std::nullopt},
                  {ChannelId{15}, FiringId{7}, Quantity::duty, "c", std::nullopt}};
    r.readings = {
        {ChannelId{11}, utc("2026-03-01T06:00:00.123Z"), 20.000000000000004, Origin::instrument, false},
        {ChannelId{12}, utc("2026-03-01T06:00:00.123Z"), -0.0, Origin::instrument, false},
        {ChannelId{11}, utc("2026-03-01T06:01:00Z"), 1e-300, Origin::hand, false},
        {ChannelId{11}, utc("2026-03-01T06:02:00Z"), 1043.2, Origin::hand, true}};
    r.packs = {{PackId{21},
                FiringId{7},
                "middle shelf",
                ConeType::large,
                {"8", "9", "10"},
                true,
                "2",
                MapSpot{0.1, 1}},
               {PackId{22}, FiringId{7}, "", ConeType::selfSupporting, {}, false}};
    r.looks = {{LookId{31}, PackId{21}, utc("2026-03-01T20:41:00Z"), "8", 2.5, false, true},
               {LookId{32}, PackId{22}, utc("2026-03-02T09:41:00Z"), "9", 6, true, false}};
    r.settings = {{SettingId{41}, FiringId{7}, utc("2026-03-01T08:00:00Z"), "damper", "half open", true}};
    r.notes = {{NoteId{51}, FiringId{7}, utc("2026-03-01T09:00:00Z"), "smells of °\u2028 sulphur\t", true}};
    r.pieces = {{PieceId{61}, FiringId{7}, "tall bottle", "zinc 4", "top", true, true, "bottle", "porcelain",
                 0.1 + 0.02, MapSpot{0.3, 0.7}},
                {PieceId{62}, FiringId{7}, "", "", "", false, false}};
    r.outcomes = {{PieceId{61},
                   Crystals::many,
                   31.5,
                   5,
                   "run",
                   "A",
                   "keep",
                   12.25,
                   "gold",
                   "#c8a030",
                   "celadon",
                   "#8fb098",
                   "to the foot",
                   1.5,
                   false,
                   {WareFault::pinholes, WareFault::dull}},
                  {PieceId{62}, std::nullopt, std::nullopt, std::nullopt, "", "", ""}};
    r.filedOffsets = {{FiringId{7}, KilnId{2}, ProbeId{3}, "middle shelf", utc("2026-03-02T10:00:00Z"),
                       TemperatureDifference::fromCelsius(-7.25), TemperatureDifference::fromCelsius(2.1)}};
    addWhatCameWithVersion2(r);
    return r;
}

/// What parseFiring() gives for the record; the caller compares.
FiringRecord throughJson(const FiringRecord& record) {
    auto back = parseFiring(formatFiring(record), "f.json");
    EXPECT_TRUE(back.ok()) << (back.ok() ? "" : back.error().text());
    return back.ok() ? *back : FiringRecord();
}

TEST(FiringJson, IsTestedWithEveryFieldOfEveryRecord) {
    test::expectNothingUnset(fullRecord());
}

TEST(FiringJson, KeepsEveryFieldOfEveryRecord) {
    const auto record = fullRecord();
    const auto back = throughJson(record);
    test::expectSame(back, record);
    EXPECT_TRUE(std::signbit(back.readings[1].value));
}

TEST(FiringJson, KeepsAPictureOfTheLargestSize) {
    auto record = fullRecord();
    record.photos[0].jpeg.assign(largestJpeg, '\xA5');
    EXPECT_EQ(throughJson(record).photos[0].jpeg, record.photos[0].jpeg);
}

TEST(FiringJson, TakesTheFirstVersionWithoutWhatCameLater) {
    json file = json::parse(formatFiring(fullRecord()));
    file["ringhold_firing"] = 1;
    for (const char* list : {"alarm_events", "step_corrections", "meter_stands", "log_events", "glaze_cards",
                             "photo_measures", "ring_radii", "sags_seen", "photos"})
        file.erase(list);
    file["kiln"].erase("gas_price");
    for (const char* key : {"form", "clay", "application_g_per_cm2", "spot"})
        file["pieces"][0].erase(key);
    const auto back = parseFiring(file.dump(), "f.json");
    ASSERT_TRUE(back.ok()) << back.error().text();
    EXPECT_EQ(back->pieces[0].name, "tall bottle");
    EXPECT_EQ(back->pieces[0].form, "");
    EXPECT_FALSE(back->kiln.gasPrice);
    EXPECT_TRUE(back->photos.empty());
    file["ringhold_firing"] = 2;
    EXPECT_THAT(parseFiring(file.dump(), "f.json").error().what, HasSubstr("alarm_events must be a list"));
}

TEST(FiringJson, KeepsWhatIsNotThere) {
    FiringRecord record;
    record.firing.began = utc("2026-03-01T06:00:00Z");
    const auto back = throughJson(record);
    EXPECT_FALSE(back.firing.ended);
    EXPECT_FALSE(back.firing.plan);
    EXPECT_FALSE(back.kiln.ratedPower);
    EXPECT_TRUE(back.readings.empty());
    EXPECT_EQ(formatFiring(back), formatFiring(record));
    EXPECT_EQ(formatFiring(throughJson(fullRecord())), formatFiring(fullRecord()));
}

TEST(FiringJson, SpeaksPlainly) {
    const std::string text = formatFiring(fullRecord());
    const json parsed = json::parse(text);
    EXPECT_EQ(parsed["ringhold_firing"], 2);
    EXPECT_EQ(parsed["firing"]["began"], "2026-03-01T06:00:00.001Z");
    EXPECT_EQ(parsed["firing"]["plan"]["steps"][0]["climb"]["to_C"], 1180);
    EXPECT_EQ(parsed["probes"][0]["type"], "S");
    EXPECT_THAT(text, HasSubstr("\n {\"at\":\"2026-03-01T06:02:00Z\",\"channel\":11,\"value\":1043.2,"
                                "\"by_hand\":true,\"struck\":true}]}\n"));
    FiringRecord broken = fullRecord();
    broken.notes[0].text = "caf\xE9"; // not UTF-8
    EXPECT_EQ(throughJson(broken).notes[0].text, "caf\uFFFD");
}

struct Damage {
    const char* name;
    const char* at;   ///< JSON pointer
    json value;       ///< put there; discarded: taken away
    const char* what; ///< in the error
};

class FiringJsonDamage : public testing::TestWithParam<Damage> {};

TEST_P(FiringJsonDamage, IsSaidPlainly) {
    json file = json::parse(formatFiring(fullRecord()));
    const json::json_pointer place(GetParam().at);
    ASSERT_TRUE(file.contains(place));
    if (GetParam().value.is_discarded())
        file[place.parent_pointer()].erase(place.back());
    else
        file[place] = GetParam().value;
    const auto back = parseFiring(file.dump(), "f.json");
    ASSERT_FALSE(back.ok());
    EXPECT_THAT(back.error().text(), testing::StartsWith("f.json: "));
    EXPECT_THAT(back.error().what, HasSubstr(GetParam().what));
}

const json gone = json::value_t::discarded;

INSTANTIATE_TEST_SUITE_P(
    Fields, FiringJsonDamage,
    testing::Values(
        Damage{"NoVersion", "/ringhold_firing", gone, "is no firing"},
        Damage{"OldVersion", "/ringhold_firing", 0, "must be 1 or 2"},
        Damage{"VersionText", "/ringhold_firing", "1", "ringhold_firing must be a whole number, not a text"},
        Damage{"NoFiring", "/firing", gone, "firing must be an object, not null or missing"},
        Damage{"NoBeginning", "/firing/began", nullptr, "firing.began must be a text"},
        Damage{"BeginningWithoutZone", "/firing/began", "2026-03-01T06:00:00",
               "firing.began must be a time such as"},
        Damage{"BadPlan", "/firing/plan/steps/0", json::object(), "firing.plan"},
        Damage{"PlanNoObject", "/firing/plan", 5, "firing.plan"},
        Damage{"OtherKiln", "/kiln/id", 9, "not the same"},
        Damage{"UnknownFuel", "/kiln/fuel", "peat", "kiln.fuel is \"peat\", which is not known"},
        Damage{"VolumeText", "/kiln/volume_L", "big", "kiln.volume_L must be a number, not a text"},
        Damage{"UnknownThermocouple", "/probes/0/type", "X", "probes[0].type is \"X\""},
        Damage{"UnknownQuantity", "/channels/1/quantity", "smoke", "channels[1].quantity"},
        Damage{"ProbeNotThere", "/channels/0/probe", 99, "channels[0] names the id 99"},
        Damage{"ReadingsNoList", "/readings", json::object(), "readings must be a list, not an object"},
        Damage{"ReadingNoObject", "/readings/2", 1043.2, "readings[2] must be an object, not a number"},
        Damage{"ValueMissing", "/readings/0/value", gone, "readings[0].value must be a number"},
        Damage{"ValueNull", "/readings/0/value", nullptr, "readings[0].value must be a number"},
        Damage{"ChannelNotThere", "/readings/1/channel", 5, "readings[1] names the id 5"},
        Damage{"ChannelFraction", "/readings/1/channel", 11.5,
               "readings[1].channel must be a whole number, not 11.5"},
        Damage{"StruckText", "/readings/3/struck", "yes", "readings[3].struck must be true or false"},
        Damage{"OutOfOrder", "/readings/3/at", "2026-03-01T05:00:00Z", "readings[3] is earlier"},
        Damage{"ChannelTwice", "/channels/1/id", 11, "channels has the id 11 twice"},
        Damage{"ConesNoTexts", "/packs/0/cones/1", 9, "packs[0].cones must be a list of texts"},
        Damage{"HourBeyond", "/looks/0/hour", 6.5, "looks[0].hour must be 0 (standing) to 6 (down)"},
        Damage{"PackNotThere", "/looks/1/pack", 1, "looks[1] names the id 1"},
        Damage{"RingsNegative", "/outcomes/0/rings", -1, "outcomes[0].rings"},
        Damage{"PieceNotThere", "/outcomes/0/piece", 1, "outcomes[0] names the id 1"},
        Damage{"NoPhotos", "/photos", gone, "photos must be a list"},
        Damage{"NoPicture", "/photos/0/jpeg", gone, "photos[0].jpeg must be a text"},
        Damage{"PictureCut", "/photos/0/jpeg", "abc", "photos[0].jpeg is no picture in base64"},
        Damage{"PictureLess", "/photos/0/width", 0, "photos[0].width is no number of pixels"},
        Damage{"PhotoOfNothing", "/photos/0/piece", 1, "photos[0] names the id 1"},
        Damage{"MeasureOfNothing", "/photo_measures/0/photo", 1, "photo_measures[0] names the id 1"},
        Damage{"ThreeEnds", "/photo_measures/0/ends", json::parse("[[0,0],[1,1],[0,1]]"),
               "photo_measures[0].ends must have four points"},
        Damage{"EndNoPoint", "/photo_measures/0/ends/2", 5, "ends[2] must be a list of two numbers"},
        Damage{"RingOfNothing", "/ring_radii/0/piece", 1, "ring_radii[0] names the id 1"},
        Damage{"RingFromEnd", "/ring_radii/0/ring", -1, "ring_radii[0].ring is no number of a ring"},
        Damage{"SagPerhaps", "/sags_seen/0/seen", "perhaps", "sags_seen[0].seen is \"perhaps\""},
        Damage{"SagOfNothing", "/sags_seen/0/piece", 1, "sags_seen[0] names the id 1"},
        Damage{"AlarmHushed", "/alarm_events/1/change", "hushed", "alarm_events[1].change is \"hushed\""},
        Damage{"StandInBarrels", "/meter_stands/0/unit", "barrels", "meter_stands[0].unit is \"barrels\""},
        Damage{"StepBefore", "/step_corrections/0/step", -1, "step_corrections[0].step is no number"},
        Damage{"EventWithoutTime", "/log_events/0/at", gone, "log_events[0].at must be a text"},
        Damage{"CardNameless", "/glaze_cards/1/name", gone, "glaze_cards[1].name must be a text"},
        Damage{"AnalysisText", "/glaze_cards/0/recipe/0/analysis/1/percent", "14",
               "glaze_cards[0].recipe[0].analysis[1].percent must be a number"},
        Damage{"UnknownFault", "/outcomes/0/known_faults/0", "bent", "which is no known fault"},
        Damage{"SpotOfOne", "/pieces/0/spot", json::array({0.5}), "pieces[0].spot must be a list of two"},
        Damage{"OffsetOfNothing", "/filed_offsets/0/probe", 1, "filed_offsets[0] names the id 1"},
        Damage{"HugeId", "/notes/0/id", 18'000'000'000'000'000'000u, "notes[0].id must be a whole number"}),
    [](const auto& each) { return each.param.name; });

TEST(FiringJson, RefusesWhatIsNoJsonWithItsLine) {
    struct Case {
        std::string text;
        std::optional<long> line;
        const char* what;
    };
    const std::string good = formatFiring(fullRecord());
    const std::string half = good.substr(0, good.size() / 2);
    for (const auto& [text, line, what] :
         {Case{"", 1, "is empty"}, Case{"time,probe_C\n", 1, "not JSON"},
          Case{"{\n\"a\": 1,\n}", 3, "not JSON"}, Case{"{\n\"a\": \"x\ny\"}", 2, "not JSON"},
          Case{half, lineAt(half, half.size()), "too early"}, Case{"[1, 2]", {}, "must be an object"},
          Case{"{}", {}, "is no firing"}, Case{std::string("\0\0", 2), 1, "not JSON"},
          Case{"{\"a\": 1e999}", {}, "too large"},
          Case{std::string(200'000, '['), {}, "lists within lists"}}) {
        const auto back = parseFiring(text, "f.json");
        ASSERT_FALSE(back.ok()) << text.substr(0, 40);
        EXPECT_EQ(back.error().kind, ErrorKind::badInput);
        EXPECT_EQ(back.error().line, line) << back.error().text();
        EXPECT_THAT(back.error().what, HasSubstr(what));
    }
    const auto newer = parseFiring("{\"ringhold_firing\": 3}", "f.json");
    EXPECT_EQ(newer.error().kind, ErrorKind::foreign);
    EXPECT_EQ(newer.error().text(), "f.json: this firing was written by a newer Ringhold");
}

TEST(FiringJson, MutationsNeverBreakTheReader) {
    const std::string good = formatFiring(fullRecord());
    std::mt19937 random(5);
    int taken = 0;
    for (int round = 0; round < 600; ++round) {
        std::string text = good;
        const auto at = random() % text.size();
        switch (random() % 3) {
        case 0:
            text[at] = static_cast<char>(random() % 256);
            break;
        case 1:
            text.erase(at, 1 + random() % 20);
            break;
        default:
            text.insert(at, text.substr(random() % text.size(), 1 + random() % 20));
        }
        const auto back = parseFiring(text, "f.json");
        if (back)
            EXPECT_EQ(formatFiring(throughJson(*back)), formatFiring(*back));
        else
            EXPECT_FALSE(back.error().what.empty());
        taken += back.ok();
    }
    EXPECT_GT(taken, 20);
    EXPECT_LT(taken, 500);
}

TEST(FiringJson, GoesThroughAFile) {
    const ScratchFolder folder;
    ASSERT_TRUE(writeFiring(folder / "f.json", fullRecord()).ok());
    const auto back = readFiring(folder / "f.json");
    ASSERT_TRUE(back.ok());
    EXPECT_EQ(formatFiring(*back), formatFiring(fullRecord()));
    EXPECT_EQ(readFiring(folder / "none.json").error().kind, ErrorKind::notFound);
    EXPECT_EQ(readFiring(folder.path()).error().kind, ErrorKind::unreadable);
    EXPECT_EQ(writeFiring("/dev/full", fullRecord()).error().kind, ErrorKind::unwritable);
}

} // namespace
} // namespace ringhold
