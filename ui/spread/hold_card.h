// The figures of a hold under way, as the card tells them: those of `ringhold holds`.
#pragma once

#include "core/plan/plan.h"
#include "core/watch/hold_statistics.h"
#include "ui/spread/card_words.h"

namespace ringhold {

/// From the hold's arrival to the last reading.
CardWords holdCard(const FiringSession& session, const Preferences& preferences, const Hold& hold,
                   Instant since);

/// Time inside, range, excursions, degree-minutes, drift, arrival, class; how few readings, if so.
QStringList holdFigures(const HoldStatistics& held, Duration planned, const Preferences& preferences);

} // namespace ringhold
