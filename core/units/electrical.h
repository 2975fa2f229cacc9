// Volts, amps, power and energy as types of their own.
#pragma once

#include <compare>

namespace ringhold {

/// A thermocouple's or an oxygen probe's small voltage.
struct Millivolts {
    double millivolts = 0;
    constexpr auto operator<=>(const Millivolts&) const = default;
};

/// Line volts, root mean square.
struct Volts {
    double volts = 0;
    constexpr auto operator<=>(const Volts&) const = default;
};

/// Line current, root mean square.
struct Amps {
    double amps = 0;
    constexpr auto operator<=>(const Amps&) const = default;
};

struct Power {
    double watts = 0;
    constexpr auto operator<=>(const Power&) const = default;
    constexpr double kilowatts() const { return watts / 1000.0; }
};

struct Energy {
    double joules = 0;
    static constexpr Energy fromKilowattHours(double kWh) { return {kWh * 3.6e6}; }
    constexpr double kilowattHours() const { return joules / 3.6e6; }
    constexpr auto operator<=>(const Energy&) const = default;
    constexpr Energy operator+(Energy o) const { return {joules + o.joules}; }
};

} // namespace ringhold
