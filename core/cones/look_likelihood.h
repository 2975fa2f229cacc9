// How likely a look is, given where the cone really stood.
#pragma once

namespace ringhold {

/// How potters read cones: the hour with a normal error, then rounded to halves; "standing" takes all below,
/// "down" all above. A small share of looks is wrong altogether (the wrong cone, a slip of the key) and may
/// say any hour.
struct LookReading {
    double hourSd = 0.3;
    double wrongShare = 0.02;
};

/// The probability of the hour told (0 to 6 in halves), when the tip really points to `trueHour` (0 to 6).
double lookProbability(double toldHour, double trueHour, const LookReading& reading = {});

/// The same without wrong looks: what a careful look says.
double carefulLookProbability(double toldHour, double trueHour, double hourSd);

} // namespace ringhold
