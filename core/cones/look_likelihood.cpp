#include "core/cones/look_likelihood.h"

#include "core/cones/bending.h"

#include <cmath>
#include <numbers>

namespace ringhold {

namespace {

constexpr double half = 0.25; ///< half the width of a half hour
constexpr int tellableHours = 13;

double normalBelow(double z) {
    return std::erfc(-z / std::numbers::sqrt2) / 2;
}

} // namespace

double carefulLookProbability(double toldHour, double trueHour, double hourSd) {
    const double above = toldHour <= hourStanding ? 0 : normalBelow((toldHour - half - trueHour) / hourSd);
    const double below = toldHour >= hourDown ? 1 : normalBelow((toldHour + half - trueHour) / hourSd);
    return below - above;
}

double lookProbability(double toldHour, double trueHour, const LookReading& reading) {
    return (1 - reading.wrongShare) * carefulLookProbability(toldHour, trueHour, reading.hourSd) +
           reading.wrongShare / tellableHours;
}

} // namespace ringhold
