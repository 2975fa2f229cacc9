#include "core/watch/uniformity.h"

#include <algorithm>
#include <chrono>
#include <vector>

namespace ringhold {
namespace {

constexpr Duration longestLeftOut = std::chrono::minutes(20);

Stretch longestOf(const std::vector<Stretch>& stays) {
    const auto longest = std::max_element(stays.begin(), stays.end(), [](const Stretch& a, const Stretch& b) {
        return a.length() < b.length();
    });
    return longest == stays.end() ? Stretch{} : *longest;
}

} // namespace

std::optional<Uniformity> uniformityOf(const Curve& curve, Temperature target, Stretch hold) {
    const Curve part = cut(curve, hold.start, hold.end);
    const Duration mayMiss = std::min(longestLeftOut, hold.length() / 5);
    for (std::size_t i = 0; i < uniformityClasses_C.size(); ++i) {
        const auto eitherWay = TemperatureDifference::fromCelsius(uniformityClasses_C[i]);
        const Stretch stay = longestOf(stretchesWithin(part, target - eitherWay, target + eitherWay));
        if (hold.length() - stay.length() <= mayMiss)
            return Uniformity{static_cast<int>(i) + 1, eitherWay, stay};
    }
    return std::nullopt;
}

} // namespace ringhold
