// The phrases in which Ringhold tells figures to people, on screen and on paper: plain UTF-8, the same in
// every locale. Times are civil times of a zone (an IANA name).
#pragma once

#include "core/cones/forecast.h"
#include "core/units/electrical.h"
#include "core/units/temperature.h"
#include "core/units/time.h"

#include <optional>
#include <string>
#include <vector>

namespace ringhold {

enum class TemperatureScale { celsius, fahrenheit };

/// What the reader wants to see.
struct WordStyle {
    TemperatureScale scale = TemperatureScale::celsius;
    std::string zone = "UTC";
};

/// "1076 °C", with decimals "1075.6 °C".
std::string temperatureWords(Temperature temperature, const WordStyle& style, int decimals = 0);
/// The figure alone, for a table whose heading says the unit.
std::string degreesFigure(Temperature temperature, const WordStyle& style, int decimals = 0);
/// "7 °C", "− 7 °C"; "+ 7 °C" if wanted.
std::string differenceWords(TemperatureDifference difference, const WordStyle& style, int decimals = 0,
                            bool plus = false);
/// "60 °C/h", "− 0.2 °C/h".
std::string rateWords(Rate rate, const WordStyle& style, int decimals = 0);
/// "− 0.2 ± 0.3 °C/h"; without an interval "− 0.2 °C/h". The half width is that of the given interval.
std::string driftWords(Rate rate, std::optional<Rate> halfWidth, const WordStyle& style);
/// "°C" or "°F".
std::string unitWords(const WordStyle& style);

/// A number with a true minus sign and a blank after it, "− 0.2"; never "− 0.0". Finite.
std::string figure(double value, int decimals);
/// "96.2 %" of a share of 1.
std::string percentWords(double share, int decimals = 1);
/// "239 V"; "71 kWh".
std::string voltsWords(Volts volts);
std::string energyWords(Energy energy);

/// "3 h 31", "42 min", "8 s"; rounded to the minute from a minute on.
std::string durationWords(Duration length);
/// "9.3 min"; for dwells.
std::string minutesWords(Duration length);

/// "21:14".
std::string clockWords(Instant at, const WordStyle& style);
/// "1 March 2026", or with the weekday before it.
std::string dateWords(Instant at, const WordStyle& style, bool weekday = false);
/// "Sunday 1 March 2026, 09:00 to Monday 02:40 CET"; on one day "..., 09:00 to 17:10 CET". Both abbreviations
/// are given where the clocks were changed on the way.
std::string spanWords(Instant from, Instant to, const WordStyle& style);

/// "21:14 (21:08 to 21:21)", "not before 21:08" and the like where ends are unknown; "–" when all are.
std::string whenWords(const TimeInterval& when, const WordStyle& style);

/// Where a tip points, to halves: "standing", "just leaning", "at 1½ o’clock", "down"; "nearly
/// down" close below 6.
std::string hourWords(double hour);

/// A cone and the hour at which it is seen or thought.
struct ConeHour {
    std::string cone;
    double hour = 0;
};

/// A look as the log tells it: "9 at 3 o’clock, 10 standing".
std::string lookWords(const std::vector<ConeHour>& cones);
/// How cones stand now: "9 is down, 10 at 2 o’clock".
std::string standingWords(const std::vector<ConeHour>& cones);

/// "one", "two" ... "twelve", then figures.
std::string countWords(int count);

} // namespace ringhold
