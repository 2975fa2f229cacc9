#include "core/kiln/practice_firing.h"

#include "core/cones/cone_table.h"

#include <algorithm>
#include <array>
#include <utility>

namespace ringhold {

namespace {

using std::chrono::minutes;

Temperature celsius(double degrees) {
    return Temperature::fromCelsius(degrees);
}

Rate perHour(double degrees) {
    return Rate::fromCelsiusPerHour(degrees);
}

TemperatureDifference drawn(Chance& chance, double sd_C, double most_C) {
    return TemperatureDifference::fromCelsius(std::clamp(sd_C * chance.normal(), -most_C, most_C));
}

} // namespace

Plan practicePlan() {
    const auto growth = celsius(1090);
    return {"Practice: cone 9, growth at 1090, five rings",
            {Climb{celsius(1150), perHour(180)},
             ConeWait{"9", perHour(60), celsius(1265), celsius(1285), minutes(60)},
             Drop{growth, std::nullopt}, Hold{growth, minutes(210), TemperatureDifference::fromCelsius(5)},
             Rings{5, celsius(1060), minutes(10), growth, minutes(10)}, Cool{celsius(600), std::nullopt}}};
}

std::vector<PracticeConeNature> practiceCones(std::span<const std::string> names) {
    std::vector<PracticeConeNature> cones;
    for (const auto& name : names) {
        if (const Cone* cone = ConeTable::builtIn().find(name))
            cones.push_back({.cone = name,
                             .activation_J_per_mol = cone->law.activation_J_per_mol(),
                             .lnA_per_s = cone->law.lnA_per_s(),
                             .deviation = {}});
    }
    return cones;
}

PracticeSettings drawnPracticeSettings(Plan plan, std::uint64_t seed) {
    static const std::array<std::string, 3> pack{"8", "9", "10"};
    Chance chance(seed, 3);
    PracticeSettings settings;
    settings.plan = std::move(plan);
    settings.seed = seed;
    settings.probeOffset = drawn(chance, 8.0, 20.0);
    settings.place = drawn(chance, 3.0, 8.0);
    settings.cones = practiceCones(pack);
    for (auto& cone : settings.cones) {
        cone.deviation = drawn(chance, 2.0, 6.0);
        cone.bendExponent = std::clamp(1.35 + 0.1 * chance.normal(), 1.1, 1.6);
    }
    return settings;
}

} // namespace ringhold
