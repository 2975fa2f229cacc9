#include "core/report/hold_words.h"

namespace ringhold {

namespace {

constexpr Duration closeEnough = std::chrono::minutes(2);
constexpr double leastOvershoot_C = 0.5;

} // namespace

std::string arrivalWords(const HoldArrival& arrival, const WordStyle& style) {
    std::string words = "In the band at " + clockWords(arrival.arrived, style);
    words += arrival.overshoot.celsius() < leastOvershoot_C
                 ? std::string(", without running past")
                 : ", " + differenceWords(arrival.overshoot, style, 1) + " past the hold";
    return words + (arrival.settling ? ", at rest after " + durationWords(*arrival.settling) + "."
                                     : std::string(", never quite at rest."));
}

std::string uniformityWords(const HoldStatistics& hold, const WordStyle& style) {
    if (!hold.uniformity)
        return "Not even within ± " +
               differenceWords(TemperatureDifference::fromCelsius(uniformityClasses_C.back()), style) + ".";
    return "Steady within ± " + differenceWords(hold.uniformity->eitherWay, style) + ", class " +
           std::to_string(hold.uniformity->furnaceClass) + " of furnace practice, by this one probe.";
}

std::string fewReadingsWords(const HoldStatistics& hold) {
    const bool close = hold.readings > 1 && hold.longestGap <= closeEnough;
    if (close)
        return {};
    return "Known from " + std::to_string(hold.readings) + (hold.readings == 1 ? " reading" : " readings") +
           " only, as far as " + durationWords(hold.longestGap) +
           " apart: what the kiln did between them is not known.";
}

} // namespace ringhold
