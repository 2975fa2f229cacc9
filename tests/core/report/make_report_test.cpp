#include "core/report/make_report.h"
#include "core/report/report_words.h"
#include "tests/core/report/made_up_firing.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

namespace ringhold {
namespace {

using namespace test;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

ReportContext inParis() {
    ReportContext context;
    context.style = {TemperatureScale::celsius, "Europe/Paris"};
    return context;
}

double celsiusOf(TemperatureDifference d) {
    return d.celsius();
}

/// Looks as a potter would write them whose probe reads 7 °C high: by the heat-work law cone 9 goes down at a
/// reading of 1265, 10 at 1285 + 7.
FiringRecord withLooks() {
    auto record = madeUpFiring();
    const auto endMinute = [](const char* cone) {
        const auto end = ConeTable::builtIn().find(cone)->law.endPoint(Rate::fromCelsiusPerHour(60));
        return 432 + end.celsius() + 7 - 1100;
    };
    const double nine = std::round(endMinute("9"));
    addLook(record, nine - 40, "9", 0.5); // a slip: it stood once more
    addLook(record, nine - 30, "9", 0);
    addLook(record, nine - 18, "9", 1);
    addLook(record, nine - 7, "9", 3);
    addLook(record, nine - 7, "10", 0);
    addLook(record, nine, "9", 6);
    addLook(record, 622, "10", 6);
    addLook(record, 1020 + 600, "11", 1.5, true);
    return record;
}

TEST(MakeReport, NamesTheFiring) {
    auto record = madeUpFiring();
    for (int i = 0; i < 14; ++i)
        record.pieces.push_back({PieceId{i + 1}, FiringId{23}, "vase", "frost", "middle"});
    const auto content = makeReport(record, inParis());
    EXPECT_EQ(titleWords(content), "Firing 23, Heron");
    EXPECT_EQ(datesWords(content), "Sunday 1 March 2026, 09:00 to Monday 02:40 CET");
    EXPECT_EQ(summaryWords(content),
              "Frost fern and lichen, 14 pieces · plan “Cone 10, three rings” · electric, 150 L");
    EXPECT_EQ(content.curves.control.size(), 1021u);
    EXPECT_FALSE(content.curves.planned.empty());
}

TEST(MakeReport, TellsThePeak) {
    const auto peak = makeReport(madeUpFiring(), inParis()).peak;
    ASSERT_TRUE(peak);
    // spikes out: the median of 1289, 1290 and 1284.65
    EXPECT_NEAR(peak->peak.celsius(), 1289.0, 0.01);
    // 1279 °C is passed at minute 611 and again at 622 + 11 / 5.35
    EXPECT_NEAR(inMinutes(peak->within10C), 13.056, 0.01);
    EXPECT_NEAR(peak->lastClimb->celsiusPerHour(), 60, 1e-6);
}

TEST(MakeReport, FindsTheHoldOfThePlanWithoutItsRings) {
    const auto content = makeReport(madeUpFiring(), inParis());
    ASSERT_EQ(content.holds.size(), 1u);
    ASSERT_TRUE(content.holds[0].found);
    const auto& hold = *content.holds[0].found;
    // 214 °C in 40 min come into the band 6/5.35 min early; the first ring leaves it after 6/8.75 min.
    EXPECT_NEAR(inMinutes(hold.start - lit), 660.879, 0.01);
    EXPECT_NEAR(inMinutes(hold.end - lit), 872.686, 0.01);
    // 1076 + (6 x 1.1215 - 9 x 7 - 6 x 0.6857) / 2 / 211.807
    EXPECT_NEAR(hold.mean.celsius(), 1075.857, 0.005);
    // below 1070 from minute 722 to 724.333
    EXPECT_NEAR(hold.insideShare, 1 - 2.3333 / 211.807, 1e-4);
    EXPECT_EQ(holdTable(content).rows[0][0], "growth 1076 ± 6 °C");
    EXPECT_EQ(holdTable(content).rows[0][1], "3 h 32");
    EXPECT_EQ(holdTable(content).rows[0][2], "1075.9");
    EXPECT_EQ(holdTable(content).rows[0][4], "98.9 %");
    EXPECT_EQ(holdTable(content).rows[0][5], "2 min, 9 under");
    EXPECT_THAT(holdTable(content).rows[0][6], HasSubstr("°C/h"));
}

TEST(MakeReport, CountsTheRingsAndPlacesThemInTheCrystal) {
    const auto content = makeReport(madeUpFiring(), inParis());
    ASSERT_EQ(content.rings.size(), 1u);
    EXPECT_EQ(content.rings[0].planned, 3);
    ASSERT_EQ(content.rings[0].rings.size(), 3u);
    EXPECT_NEAR(inMinutes(content.rings[0].rings[0].ring.low.start - lit), 876, 0.7);
    const auto rows = ringTable(content.rings[0], content.style).rows;
    EXPECT_EQ(rows[0][2], "1041 °C");
    EXPECT_EQ(rows[2][0], "3");
    ASSERT_TRUE(content.crystal);
    // The hold alone: 210 min at 60 (1 - 0.01)^3.415 = 57.98 µm/min, 12.18 mm; the way down and the rings
    // add.
    EXPECT_GT(content.crystal->radius.likely_mm, 12.2 + 3 * 0.7);
    EXPECT_LT(content.crystal->radius.likely_mm, 18);
    // At 1041 °C 38.4 µm/min, so 0.35 mm in 9 min, and 9 min at 57.98, with ramps 1.2 to 1.3 in all.
    for (const auto& ring : content.crystal->rings)
        EXPECT_NEAR(ring.width_mm(), 1.15, 0.2);
    // The dip is 58 min into the hold of 210, 3.4 mm, and what grew on the way down.
    ASSERT_TRUE(content.holds[0].excursionRadius);
    EXPECT_NEAR(content.holds[0].excursionRadius->likely_mm, 4, 0.7);
    EXPECT_THAT(holdRemarks(content), ElementsAre(HasSubstr("In the band at"), HasSubstr("from 21:02")));
}

TEST(MakeReport, TellsConesByLooksAndTheRestByTheModel) {
    const auto record = withLooks();
    const auto content = makeReport(record, inParis());
    ASSERT_EQ(content.packs.size(), 1u);
    const auto& pack = content.packs[0];
    const auto& nine = pack.cones[0];
    EXPECT_EQ(nine.firstLean.source, ConeSource::look);
    EXPECT_EQ(nine.firstLean.seen, record.looks[2].at);
    EXPECT_EQ(nine.three.source, ConeSource::look);
    EXPECT_EQ(nine.down.source, ConeSource::by); // the look before found it at 3
    const auto& ten = pack.cones[1];
    EXPECT_TRUE(ten.waitedFor);
    EXPECT_FALSE(nine.waitedFor);
    EXPECT_EQ(ten.three.source, ConeSource::model);
    ASSERT_TRUE(ten.three.model.p05 && ten.three.model.p95);
    EXPECT_LT(*ten.three.model.p05, *ten.three.model.p95);
    EXPECT_GT(*ten.three.model.median, minuteIn(600));
    EXPECT_LT(*ten.three.model.median, minuteIn(630));
    const auto& eleven = pack.cones[2];
    EXPECT_EQ(eleven.last.hour, 1.5);
    EXPECT_TRUE(eleven.last.cold);
    EXPECT_EQ(eleven.three.source, ConeSource::unknown);
    EXPECT_EQ(eleven.down.source, ConeSource::unknown);
    const auto table = coneTable(pack, content.style);
    EXPECT_THAT(table.rows[1][2], HasSubstr(" model\n"));
    EXPECT_EQ(table.rows[1][3], "by 19:22");
    EXPECT_EQ(table.rows[2][3], "cold: 1½ o’clock");
    EXPECT_EQ(table.stressed, (std::vector<bool>{false, true, false}));
}

TEST(MakeReport, FindsTheOffset) {
    const auto content = makeReport(withLooks(), inParis());
    ASSERT_TRUE(content.packs[0].offset);
    const auto& offset = content.packs[0].offset->offset;
    EXPECT_NEAR(celsiusOf(offset.median), 7, 3);
    EXPECT_LT(celsiusOf(offset.p05), 7);
    EXPECT_GT(celsiusOf(offset.p95), 7);
    EXPECT_EQ(content.packs[0].offset->looks, 8);
    EXPECT_THAT(offsetWords(content.packs[0], content.style),
                testing::MatchesRegex("The probe read . °C high \\(. to .+, 90 %\\) against the cones of the "
                                      "middle shelf, by 8 looks\\."));
    EXPECT_NEAR(content.crystal->offsetTaken.celsius(), celsiusOf(offset.median) * 1076 / 1290, 1.0);
}

TEST(OffsetWords, TellAnIntervalThatHoldsBothSigns) {
    const auto C = TemperatureDifference::fromCelsius;
    const auto words = [&](double p05, double median, double p95) {
        return offsetWords({"top", false, {}, ReportedOffset{{C(p05), C(median), C(p95)}, 4, 0}}, {});
    };
    EXPECT_EQ(words(-11, 5, 21),
              "The probe read 5 °C high (11 low to 21 high, 90 %) against the cones of the top, by 4 looks.");
    EXPECT_EQ(words(-21, -5, 11),
              "The probe read 5 °C low (21 low to 11 high, 90 %) against the cones of the top, by 4 looks.");
    EXPECT_EQ(words(-9, -5, -1),
              "The probe read 5 °C low (1 to 9, 90 %) against the cones of the top, by 4 looks.");
}

TEST(ConeTable, SaysWhereTheModelIsNotSureThatItCame) {
    ReportedCone cone;
    cone.cone = "10";
    cone.down = {ConeSource::model, {}, {minuteIn(600), minuteIn(620), minuteIn(630)}};
    EXPECT_EQ(coneTable({"", false, {cone}, {}}, {}).rows[0][3], "18:20 model\n18:00 to 18:30");
    cone.down.model.p95.reset();
    EXPECT_EQ(coneTable({"", false, {cone}, {}}, {}).rows[0][3], "18:20 model\n18:00 or never");
}

TEST(MakeReport, ClaimsNoOffsetWithoutEvidence) {
    const auto content = makeReport(madeUpFiring(), inParis());
    EXPECT_FALSE(content.packs[0].offset);
    EXPECT_EQ(offsetWords(content.packs[0], content.style), "");
    EXPECT_EQ(content.crystal->offsetTaken.celsius(), 0);
    // the model still says when cones bent, with its interval
    EXPECT_EQ(content.packs[0].cones[0].down.source, ConeSource::model);
}

TEST(MakeReport, RestsOnEarlierFiringsOnly) {
    auto context = inParis();
    const auto filed = [](int firing, Instant at, double mean) {
        return FiledOffset{FiringId{firing},
                           KilnId{1},
                           ProbeId{1},
                           "middle shelf",
                           at,
                           TemperatureDifference::fromCelsius(mean),
                           TemperatureDifference::fromCelsius(2)};
    };
    context.history = {filed(22, lit - std::chrono::hours(240), -8), filed(23, minuteIn(1000), 30),
                       filed(24, lit + std::chrono::hours(240), 30)};
    const auto content = makeReport(madeUpFiring(), context);
    ASSERT_TRUE(content.packs[0].offset);
    EXPECT_EQ(content.packs[0].offset->earlierFirings, 1);
    EXPECT_LT(celsiusOf(content.packs[0].offset->offset.median), 0);
    EXPECT_THAT(offsetWords(content.packs[0], content.style), HasSubstr("low ("));
    EXPECT_THAT(offsetWords(content.packs[0], content.style), HasSubstr("by 1 earlier firing."));
}

TEST(MakeReport, ReckonsEnergyFromVoltsAndAmps) {
    auto record = madeUpFiring();
    addChannel(record, 2, Quantity::lineVolts, 240, 600);
    addChannel(record, 3, Quantity::lineAmps, 25, 600);
    record.readings.push_back({ChannelId{2}, minuteIn(601), 228, Origin::instrument});
    const auto content = makeReport(record, inParis());
    ASSERT_EQ(content.energies.size(), 1u);
    const auto& [known, cost] = content.energies.front();
    EXPECT_NEAR(known.energy.kilowattHours(), 60, 1e-9); // 240 V x 25 A x 10 h
    EXPECT_NEAR(*cost, 15, 1e-9);                        // at 0.25
    EXPECT_EQ(known.source, EnergySource::voltsAndAmps);
    ASSERT_TRUE(content.supply);
    EXPECT_EQ(content.supply->min.volts, 228);
    EXPECT_EQ(content.supply->max.volts, 240);
    EXPECT_EQ(content.supply->minAt, minuteIn(601));
    EXPECT_THAT(summaryWords(content), HasSubstr("60 kWh"));
    EXPECT_THAT(figureTable(content).rows,
                ElementsAre(ElementsAre("electricity", "60 kWh ± 3", "line volts and amps", "15.00", "–")));
}

TEST(MakeReport, ReckonsEnergyFromTheDuty) {
    auto record = madeUpFiring();
    addChannel(record, 2, Quantity::duty, 0.5, 240);
    const auto kWh = [&record] { return makeReport(record).energies.at(0).known.energy.kilowattHours(); };
    EXPECT_NEAR(kWh(), 18, 1e-9);                         // half of 9 kW for 4 h
    addChannel(record, 3, Quantity::lineVolts, 228, 240); // 5 % less: 9.75 % less power
    // the first minute's reading of the duty comes with the first of the volts
    EXPECT_NEAR(kWh(), 18 * 0.9025, 1e-9);
    EXPECT_EQ(makeReport(record).energies.at(0).known.source, EnergySource::dutyAndRatedPower);
    record.kiln.ratedPower.reset();
    EXPECT_THAT(makeReport(record).energies, IsEmpty());
}

TEST(MakeReport, CountsReadingsAndFindsTheLongestGap) {
    auto record = madeUpFiring();
    std::erase_if(record.readings,
                  [](const Reading& r) { return r.at > minuteIn(300) && r.at < minuteIn(342); });
    record.readings.back().struck = true;
    const auto readings = makeReport(record, inParis()).readings;
    EXPECT_EQ(readings.control, 1021u - 41 - 1);
    EXPECT_EQ(readings.struck, 1u);
    EXPECT_EQ(readings.longestGap->start, minuteIn(300));
    EXPECT_EQ(inMinutes(readings.longestGap->length()), 42);
    EXPECT_THAT(remarks(makeReport(record, inParis())),
                testing::Contains("979 readings of the control probe, 979 in all; the longest gap 42 min, "
                                  "from 14:00; 1 struck out."));
}

TEST(MakeReport, JudgesByTheInstrumentBeforeTheHand) {
    auto record = madeUpFiring();
    record.channels.insert(record.channels.begin(),
                           {ChannelId{9}, FiringId{23}, Quantity::temperature, "by hand", ProbeId{1}});
    record.readings.push_back({ChannelId{9}, minuteIn(1020), 850, Origin::hand});
    auto content = makeReport(record, inParis());
    EXPECT_EQ(content.curves.control.size(), 1021u);
    ASSERT_EQ(content.curves.others.size(), 1u);
    std::erase_if(record.readings, [](const Reading& r) { return r.origin == Origin::instrument; });
    content = makeReport(record, inParis());
    EXPECT_EQ(content.curves.control.size(), 1u);
}

TEST(MakeReport, OfAnEmptyFiringSaysWhatThereIs) {
    FiringRecord record;
    record.kiln.name = "Wren";
    record.kiln.fuel = Fuel::gas;
    record.firing.id = FiringId{1};
    record.firing.began = lit;
    const auto content = makeReport(record);
    EXPECT_EQ(titleWords(content), "Firing 1, Wren");
    EXPECT_TRUE(content.stillOpen);
    EXPECT_THAT(datesWords(content), HasSubstr("not ended"));
    EXPECT_FALSE(content.peak || content.crystal || content.supply || content.gas);
    EXPECT_THAT(content.energies, IsEmpty());
    EXPECT_THAT(content.holds, IsEmpty());
    EXPECT_THAT(content.log, IsEmpty());
    EXPECT_THAT(content.cautions, testing::Contains(Caution::carbonMonoxide));
    for (const auto caution : content.cautions)
        EXPECT_FALSE(cautionWords(caution, content.style).empty());
}

TEST(MakeReport, KeepsUnknownConesByTheirLooks) {
    auto record = madeUpFiring();
    record.packs[0].cones = {"9", "own mixture"};
    addLook(record, 600, "own mixture", 3);
    addLook(record, 610, "own mixture", 6);
    const auto content = makeReport(record, inParis());
    EXPECT_EQ(content.packs[0].cones[1].three.source, ConeSource::look);
    EXPECT_EQ(content.packs[0].cones[1].firstLean.source, ConeSource::unknown);
    EXPECT_EQ(content.packs[0].cones[0].down.source, ConeSource::model);
}

TEST(MakeReport, SpeaksFahrenheitThroughout) {
    auto context = inParis();
    context.style.scale = TemperatureScale::fahrenheit;
    const auto content = makeReport(withLooks(), context);
    EXPECT_EQ(holdTable(content).rows[0][0], "growth 1969 ± 11 °F");
    auto lines = remarks(content);
    for (const auto caution : content.cautions)
        lines.push_back(cautionWords(caution, content.style));
    for (const auto& line : lines)
        EXPECT_EQ(line.find("°C"), std::string::npos) << line;
}

TEST(CrystalWords, SayTheRangeAndItsSource) {
    ReportedCrystal crystal{
        {5, 15.4, 32}, {{12, 12.3, 12.7}, {12.7, 13, 13.6}}, publishedGrowthRate(), lit, {}};
    EXPECT_THAT(crystalWords(crystal),
                ElementsAre("about 31 mm across",
                            "10 to 64 mm, the range of published growth rates, 12 to 125 µm/min at best",
                            "two rings, 0.7 to 0.9 mm wide"));
    crystal.rate.basis = GrowthBasis::measured;
    crystal.rate.pieces = 9;
    EXPECT_EQ(crystalWords(crystal)[1], "10 to 64 mm, from 9 measured pieces");
}

TEST(MakeReport, SaysWhatWasForecastAnHourBefore) {
    const auto content = makeReport(withLooks(), inParis());
    ASSERT_EQ(content.forecasts.size(), 1u); // of the cone that the plan waits for
    const auto& told = content.forecasts.front();
    EXPECT_EQ(told.cone, "10");
    EXPECT_EQ(told.found, minuteIn(622));
    EXPECT_EQ(told.asOf, minuteIn(562));
    ASSERT_TRUE(told.told.p05 && told.told.median && told.told.p95);
    EXPECT_LT(*told.told.p05, *told.told.median);
    EXPECT_LT(*told.told.median, *told.told.p95);
    // the made-up kiln climbs as planned and its probe reads as a new one may
    EXPECT_LT(*told.told.p05, told.found);
    EXPECT_GT(*told.told.p95, told.found);
    EXPECT_THAT(remarks(content),
                testing::Contains(testing::StartsWith(
                    "An hour before, at 18:22, the forecast for cone 10 on the middle shelf "
                    "was ")));
    EXPECT_THAT(forecastWords(told, content.style),
                testing::EndsWith(", 90 %); a look found it down at 19:22, "
                                  "or it was so some minutes sooner."));
}

TEST(MakeReport, ForecastsNothingForConesThatNoLookFoundDown) {
    EXPECT_THAT(makeReport(madeUpFiring(), inParis()).forecasts, IsEmpty());
}

TEST(MakeReport, TellsTheOffsetThatWasFiled) {
    auto record = madeUpFiring();
    record.filedOffsets = {{FiringId{23}, KilnId{1}, ProbeId{1}, "middle shelf", minuteIn(1060),
                            TemperatureDifference::fromCelsius(7), TemperatureDifference::fromCelsius(2)}};
    EXPECT_THAT(
        remarks(makeReport(record, inParis())),
        testing::Contains("Filed for later firings: S, top left reads 7 °C high (4 to 10, 90 %) against "
                          "the cones of the middle shelf."));
}

TEST(MakeReport, CountsWhatTheMetersTold) {
    auto record = madeUpFiring();
    record.kiln.gasPrice = 1.5;
    record.pieces = {{PieceId{1}, FiringId{23}, "vase", "frost", "middle"},
                     {PieceId{2}, FiringId{23}, "bowl", "frost", "middle"}};
    const auto stand = [](double minute, double value, MeterUnit unit, bool struck = false) {
        return MeterStand{{}, FiringId{23}, minuteIn(minute), value, unit, struck};
    };
    record.meterStands = {stand(0, 1200, MeterUnit::cubicMetres), stand(1, 410.5, MeterUnit::kilowattHours),
                          stand(500, 9999, MeterUnit::cubicMetres, true),
                          stand(1000, 1212.5, MeterUnit::cubicMetres)};
    EXPECT_THAT(figureTable(makeReport(record, inParis())).rows,
                ElementsAre(ElementsAre("gas", "12.5 m³", "the meter’s stands", "18.75", "9.38")));
}

TEST(MakeReport, TrustsTheMeterBeforeWhatWasReckonedAndTellsBoth) {
    auto record = madeUpFiring();
    addChannel(record, 2, Quantity::lineAmps, 25, 600);
    record.meterStands = {{{}, FiringId{23}, minuteIn(0), 410, MeterUnit::kilowattHours},
                          {{}, FiringId{23}, minuteIn(1000), 474, MeterUnit::kilowattHours}};
    const auto content = makeReport(record, inParis());
    EXPECT_THAT(summaryWords(content), HasSubstr("64 kWh"));
    EXPECT_THAT(
        figureTable(content).rows,
        ElementsAre(ElementsAre("electricity", "64 kWh ± 1", "the meter’s stands", "16.00", "–"),
                    ElementsAre("electricity", "60 kWh ± 5", "line amps at the rated volts", "–", "–")));
}

TEST(MakeReport, TellsAllThatWasSeenOfAPiece) {
    auto record = madeUpFiring();
    record.pieces = {{PieceId{1}, FiringId{23}, "moon jar", "frost", "middle"}};
    Outcome out{PieceId{1}, Crystals::few, 38, 2, "a chip", "B", "keep"};
    out.typical_mm = 12;
    out.knownFaults = {WareFault::pinholes, WareFault::dull};
    out.crystalColour = "ice blue";
    out.groundColour = "straw";
    out.runOff_mm = 3;
    out.catcherClean = true;
    record.outcomes = {out};
    record.photos = {{PhotoId{1}, PieceId{1}, {}, 10, 10, "from above", "bytes"},
                     {PhotoId{2}, PieceId{1}, {}, 10, 10, "only listed", ""}};
    const auto content = makeReport(record, inParis());
    const auto row = wareTable(content).rows.at(0);
    EXPECT_EQ(row.at(5), "38 (12) mm");
    EXPECT_EQ(row.back(), "pinholes; dull; a chip; ice blue on straw; ran 3 mm; catcher clean; keep");
    ASSERT_EQ(content.ware.at(0).photos.size(), 1u);
    EXPECT_EQ(photoWords(content.ware.at(0)), "moon jar, 38 mm, B");
}

TEST(MakeReport, TabulatesAlarmsWithWhoSawThem) {
    auto context = inParis();
    AlarmRecord stuck;
    stuck.level = "urgent";
    stuck.cause = "relay-stuck";
    stuck.detail = "Looks like a relay stuck on.";
    stuck.first = minuteIn(714);
    stuck.acknowledged = Acknowledgement{minuteIn(715), "Ida"};
    stuck.ended = minuteIn(721);
    AlarmRecord left = stuck;
    left.level = "warning";
    left.cause = "band-left";
    left.acknowledged.reset();
    left.ended.reset();
    AlarmRecord away = left;
    away.level = "notice";
    away.cause = "attendance";
    context.alarms = {stuck, left, away};
    const auto table = alarmTable(makeReport(madeUpFiring(), context));
    EXPECT_THAT(table.rows,
                ElementsAre(ElementsAre("Relay stuck on?", "urgent", "20:54", "21:01", "20:55 by Ida"),
                            ElementsAre("Outside the hold's band", "warning", "20:54", "–", "nobody")));
    EXPECT_EQ(table.stressed, (std::vector<bool>{false, true}));
    EXPECT_THAT(alarmTable(makeReport(madeUpFiring(), inParis())).rows, IsEmpty());
}

} // namespace
} // namespace ringhold
