#include "tests/support/simulated_climb.h"

#include "core/cones/bending.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace ringhold::test {

namespace {

constexpr double first_C = 960; ///< that the cones feel: nothing moves yet
constexpr double usualRate_C_per_h = 60;
constexpr std::size_t longest_s = 60 * 3600;

} // namespace

double StudyRandom::normal(double sd) {
    return sd * std::sqrt(-2 * std::log(1 - unit())) * std::cos(2 * std::numbers::pi * unit());
}

SimulatedClimb::SimulatedClimb(double offset_C, const ErrorCauses& causes, StudyRandom& random)
    : m_causes(causes), m_rate_C_per_h(random.uniform(30, 150)), m_exponent(random.uniform(1.15, 1.6)),
      m_lively(random.unit() < 0.5) {
    if (!causes.exponents)
        m_exponent = InferenceSettings().exponentMean;
    const double climb_s = 300 / m_rate_C_per_h * 3600; // the last 300 °C
    for (int i = 0; i < 2; ++i) {
        const bool comes = random.unit() < 0.4;
        const double from_s = random.uniform(0, climb_s);
        const double to_s = from_s + random.uniform(300, 2400);
        const double factor = random.unit() < 0.3 ? 0.0 : random.uniform(0.7, 0.95); // stall, or sag
        if (comes && causes.slowdowns)
            m_slowdowns.push_back({from_s, to_s, factor});
    }
    for (int c = 0; c < coneCount; ++c) {
        const auto& law = ConeTable::builtIn().find(coneNames[c])->law;
        const double end60_K = law.endPoint(Rate::fromCelsiusPerHour(usualRate_C_per_h)).kelvin();
        const double theta_K = law.activation_J_per_mol() / gasConstant_J_per_mol_K *
                               (1 + random.normal(1) * causes.activationShare);
        // the wrong E turns about the end point at 60 °C/h
        m_cones[c] = {theta_K,
                      std::log(usualRate_C_per_h / 3600) - lnTemperatureIntegral(theta_K, end60_K),
                      random.normal(1) * causes.deviation_C,
                      {0.0}};
    }
    m_probe_C.push_back(first_C + offset_C);
    while (m_cones[coneCount - 1].work.back() < 1 && m_probe_C.size() < longest_s) {
        const double next_C = m_probe_C.back() + rateAt(static_cast<double>(m_probe_C.size())) / 3600;
        for (auto& cone : m_cones) {
            const double felt_K = (m_probe_C.back() + next_C) / 2 - offset_C - cone.deviation_C + 273.15;
            cone.work.push_back(cone.work.back() + std::exp(cone.lnA - cone.theta_K / felt_K));
        }
        m_probe_C.push_back(next_C);
    }
}

double SimulatedClimb::rateAt(double second) const {
    double rate = m_rate_C_per_h;
    for (const auto& slow : m_slowdowns)
        if (second > slow.from_s && second < slow.to_s)
            rate *= slow.factor;
    return rate;
}

Instant SimulatedClimb::at(double second) {
    return Instant{std::chrono::hours(490000)} + durationFromSeconds(second);
}

double SimulatedClimb::reaches_s(int cone, double hour) const {
    const auto& work = m_cones[cone].work;
    const double target = BendingLaw(m_exponent).workAt(hour);
    return static_cast<double>(std::ranges::lower_bound(work, target) - work.begin());
}

double SimulatedClimb::hourAt(int cone, double second) const {
    const auto& work = m_cones[cone].work;
    return BendingLaw(m_exponent).hourAt(work[std::min(static_cast<std::size_t>(second), work.size() - 1)]);
}

Curve SimulatedClimb::readings(double until_s, StudyRandom& random) const {
    Curve curve;
    for (double t = 0; t <= until_s && t < static_cast<double>(m_probe_C.size()); t += m_lively ? 10 : 60)
        curve.push_back({at(t), Temperature::fromCelsius(m_probe_C[static_cast<std::size_t>(t)] +
                                                         random.normal(1) * m_causes.noise_C)});
    return curve;
}

WatchedLook SimulatedClimb::look(int cone, double second, StudyRandom& random) const {
    const double read = hourAt(cone, second) + random.normal(1) * m_causes.lookSd_h;
    return {0, coneNames[cone], at(second), std::clamp(std::round(read * 2) / 2, 0.0, 6.0)};
}

} // namespace ringhold::test
