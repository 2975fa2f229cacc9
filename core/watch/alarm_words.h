// How an alarm tells its evidence.
#pragma once

#include "core/report/words.h"
#include "core/watch/hold_follower.h"

#include <string>

namespace ringhold {

/// "1083 °C, 8 °C below the hold's 1091 °C for 3 min; band ± 6 °C."
std::string breachWords(const HoldBreach& breach, const HoldBand& band, Instant now, const WordStyle& style);
/// "Drifting − 3.1 ± 0.6 °C/h since 20:41, now 2 °C below. At this drift it leaves the band in about 6 min (4
/// to 11)."
std::string holdDriftWords(const HoldDrift& drift, const WordStyle& style);
/// "Nobody told this hold: 1091 °C is the level since 20:41."
std::string levelOfCurveWords(const HoldUnderWay& hold, const WordStyle& style);
/// "in about 6 min (4 to 11)"; "in about 2 h" with what is known of the ends.
std::string leavesWords(const TimeToLeave& leaves);

} // namespace ringhold
