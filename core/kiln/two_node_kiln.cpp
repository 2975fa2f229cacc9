#include "core/kiln/two_node_kiln.h"

#include <algorithm>

namespace ringhold {

namespace {

constexpr double stefanBoltzmann_W_per_m2K4 = 5.670374419e-8;

double fourthPower(double x) {
    return x * x * x * x;
}

/// Watts that the chamber loses straight to the surroundings, brick aside.
double chamberLoss_W(const KilnConstants& kiln, Temperature chamber) {
    const double radiated = kiln.radiatingArea_m2 * stefanBoltzmann_W_per_m2K4 *
                            (fourthPower(chamber.kelvin()) - fourthPower(kiln.surroundings.kelvin()));
    return kiln.chamberLoss_W_per_K * (chamber - kiln.surroundings).celsius() + radiated;
}

KilnState stepped(const KilnConstants& kiln, KilnState state, Power power, double seconds) {
    const double intoBrick_W = kiln.chamberToBrick_W_per_K * (state.chamber - state.brick).celsius();
    const double brickLoss_W = kiln.brickLoss_W_per_K * (state.brick - kiln.surroundings).celsius();
    const double chamber_W = power.watts - intoBrick_W - chamberLoss_W(kiln, state.chamber);
    const auto rise = [seconds](double watts, double J_per_K) {
        return TemperatureDifference::fromCelsius(watts / J_per_K * seconds);
    };
    return {state.chamber + rise(chamber_W, kiln.chamber_J_per_K),
            state.brick + rise(intoBrick_W - brickLoss_W, kiln.brick_J_per_K)};
}

} // namespace

KilnConstants KilnConstants::tired() {
    KilnConstants kiln;
    kiln.chamber_J_per_K = 41.4e3;
    kiln.brick_J_per_K = 46.7e3;
    kiln.chamberToBrick_W_per_K = 25.0;
    kiln.brickLoss_W_per_K = 3.37;
    kiln.chamberLoss_W_per_K = 1.04;
    kiln.radiatingArea_m2 = 0.0159;
    return kiln;
}

Power KilnConstants::powerAt(Volts line) const {
    const double share = line.volts / ratedVolts.volts;
    return {fullPower.watts * share * share};
}

KilnState advanced(const KilnConstants& kiln, KilnState state, Power power, Duration dt) {
    constexpr Duration longestStep = std::chrono::seconds(1);
    for (Duration left = dt; left > Duration(0); left -= longestStep)
        state = stepped(kiln, state, power, inSeconds(std::min(left, longestStep)));
    return state;
}

Power holdingPower(const KilnConstants& kiln, Temperature chamber) {
    // Soaked through, the brick passes on all that it takes in: G12 (z-b) = Gb (b-Ta).
    const double seriesLoss_W_per_K = kiln.chamberToBrick_W_per_K * kiln.brickLoss_W_per_K /
                                      (kiln.chamberToBrick_W_per_K + kiln.brickLoss_W_per_K);
    return {seriesLoss_W_per_K * (chamber - kiln.surroundings).celsius() + chamberLoss_W(kiln, chamber)};
}

} // namespace ringhold
