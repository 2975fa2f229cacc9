// A small firing with one of everything, for the book's tests.
#pragma once

#include "core/book/reader.h"
#include "core/book/transaction.h"
#include "core/book/writer.h"
#include "tests/core/book/book_folder.h"

#include <gtest/gtest.h>

#include <tuple>

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

/// All fields of a record, to compare.
inline auto fields(const Kiln& r) {
    return std::tie(r.id, r.name, r.fuel, r.volume_L, r.ratedPower, r.ratedVolts, r.pricePerKilowattHour,
                    r.note);
}
inline auto fields(const Probe& r) {
    return std::tie(r.id, r.kiln, r.label, r.type, r.position, r.fitted, r.retired);
}
inline auto fields(const Channel& r) {
    return std::tie(r.id, r.firing, r.quantity, r.label, r.probe);
}
inline auto fields(const Reading& r) {
    return std::tie(r.channel, r.at, r.value, r.origin, r.struck);
}
inline auto fields(const Pack& r) {
    return std::tie(r.id, r.firing, r.place, r.type, r.cones, r.leansLeft);
}
inline auto fields(const Look& r) {
    return std::tie(r.id, r.pack, r.at, r.cone, r.hour, r.cold, r.struck);
}
inline auto fields(const Setting& r) {
    return std::tie(r.id, r.firing, r.at, r.what, r.value, r.struck);
}
inline auto fields(const Note& r) {
    return std::tie(r.id, r.firing, r.at, r.text, r.struck);
}
inline auto fields(const Piece& r) {
    return std::tie(r.id, r.firing, r.name, r.glaze, r.shelf, r.catcher, r.sagger);
}
inline auto fields(const Outcome& r) {
    return std::tie(r.piece, r.crystals, r.largest_mm, r.rings, r.faults, r.grade, r.note);
}
inline auto fields(const FiledOffset& r) {
    return std::tie(r.firing, r.kiln, r.probe, r.place, r.at, r.mean, r.sd);
}

template <class Record>
void expectSame(const std::vector<Record>& found, const std::vector<Record>& wanted) {
    ASSERT_EQ(found.size(), wanted.size());
    for (std::size_t i = 0; i < found.size(); ++i)
        EXPECT_TRUE(fields(found[i]) == fields(wanted[i])) << "record " << i;
}

inline Plan samplePlan() {
    return {"big rings",
            {Climb{Temperature::fromCelsius(1040.1), Rate::fromCelsiusPerHour(123.4)},
             Hold{Temperature::fromCelsius(1040.1), std::chrono::minutes(95),
                  TemperatureDifference::fromCelsius(2.5)}}};
}

/// Writes the firing and gives it back as it must be read again.
inline FiringRecord writeSample(const Book& book) {
    BookWriter writer(book);
    auto transaction = good(WriteTransaction::begin(book));
    FiringRecord f;
    f.kiln = {{}, "Old Bertha é", Fuel::electric, 120.5, Power{9600}, Volts{230}, 0.31, "drafty\nlid"};
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
    f.packs = {{{}, f.firing.id, "middle shelf", ConeType::large, {"8", "9", "10"}, true}};
    f.packs[0].id = good(writer.add(f.packs[0]));
    f.looks = {{{}, f.packs[0].id, evening, "8", 2.5, false, false},
               {{}, f.packs[0].id, evening + seconds(9), "10", 6, true, true}};
    for (auto& look : f.looks)
        look.id = good(writer.add(look));
    f.settings = {{{}, f.firing.id, evening, "damper", "half open", false}};
    f.settings[0].id = good(writer.add(f.settings[0]));
    f.notes = {{{}, f.firing.id, evening, "smells of wax", false}};
    f.notes[0].id = good(writer.add(f.notes[0]));
    f.pieces = {{{}, f.firing.id, "tall vase", "ice 3", "2", true, false},
                {{}, f.firing.id, "bowl", "", "", false, true}};
    for (auto& piece : f.pieces)
        piece.id = good(writer.add(piece));
    f.outcomes = {{f.pieces[0].id, Crystals::many, 41.5, 4, "one pinhole", "A", "sold"},
                  {f.pieces[1].id, {}, {}, {}, "", "", ""}};
    for (const auto& outcome : f.outcomes)
        expectGood(writer.set(outcome));
    f.filedOffsets = {{f.firing.id, f.kiln.id, f.probes[0].id, "middle shelf", evening,
                       TemperatureDifference::fromCelsius(-7.3), TemperatureDifference::fromCelsius(2.1)}};
    expectGood(writer.file(f.filedOffsets[0]));
    expectGood(transaction.commit());
    return f;
}

} // namespace ringhold::test
