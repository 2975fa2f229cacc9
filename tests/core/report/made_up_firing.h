// A made-up firing whose figures can be reckoned by hand.
#pragma once

#include "core/firing/firing_record.h"

#include <cmath>
#include <utility>
#include <vector>

namespace ringhold::test {

/// 1 March 2026, 08:00 UTC: 09:00 in Paris.
inline const Instant lit = parseIso8601("2026-03-01T08:00:00Z").value();

inline Instant minuteIn(double minute) {
    return lit + durationFromMinutes(minute);
}

/// Up at 150 °C/h to 1100, at 60 °C/h to 1290 at minute 622, in 40 min down to 1076, held there until minute
/// 872 but for a dip of 9 °C from minute 720 to 727, three rings to 1041 °C of 9 min each with ramps of 4
/// min, then down at 200 °C/h.
inline const std::vector<std::pair<double, double>> corners{
    {0, 20},     {432, 1100}, {622, 1290}, {662, 1076}, {720, 1076}, {723, 1067}, {727, 1076},
    {872, 1076}, {876, 1041}, {885, 1041}, {889, 1076}, {898, 1076}, {902, 1041}, {911, 1041},
    {915, 1076}, {924, 1076}, {928, 1041}, {937, 1041}, {941, 1076}, {950, 1076}, {1020, 842}};

inline double degreesAt(double minute) {
    for (std::size_t i = 1; i < corners.size(); ++i)
        if (minute <= corners[i].first) {
            const auto& [m0, c0] = corners[i - 1];
            const auto& [m1, c1] = corners[i];
            return c0 + (c1 - c0) * (minute - m0) / (m1 - m0);
        }
    return corners.back().second;
}

inline Plan threeRings() {
    const auto C = Temperature::fromCelsius;
    const auto perHour = Rate::fromCelsiusPerHour;
    using std::chrono::minutes;
    return {"Cone 10, three rings",
            {Climb{C(1100), perHour(150)}, ConeWait{"10", perHour(60), C(1290), C(1310), minutes(40)},
             Drop{C(1076), {}}, Hold{C(1076), minutes(210), TemperatureDifference::fromCelsius(6)},
             Rings{3, C(1041), minutes(9), C(1076), minutes(9)}, Cool{C(600), {}}}};
}

/// Read every minute by an instrument. No looks, notes, ware or power yet.
inline FiringRecord madeUpFiring() {
    FiringRecord record;
    record.kiln = {KilnId{1}, "Heron", Fuel::electric, 150, Power{9000}, Volts{240}, 0.25, ""};
    record.firing = {FiringId{23}, KilnId{1}, "Frost fern and lichen", lit, minuteIn(1060), threeRings(), ""};
    record.probes = {{ProbeId{1}, KilnId{1}, "S, top left", ThermocoupleType::S, "top left", {}, {}}};
    record.channels = {{ChannelId{1}, FiringId{23}, Quantity::temperature, "T1", ProbeId{1}}};
    for (int minute = 0; minute <= 1020; ++minute)
        record.readings.push_back({ChannelId{1}, minuteIn(minute), degreesAt(minute), Origin::instrument});
    record.packs = {{PackId{1}, FiringId{23}, "middle shelf", ConeType::selfSupporting, {"9", "10", "11"}}};
    return record;
}

inline void addLook(FiringRecord& record, double minute, const std::string& cone, double hour,
                    bool cold = false, bool struck = false) {
    record.looks.push_back({LookId{static_cast<std::int64_t>(record.looks.size()) + 1}, PackId{1},
                            minuteIn(minute), cone, hour, cold, struck});
}

/// A channel of another quantity, a value a minute.
inline void addChannel(FiringRecord& record, std::int64_t id, Quantity quantity, double value, int minutes) {
    record.channels.push_back({ChannelId{id}, FiringId{23}, quantity, "", {}});
    for (int minute = 0; minute <= minutes; ++minute)
        record.readings.push_back({ChannelId{id}, minuteIn(minute), value, Origin::instrument});
}

} // namespace ringhold::test
