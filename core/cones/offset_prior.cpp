#include "core/cones/offset_prior.h"

#include "core/thermocouple/tolerance.h"

#include <cmath>
#include <numbers>

namespace ringhold {

namespace {

constexpr double cone_C = 2;
constexpr double placeAndAge_C = 8;
constexpr double wander_C = 0.5;
constexpr double scatter_C = 2;
constexpr double toldNothing = 0.95;
constexpr double carry_C_per_C = 0.02;

TemperatureDifference celsius(double degrees) {
    return TemperatureDifference::fromCelsius(degrees);
}

} // namespace

OffsetPrior newProbePrior(TemperatureDifference toleranceLimit) {
    const double probe_C = toleranceLimit.celsius() / std::numbers::sqrt3;
    return {celsius(0),
            celsius(std::sqrt(probe_C * probe_C + cone_C * cone_C + placeAndAge_C * placeAndAge_C)), 0};
}

OffsetPrior newProbePrior(ThermocoupleType type, Temperature at) {
    const auto limit = tolerance(type, ToleranceClass::iec2, at);
    return newProbePrior(limit ? limit->limit : celsius(0));
}

std::optional<OffsetFound> toldByLooks(const OffsetPrior& prior, const OffsetFound& posterior) {
    if (posterior.sd.celsius() > toldNothing * prior.sd.celsius())
        return std::nullopt;
    const double precisionBefore = 1 / (prior.sd.celsius() * prior.sd.celsius());
    const double precisionAfter = 1 / (posterior.sd.celsius() * posterior.sd.celsius());
    const double told = precisionAfter - precisionBefore;
    const double mean =
        (posterior.mean.celsius() * precisionAfter - prior.mean.celsius() * precisionBefore) / told;
    return OffsetFound{celsius(mean), celsius(1 / std::sqrt(told))};
}

OffsetPrior priorFromHistory(std::span<const OffsetFound> found, const OffsetPrior& fresh) {
    double mean = fresh.mean.celsius();
    double variance = fresh.sd.celsius() * fresh.sd.celsius();
    for (const auto& firing : found) {
        const double noise = firing.sd.celsius() * firing.sd.celsius() + scatter_C * scatter_C;
        const double gain = variance / (variance + noise);
        mean += gain * (firing.mean.celsius() - mean);
        variance = (1 - gain) * variance + wander_C * wander_C;
    }
    if (!found.empty())
        variance += scatter_C * scatter_C;
    return {celsius(mean), celsius(std::sqrt(variance)), static_cast<int>(found.size())};
}

OffsetPrior carriedTo(Temperature to, const OffsetPrior& atCones, Temperature from) {
    const double scale = to.celsius() / from.celsius();
    const double widening = carry_C_per_C * std::abs((to - from).celsius());
    return {atCones.mean * scale, celsius(std::hypot(atCones.sd.celsius() * scale, widening)),
            atCones.firings};
}

} // namespace ringhold
