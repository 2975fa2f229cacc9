// What the potter says of a hold on the line below the spread: the setting "hold".
#pragma once

#include "core/firing/records.h"
#include "core/report/words.h"
#include "core/watch/hold_statistics.h"

#include <optional>
#include <string>

namespace ringhold {

/// The name of that setting.
inline constexpr const char* holdSetting = "hold";

/// From that instant on the kiln is to be held so. Without a target the hold under way keeps its own, without
/// a half width its band.
struct ToldHold {
    Instant at;
    std::optional<Temperature> target;
    std::optional<TemperatureDifference> halfWidth;

    /// "hold: over": nothing is to be held any more.
    bool over() const { return !target && !halfWidth; }
};

/// "hold: 1076 ± 4 °C", "hold: 1076", "hold: ± 4", "hold: over"; "+-" and "+/-" stand for "±". A figure
/// without a unit is in that scale. Nothing for any other setting, for a struck one and for what cannot be
/// understood or held: 0 to 1800 °C, a half width above 0 and up to 100 °C.
std::optional<ToldHold> toldHold(const Setting& setting, TemperatureScale scale);

/// The value that says so: "1076 ± 4 °C", to a tenth of a degree where it has any.
std::string toldHoldWords(const HoldBand& band, const WordStyle& style);

} // namespace ringhold
