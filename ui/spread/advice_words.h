// Advice in the potter's words.
#pragma once

#include "core/watch/firing_advice.h"

#include <QString>

namespace ringhold {

class Preferences;

/// "Cone 9 is down in 38 min (29 to 51)."
QString holdingWords(const std::string& cone, const std::optional<TimeInterval>& down, Instant now,
                     const Preferences& preferences);
/// "Climb at 72 °C/h (65 to 80)."
QString climbingWords(const std::optional<Interval<Rate>>& climb, const Preferences& preferences);
/// "Cone 10 would come to 2 o'clock (1½ to 2½)."
QString stayingWords(const std::string& cone, const std::optional<Interval<double>>& hour);
/// "Cooling takes 9 from 4 to 5 o'clock (4½ to 5½); 10 stays standing."
QString droppingWords(const std::vector<ConeAfterDrop>& cones);
/// "Dropped from 21:04 on (20:58 to 21:10) cone 9 goes down while the kiln cools; else at 21:12."
QString earliestDropWords(const std::string& cone, const std::optional<DropAdvice>& advice, Instant now,
                          const Preferences& preferences);

} // namespace ringhold
