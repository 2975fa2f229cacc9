#include "core/growth/ring_times.h"

#include <functional>

namespace ringhold {

namespace {

constexpr double leastRadius_mm = 3;
constexpr int knownWell = 5; ///< measured pieces
constexpr double dipShare = 2.0 / 3;

/// When a rising function of time first reaches a value, to the second; nothing when not by the end.
std::optional<Instant> firstReached(Instant from, Instant to, double value,
                                    const std::function<double(Instant)>& rising) {
    if (rising(to) < value)
        return std::nullopt;
    while (to - from > std::chrono::seconds(1)) {
        const Instant middle = from + (to - from) / 2;
        (rising(middle) < value ? from : to) = middle;
    }
    return to;
}

std::string sizeWords(const SizeRange& radius) {
    return "about " + figure(radius.likely_mm, 0) + " mm out (" + figure(radius.low_mm, 0) + " to " +
           figure(radius.high_mm, 0) + ")";
}

} // namespace

RadiusTime timeOfRadius(const CrystalGrowth& growth, double radius_mm) {
    RadiusTime time{radius_mm, {}, {}, {}};
    const auto began = growth.began();
    const auto end = growth.ends();
    if (!began || !end)
        return time;
    time.earliest =
        firstReached(*began, *end, radius_mm, [&](Instant at) { return growth.radiusAt(at).high_mm; });
    time.likely =
        firstReached(*began, *end, radius_mm, [&](Instant at) { return growth.radiusAt(at).likely_mm; });
    time.latest =
        firstReached(*began, *end, radius_mm, [&](Instant at) { return growth.radiusAt(at).low_mm; });
    return time;
}

std::optional<MarkerDip> markerDip(const CrystalGrowth& growth, Instant end) {
    const auto began = growth.began();
    if (!began || *began >= end || growth.radiusAt(end).likely_mm < leastRadius_mm ||
        (growth.rate().basis == GrowthBasis::measured && growth.rate().pieces >= knownWell))
        return std::nullopt;
    const Instant at = *began + durationFromSeconds(inSeconds(end - *began) * dipShare);
    return MarkerDip{at, growth.radiusAt(at)};
}

std::string radiusTimeWords(const RadiusTime& time, Instant growthBegan, const WordStyle& style) {
    const std::string ring = "A ring at " + figure(time.radius_mm, 0) + " mm: ";
    if (!time.likely)
        return ring + (time.earliest ? "likely farther out than this plan’s crystal grows; at the soonest " +
                                           clockWords(*time.earliest, style) + "."
                                     : std::string("farther out than this plan’s crystal grows."));
    return ring + "dip at " + durationWords(*time.likely - growthBegan) + " of growth, " +
           clockWords(*time.likely, style) + " (" + clockWords(time.earliest.value_or(*time.likely), style) +
           " to " + (time.latest ? clockWords(*time.latest, style) : std::string("later than this plan")) +
           ").";
}

std::string markerDipWords(const MarkerDip& dip, const WordStyle& style) {
    return "A marker dip here, at " + clockWords(dip.at, style) + ", would lie " + sizeWords(dip.radius) +
           " and date the crystal.";
}

std::string momentWords(const std::string& what, Instant at, const SizeRange& radius,
                        const WordStyle& style) {
    return what + " at " + clockWords(at, style) + " lies " + sizeWords(radius) + ": is it to be seen?";
}

} // namespace ringhold
