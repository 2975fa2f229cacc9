// The ring clock in words.
#pragma once

#include "core/watch/ring_clock.h"

#include <QString>

namespace ringhold {

class FiringSession;
class Preferences;

/// Of the firing's follower; nothing while no rings are under way.
std::optional<RingClock> ringClockOf(const FiringSession& session);

/// "8:42", "1:02:05"; without a sign.
QString countdown(Duration left);
/// "ring 2 of 3, low"
QString ringTitle(const RingClock& clock);
/// "8:42 left", "0:48, then up", "over by 1:10", "on the way up".
QString ringLeftWords(const RingClock& clock);
/// What comes when this dwell ends: "Then up, about 22:14." For the cue: "Up in 0:48."
QString ringNextWords(const RingClock& clock, const Preferences& preferences);

} // namespace ringhold
