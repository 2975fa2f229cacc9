// A small firing with one of everything, for the book's tests.
#pragma once

#include "core/book/glaze_cards.h"
#include "core/book/reader.h"
#include "core/book/transaction.h"
#include "core/book/ware_finds.h"
#include "core/book/writer.h"
#include "tests/core/book/book_folder.h"
#include "tests/support/record_fields.h"
#include "tests/support/sample_card.h"

#include <gtest/gtest.h>

namespace ringhold::test {

inline const Instant evening = *parseIso8601("2026-03-01T20:41:00.125Z");

template <class T>
T good(Result<T> result) {
    EXPECT_TRUE(result.ok()) << result.error().text();
    return std::move(result).value();
}

inline void expectGood(const Status& status) {
    EXPECT_TRUE(status.ok()) << status.error().text();
}

inline Kiln kilnCalled(const std::string& name) {
    Kiln kiln;
    kiln.name = name;
    return kiln;
}

inline Firing firingFrom(KilnId kiln, const std::string& title, Instant began,
                         std::optional<Instant> ended = {}) {
    Firing firing;
    firing.kiln = kiln;
    firing.title = title;
    firing.began = began;
    firing.ended = ended;
    return firing;
}

inline Look lookAt(PackId pack, const std::string& cone, double hour) {
    return {{}, pack, evening, cone, hour, false, false};
}

inline Note noteThat(FiringId firing, const std::string& text) {
    return {{}, firing, evening, text, false};
}

inline Plan samplePlan() {
    return {"big rings",
            {Climb{Temperature::fromCelsius(1040.1), Rate::fromCelsiusPerHour(123.4)},
             Hold{Temperature::fromCelsius(1040.1), std::chrono::minutes(95),
                  TemperatureDifference::fromCelsius(2.5)}}};
}

/// The smallest thing that passes for a picture.
inline std::string sampleJpeg() {
    return std::string("\xFF\xD8\0 not much \xFF\xD9", 15);
}

inline void writeAlarmsAndStands(BookWriter& writer, FiringRecord& f) {
    using std::chrono::seconds;
    f.alarmEvents = {
        {f.firing.id, evening, "sag", AlarmChange::raised, AlarmLevel::warning, "218 V", ""},
        {f.firing.id, evening + seconds(5), "sag", AlarmChange::acknowledged, AlarmLevel::warning, "", "me"}};
    for (const auto& event : f.alarmEvents)
        expectGood(writer.add(event));
    f.stepCorrections = {{f.firing.id, evening + seconds(3), 1, true, {}}};
    f.stepCorrections[0].id = good(writer.add(f.stepCorrections[0]));
    f.meterStands = {{{}, f.firing.id, evening, 31415.9, MeterUnit::kilowattHours, false},
                     {{}, f.firing.id, evening + seconds(8), 27.25, MeterUnit::cubicMetres, true}};
    for (auto& stand : f.meterStands)
        stand.id = good(writer.add(stand));
}

inline void writeFinds(const Book& book, FiringRecord& f) {
    const PieceId vase = f.pieces[0].id;
    WareFinds finds(book);
    f.photos = {{{}, vase, evening, 640, 480, "from the left", sampleJpeg()}};
    f.photos[0].id = good(finds.add(f.photos[0]));
    const std::array<PhotoPoint, 4> ends{{{0.1, 0.2}, {0.3, 0.2}, {0, 0}, {1, 1}}};
    f.photoMeasures = {{{}, f.photos[0].id, "largest", 50, 41.5, 0.75, ends},
                       {{}, f.photos[0].id, "", 50, 8, 1, std::nullopt}};
    for (auto& measure : f.photoMeasures)
        measure.id = good(finds.add(measure));
    f.ringRadii = {{vase, 0, 3.25, 0.5}, {vase, 1, 6.5, 0.25}};
    for (const auto& ring : f.ringRadii)
        expectGood(finds.set(ring));
    f.sagsSeen = {{vase, evening, SagSight::yes, 11.5}, {f.pieces[1].id, evening, SagSight::unsure, {}}};
    for (const auto& sag : f.sagsSeen)
        expectGood(finds.set(sag));
    f.glazeCards = {sampleCard()};
    f.glazeCards[0].id = good(GlazeCards(book).add(f.glazeCards[0]));
}

/// Writes the firing and gives it back as it must be read again.
inline FiringRecord writeSample(const Book& book) {
    BookWriter writer(book);
    auto transaction = good(WriteTransaction::begin(book));
    FiringRecord f;
    f.kiln = {{}, "Old Bertha é", Fuel::electric, 120.5, Power{9600}, Volts{230}, 0.31, "drafty\nlid", 1.19};
    f.kiln.id = good(writer.add(f.kiln));
    f.probes = {{{}, f.kiln.id, "top", ThermocoupleType::S, "behind the shelf", evening, std::nullopt}};
    f.probes[0].id = good(writer.add(f.probes[0]));
    f.firing = {{}, f.kiln.id, "Vase day", evening, std::nullopt, samplePlan(), R"({"p":1.35})"};
    f.firing.id = good(writer.add(f.firing));
    f.channels = {{{}, f.firing.id, Quantity::temperature, "T1", f.probes[0].id},
                  {{}, f.firing.id, Quantity::lineVolts, "U", std::nullopt}};
    for (auto& channel : f.channels)
        channel.id = good(writer.add(channel));
    using std::chrono::seconds;
    f.readings = {{f.channels[0].id, evening, 1039.7000000000001, Origin::instrument, false},
                  {f.channels[1].id, evening + seconds(1), 229.5, Origin::instrument, false},
                  {f.channels[0].id, evening + seconds(2), 1041, Origin::instrument, true},
                  {f.channels[0].id, evening + seconds(2), 1040.25, Origin::hand, false}};
    EXPECT_EQ(good(writer.add(f.readings)), 4U);
    f.packs = {
        {{}, f.firing.id, "middle shelf", ConeType::large, {"8", "9", "10"}, true, "2", MapSpot{0.5, 0.9}}};
    f.packs[0].id = good(writer.add(f.packs[0]));
    f.looks = {{{}, f.packs[0].id, evening, "8", 2.5, false, false},
               {{}, f.packs[0].id, evening + seconds(9), "10", 6, true, true}};
    for (auto& look : f.looks)
        look.id = good(writer.add(look));
    f.settings = {{{}, f.firing.id, evening, "damper", "half open", false}};
    f.settings[0].id = good(writer.add(f.settings[0]));
    f.notes = {{{}, f.firing.id, evening, "smells of wax", false}};
    f.notes[0].id = good(writer.add(f.notes[0]));
    f.pieces = {{{},
                 f.firing.id,
                 "tall vase",
                 "ice 3 + iron",
                 "2",
                 true,
                 false,
                 "bottle",
                 "porcelain",
                 0.11,
                 MapSpot{0.25, 0.125}},
                {{}, f.firing.id, "bowl", "", "", false, true}};
    for (auto& piece : f.pieces)
        piece.id = good(writer.add(piece));
    f.outcomes = {{f.pieces[0].id,
                   Crystals::many,
                   41.5,
                   4,
                   "one scratch",
                   "A",
                   "sold",
                   12.5,
                   "gold",
                   "#c8a030",
                   "celadon",
                   "#8fb098",
                   "to the foot",
                   1.5,
                   true,
                   {WareFault::tooManySeeds, WareFault::pinholes}},
                  {f.pieces[1].id, {}, {}, {}, "", "", ""}};
    for (const auto& outcome : f.outcomes)
        expectGood(writer.set(outcome));
    f.filedOffsets = {{f.firing.id, f.kiln.id, f.probes[0].id, "middle shelf", evening,
                       TemperatureDifference::fromCelsius(-7.3), TemperatureDifference::fromCelsius(2.1)}};
    expectGood(writer.file(f.filedOffsets[0]));
    writeAlarmsAndStands(writer, f);
    writeFinds(book, f);
    expectGood(transaction.commit());
    return f;
}

} // namespace ringhold::test
