#include "core/plan/cone_down_estimate.h"

#include <fmt/format.h>

namespace ringhold {

namespace {

std::optional<Instant> reachesOne(const HeatWorkLaw& law, const Curve& curve,
                                  TemperatureDifference probeOffset) {
    double work = 0;
    for (std::size_t i = 1; i < curve.size(); ++i) {
        const double from_K = (curve[i - 1].temperature - probeOffset).kelvin();
        const double to_K = (curve[i].temperature - probeOffset).kelvin();
        const double seconds = inSeconds(curve[i].at - curve[i - 1].at);
        const double gained = law.gained(from_K, to_K, seconds);
        if (work + gained >= 1) {
            const auto after_s = law.secondsToGain(1 - work, from_K, to_K, seconds);
            return curve[i - 1].at + durationFromSeconds(after_s.value_or(seconds));
        }
        work += gained;
    }
    return std::nullopt;
}

} // namespace

Status checkCones(const Plan& plan, const ConeTable& table, ConeType type) {
    for (std::size_t i = 0; i < plan.steps.size(); ++i) {
        const auto* wait = std::get_if<ConeWait>(&plan.steps[i]);
        if (wait && !table.find(wait->cone, type))
            return Error{ErrorKind::badInput,
                         fmt::format("step {}: there is no {} cone {}", i + 1, name(type), wait->cone)};
    }
    return {};
}

ConeDownEstimate coneDownByHeatWork(const ConeTable& table, ConeType type,
                                    TemperatureDifference probeOffset) {
    return
        [&table, type, probeOffset](const Curve& whole, const std::string& cone) -> std::optional<Instant> {
            const Cone* known = table.find(cone, type);
            return known ? reachesOne(known->law, whole, probeOffset) : std::nullopt;
        };
}

} // namespace ringhold
