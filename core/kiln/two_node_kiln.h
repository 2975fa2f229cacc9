// The two-node kiln: chamber and brick, by which practice firings, planned energy and cooling are reckoned.
#pragma once

#include "core/units/electrical.h"
#include "core/units/temperature.h"
#include "core/units/time.h"

namespace ringhold {

/// C1 dz/dt = P - G12 (z-b) - Gl (z-Ta) - a sigma (TKz^4 - TKa^4);  C2 db/dt = G12 (z-b) - Gb (b-Ta).
/// z chamber, b brick, Ta surroundings; sigma the Stefan-Boltzmann constant.
struct KilnConstants {
    double chamber_J_per_K = 43.4e3;
    double brick_J_per_K = 45.0e3;
    double chamberToBrick_W_per_K = 24.4;
    double brickLoss_W_per_K = 3.50;
    double chamberLoss_W_per_K = 0.985;
    double radiatingArea_m2 = 0.00925;
    Power fullPower{11.0e3}; ///< at ratedVolts
    Volts ratedVolts{240.0};
    Temperature surroundings = Temperature::fromCelsius(22.0);

    static KilnConstants sound() { return {}; }
    static KilnConstants tired();
    /// Full power at these line volts: goes with the square of V.
    Power powerAt(Volts line) const;
};

struct KilnState {
    Temperature chamber;
    Temperature brick;
};

/// The state after `dt` with that power put in, by steps of at most 1 s. dt at least 0.
KilnState advanced(const KilnConstants& kiln, KilnState state, Power power, Duration dt);

/// What it takes to hold the chamber there for good, the brick soaked through.
Power holdingPower(const KilnConstants& kiln, Temperature chamber);

} // namespace ringhold
