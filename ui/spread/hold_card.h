// The figures of a hold under way, as the card tells them: those of `ringhold holds`.
#pragma once

#include "core/watch/hold_follower.h"
#include "ui/spread/card_words.h"

namespace ringhold {

/// From the hold's arrival to the last reading.
CardWords holdCard(const FiringSession& session, const Preferences& preferences, const HoldUnderWay& hold);

/// "Steady at 1 244 °C for 34 min, drift − 2.1 ± 0.6 °C/h.": of a hold beside something that matters more.
QString steadyLine(const FiringSession& session, const Preferences& preferences, const HoldUnderWay& hold);

/// Time inside, range, excursions, degree-minutes, drift, arrival, class; how few readings, if so.
QStringList holdFigures(const HoldStatistics& held, std::optional<Duration> planned,
                        const Preferences& preferences);

} // namespace ringhold
