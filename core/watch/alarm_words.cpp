#include "core/watch/alarm_words.h"

#include <algorithm>

namespace ringhold {

namespace {

TemperatureDifference sizeOf(TemperatureDifference difference) {
    return difference < TemperatureDifference{} ? -difference : difference;
}

std::string sideWords(HoldSide side) {
    return side == HoldSide::hot ? "above" : "below";
}

} // namespace

std::string breachWords(const HoldBreach& breach, const HoldBand& band, Instant now, const WordStyle& style) {
    return temperatureWords(breach.farthest, style) + " at the farthest, " +
           differenceWords(sizeOf(breach.farthest - band.target), style) + " " + sideWords(breach.side) +
           " the hold’s " + temperatureWords(band.target, style) + ", for " +
           durationWords(now - breach.since) + "; band ± " + differenceWords(band.halfWidth, style) + ".";
}

std::string levelOfCurveWords(const HoldUnderWay& hold, const WordStyle& style) {
    return "Nobody told this hold: " + temperatureWords(hold.band.target, style) + " is the level since " +
           clockWords(hold.from, style) + ".";
}

std::string leavesWords(const TimeToLeave& leaves) {
    const auto minutes = [](Duration length) { return figure(std::max(1.0, inMinutes(length)), 0); };
    const bool soon = leaves.latest.value_or(*leaves.likely) < std::chrono::minutes(100);
    const auto words = [&](Duration length) { return soon ? minutes(length) : durationWords(length); };
    std::string told =
        "in about " + (soon ? minutes(*leaves.likely) + " min" : durationWords(*leaves.likely));
    if (leaves.earliest && leaves.latest)
        told += " (" + words(*leaves.earliest) + " to " + words(*leaves.latest) + ")";
    else if (leaves.earliest)
        told += " (not before " + words(*leaves.earliest) + (soon ? " min)" : ")");
    return told;
}

std::string holdDriftWords(const HoldDrift& drift, const WordStyle& style) {
    const double half = (drift.rate90.high.celsiusPerHour() - drift.rate90.low.celsiusPerHour()) / 2;
    std::string words = "Now " + differenceWords(sizeOf(drift.off), style, 1) + " " + sideWords(drift.side) +
                        " the hold, " + driftWords(drift.rate, Rate::fromCelsiusPerHour(half), style) +
                        " since " + clockWords(drift.since, style) + ".";
    if (drift.leaves)
        words += " At this drift it leaves the band " + leavesWords(*drift.leaves) + ".";
    return words;
}

} // namespace ringhold
