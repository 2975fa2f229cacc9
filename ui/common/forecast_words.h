// What is told of a cone's forecast, always with its interval.
#pragma once

#include "core/watch/look_doubt.h"

#include <QString>

namespace ringhold {

class FiringSession;
class Preferences;

struct ConeDownWords {
    QString when;    ///< "18:17", "not at this rate", "down", "should be down"
    QString between; ///< "18:11 to 18:25", "18:11 or later"; "it levels off near
                     ///< 1 262 °C (1 255 to 1 270)"; empty where nothing can be said
};

/// A cone that a look has found down is "down"; one that only the model thinks so "should be down".
ConeDownWords coneDownWords(const ConeForecast& cone, const FiringSession& session,
                            const Preferences& preferences);

/// "Cone 10 down 18:17 (18:11 to 18:25)."
QString coneDownSentence(const ConeForecast& cone, const FiringSession& session,
                         const Preferences& preferences);

/// "levels off near 1 262 °C (1 255 to 1 270)".
QString levelsOffWords(const Interval<Temperature>& ceiling, const Preferences& preferences);

/// "7 °C high (4 to 10)", by the median and the ends of an interval.
QString offsetWords(const Interval<TemperatureDifference>& offset, const Preferences& preferences);

/// "Look 18:03, 9 at 4 o'clock, does not fit the rest."
QString doubtHeading(const LookDoubt& doubt, const Preferences& preferences);

/// For the line of the log: "Does not fit the rest: for it the probe would have to read 31 °C low; by the
/// rest it reads 4 °C high (0 to 8)."
QString doubtInShort(const LookDoubt& doubt, const Preferences& preferences);

/// For a page: the heading, what it would mean, and what it does to the forecast of `now`: "... With it cone
/// 9 is down 14:41 (14:33 to 14:50), without it 14:42 (14:36 to 14:49). Was it this cone, this hour?"
QString doubtInFull(const LookDoubt& doubt, const ConeForecast* now, const Preferences& preferences);

} // namespace ringhold
