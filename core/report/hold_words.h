// What is to be said of a hold beside its table of figures.
#pragma once

#include "core/report/words.h"
#include "core/watch/hold_statistics.h"

#include <string>

namespace ringhold {

/// "In the band at 20:31, 4 °C past the hold, at rest after 9 min."
std::string arrivalWords(const HoldArrival& arrival, const WordStyle& style);
/// "Steady within ± 6 °C, class 2 of furnace practice, by this one probe."; "Not even within ± 28 °C."
std::string uniformityWords(const HoldStatistics& hold, const WordStyle& style);
/// "Known from 15 readings only, as far as 15 min apart: what the kiln did between them is not known."; empty
/// where readings are close enough (every 2 min, as furnace practice asks).
std::string fewReadingsWords(const HoldStatistics& hold);

} // namespace ringhold
