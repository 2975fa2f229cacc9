#include "core/units/curve.h"

#include <algorithm>

namespace ringhold {

Temperature temperatureAt(const Curve& curve, Instant at) {
    const auto next = std::upper_bound(curve.begin(), curve.end(), at,
                                       [](Instant t, const CurvePoint& p) { return t < p.at; });
    if (next == curve.begin())
        return next->temperature;
    const auto& before = *std::prev(next);
    if (next == curve.end())
        return before.temperature;
    const double share = inSeconds(at - before.at) / inSeconds(next->at - before.at);
    return before.temperature + (next->temperature - before.temperature) * share;
}

} // namespace ringhold
