#include "core/exchange/firing_json.h"
#include "core/exchange/text_decoding.h"
#include "core/plan/plan_file.h"
#include "tests/core/exchange/scratch_folder.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <random>

namespace ringhold {
namespace {

using nlohmann::json;
using testing::ElementsAre;
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
    r.kiln = {KilnId{2}, "shed kiln", Fuel::gas, 210.5, Power{11e3}, Volts{239.5}, 0.1 + 0.2, "door sticks"};
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
    r.packs = {{PackId{21}, FiringId{7}, "middle shelf", ConeType::large, {"8", "9", "10"}, true},
               {PackId{22}, FiringId{7}, "", ConeType::selfSupporting, {}, false}};
    r.looks = {{LookId{31}, PackId{21}, utc("2026-03-01T20:41:00Z"), "8", 2.5, false, true},
               {LookId{32}, PackId{22}, utc("2026-03-02T09:41:00Z"), "9", 6, true, false}};
    r.settings = {{SettingId{41}, FiringId{7}, utc("2026-03-01T08:00:00Z"), "damper", "half open", true}};
    r.notes = {{NoteId{51}, FiringId{7}, utc("2026-03-01T09:00:00Z"), "smells of °\u2028 sulphur\t", true}};
    r.pieces = {{PieceId{61}, FiringId{7}, "tall bottle", "zinc 4", "top", true, true},
                {PieceId{62}, FiringId{7}, "", "", "", false, false}};
    r.outcomes = {{PieceId{61}, Crystals::many, 31.5, 5, "run", "A", "keep"},
                  {PieceId{62}, std::nullopt, std::nullopt, std::nullopt, "", "", ""}};
    r.filedOffsets = {{FiringId{7}, KilnId{2}, ProbeId{3}, "middle shelf", utc("2026-03-02T10:00:00Z"),
                       TemperatureDifference::fromCelsius(-7.25), TemperatureDifference::fromCelsius(2.1)}};
    return r;
}

/// What parseFiring() gives for the record; the caller compares.
FiringRecord throughJson(const FiringRecord& record) {
    auto back = parseFiring(formatFiring(record), "f.json");
    EXPECT_TRUE(back.ok()) << (back.ok() ? "" : back.error().text());
    return back.ok() ? *back : FiringRecord();
}

TEST(FiringJson, KeepsFiringAndKiln) {
    const auto r = fullRecord();
    const auto b = throughJson(r);
    EXPECT_EQ(b.firing.id, r.firing.id);
    EXPECT_EQ(b.firing.kiln, r.firing.kiln);
    EXPECT_EQ(b.firing.title, r.firing.title);
    EXPECT_EQ(b.firing.began, r.firing.began);
    EXPECT_EQ(b.firing.ended, r.firing.ended);
    EXPECT_EQ(b.firing.modelJson, r.firing.modelJson);
    ASSERT_TRUE(b.firing.plan);
    EXPECT_EQ(formatPlan(*b.firing.plan), formatPlan(*r.firing.plan));
    EXPECT_EQ(b.kiln.id, r.kiln.id);
    EXPECT_EQ(b.kiln.name, r.kiln.name);
    EXPECT_EQ(b.kiln.fuel, r.kiln.fuel);
    EXPECT_EQ(b.kiln.volume_L, r.kiln.volume_L);
    EXPECT_EQ(b.kiln.ratedPower, r.kiln.ratedPower);
    EXPECT_EQ(b.kiln.ratedVolts, r.kiln.ratedVolts);
    EXPECT_EQ(b.kiln.pricePerKilowattHour, r.kiln.pricePerKilowattHour);
    EXPECT_EQ(b.kiln.note, r.kiln.note);
}

TEST(FiringJson, KeepsProbesChannelsAndReadings) {
    const auto r = fullRecord();
    const auto b = throughJson(r);
    ASSERT_EQ(b.probes.size(), r.probes.size());
    for (std::size_t i = 0; i < r.probes.size(); ++i) {
        EXPECT_EQ(b.probes[i].id, r.probes[i].id);
        EXPECT_EQ(b.probes[i].kiln, r.probes[i].kiln);
        EXPECT_EQ(b.probes[i].label, r.probes[i].label);
        EXPECT_EQ(b.probes[i].type, r.probes[i].type);
        EXPECT_EQ(b.probes[i].position, r.probes[i].position);
        EXPECT_EQ(b.probes[i].fitted, r.probes[i].fitted);
        EXPECT_EQ(b.probes[i].retired, r.probes[i].retired);
    }
    ASSERT_EQ(b.channels.size(), r.channels.size());
    for (std::size_t i = 0; i < r.channels.size(); ++i) {
        EXPECT_EQ(b.channels[i].id, r.channels[i].id);
        EXPECT_EQ(b.channels[i].firing, r.channels[i].firing);
        EXPECT_EQ(b.channels[i].quantity, r.channels[i].quantity);
        EXPECT_EQ(b.channels[i].label, r.channels[i].label);
        EXPECT_EQ(b.channels[i].probe, r.channels[i].probe);
    }
    ASSERT_EQ(b.readings.size(), r.readings.size());
    for (std::size_t i = 0; i < r.readings.size(); ++i) {
        EXPECT_EQ(b.readings[i].channel, r.readings[i].channel);
        EXPECT_EQ(b.readings[i].at, r.readings[i].at);
        EXPECT_EQ(b.readings[i].value, r.readings[i].value);
        EXPECT_EQ(std::signbit(b.readings[i].value), std::signbit(r.readings[i].value));
        EXPECT_EQ(b.readings[i].origin, r.readings[i].origin);
        EXPECT_EQ(b.readings[i].struck, r.readings[i].struck);
    }
}

TEST(FiringJson, KeepsPacksAndLooks) {
    const auto r = fullRecord();
    const auto b = throughJson(r);
    ASSERT_EQ(b.packs.size(), r.packs.size());
    for (std::size_t i = 0; i < r.packs.size(); ++i) {
        EXPECT_EQ(b.packs[i].id, r.packs[i].id);
        EXPECT_EQ(b.packs[i].firing, r.packs[i].firing);
        EXPECT_EQ(b.packs[i].place, r.packs[i].place);
        EXPECT_EQ(b.packs[i].type, r.packs[i].type);
        EXPECT_EQ(b.packs[i].cones, r.packs[i].cones);
        EXPECT_EQ(b.packs[i].leansLeft, r.packs[i].leansLeft);
    }
    ASSERT_EQ(b.looks.size(), r.looks.size());
    for (std::size_t i = 0; i < r.looks.size(); ++i) {
        EXPECT_EQ(b.looks[i].id, r.looks[i].id);
        EXPECT_EQ(b.looks[i].pack, r.looks[i].pack);
        EXPECT_EQ(b.looks[i].at, r.looks[i].at);
        EXPECT_EQ(b.looks[i].cone, r.looks[i].cone);
        EXPECT_EQ(b.looks[i].hour, r.looks[i].hour);
        EXPECT_EQ(b.looks[i].cold, r.looks[i].cold);
        EXPECT_EQ(b.looks[i].struck, r.looks[i].struck);
    }
}

TEST(FiringJson, KeepsSettingsNotesAndOffsets) {
    const auto r = fullRecord();
    const auto b = throughJson(r);
    ASSERT_EQ(b.settings.size(), 1u);
    EXPECT_EQ(b.settings[0].id, r.settings[0].id);
    EXPECT_EQ(b.settings[0].firing, r.settings[0].firing);
    EXPECT_EQ(b.settings[0].at, r.settings[0].at);
    EXPECT_EQ(b.settings[0].what, r.settings[0].what);
    EXPECT_EQ(b.settings[0].value, r.settings[0].value);
    EXPECT_EQ(b.settings[0].struck, r.settings[0].struck);
    ASSERT_EQ(b.notes.size(), 1u);
    EXPECT_EQ(b.notes[0].id, r.notes[0].id);
    EXPECT_EQ(b.notes[0].firing, r.notes[0].firing);
    EXPECT_EQ(b.notes[0].at, r.notes[0].at);
    EXPECT_EQ(b.notes[0].text, r.notes[0].text);
    EXPECT_EQ(b.notes[0].struck, r.notes[0].struck);
    ASSERT_EQ(b.filedOffsets.size(), 1u);
    EXPECT_EQ(b.filedOffsets[0].firing, r.filedOffsets[0].firing);
    EXPECT_EQ(b.filedOffsets[0].kiln, r.filedOffsets[0].kiln);
    EXPECT_EQ(b.filedOffsets[0].probe, r.filedOffsets[0].probe);
    EXPECT_EQ(b.filedOffsets[0].place, r.filedOffsets[0].place);
    EXPECT_EQ(b.filedOffsets[0].at, r.filedOffsets[0].at);
    EXPECT_EQ(b.filedOffsets[0].mean, r.filedOffsets[0].mean);
    EXPECT_EQ(b.filedOffsets[0].sd, r.filedOffsets[0].sd);
}

TEST(FiringJson, KeepsPiecesAndOutcomes) {
    const auto r = fullRecord();
    const auto b = throughJson(r);
    ASSERT_EQ(b.pieces.size(), r.pieces.size());
    for (std::size_t i = 0; i < r.pieces.size(); ++i) {
        EXPECT_EQ(b.pieces[i].id, r.pieces[i].id);
        EXPECT_EQ(b.pieces[i].firing, r.pieces[i].firing);
        EXPECT_EQ(b.pieces[i].name, r.pieces[i].name);
        EXPECT_EQ(b.pieces[i].glaze, r.pieces[i].glaze);
        EXPECT_EQ(b.pieces[i].shelf, r.pieces[i].shelf);
        EXPECT_EQ(b.pieces[i].catcher, r.pieces[i].catcher);
        EXPECT_EQ(b.pieces[i].sagger, r.pieces[i].sagger);
    }
    ASSERT_EQ(b.outcomes.size(), r.outcomes.size());
    for (std::size_t i = 0; i < r.outcomes.size(); ++i) {
        EXPECT_EQ(b.outcomes[i].piece, r.outcomes[i].piece);
        EXPECT_EQ(b.outcomes[i].crystals, r.outcomes[i].crystals);
        EXPECT_EQ(b.outcomes[i].largest_mm, r.outcomes[i].largest_mm);
        EXPECT_EQ(b.outcomes[i].rings, r.outcomes[i].rings);
        EXPECT_EQ(b.outcomes[i].faults, r.outcomes[i].faults);
        EXPECT_EQ(b.outcomes[i].grade, r.outcomes[i].grade);
        EXPECT_EQ(b.outcomes[i].note, r.outcomes[i].note);
    }
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
    EXPECT_EQ(parsed["ringhold_firing"], 1);
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
        Damage{"OldVersion", "/ringhold_firing", 0, "must be 1"},
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
    const auto newer = parseFiring("{\"ringhold_firing\": 2}", "f.json");
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
