#include "ui/session/firing_cone.h"

#include "ui/session/firing_session.h"

#include <algorithm>

namespace ringhold {

std::optional<std::string> firingConeOf(const FiringSession& session) {
    const auto* follower = session.follower();
    if (!follower)
        return std::nullopt;
    const auto& steps = follower->plan().steps;
    for (std::size_t i = follower->position() ? follower->position()->step : 0; i < steps.size(); ++i)
        if (const auto* wait = std::get_if<ConeWait>(&steps[i]))
            return wait->cone;
    return std::nullopt;
}

const ConeForecast* firingConeForecast(const FiringSession& session) {
    if (!session.forecast() || session.forecast()->packs.empty())
        return nullptr;
    const auto wanted = session.follower() && session.follower()->position() ? firingConeOf(session)
                                                                             : std::optional<std::string>();
    if (session.follower() && !wanted)
        return nullptr;
    const auto& cones = session.forecast()->packs.front().cones;
    const auto found = std::ranges::find_if(
        cones, [&](const ConeForecast& cone) { return wanted ? cone.cone == *wanted : !cone.isDown; });
    return found == cones.end() ? nullptr : &*found;
}

} // namespace ringhold
