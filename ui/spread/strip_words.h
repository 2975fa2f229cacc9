// What the strip says of a live firing, in words; no widget.
#pragma once

#include "core/firing/live_firing.h"

#include <QString>

namespace ringhold {

class FiringSession;
class Preferences;

struct StripWords {
    QString firing;      ///< "Heron · firing 23"
    QString temperature; ///< figure of the last reading; "–" without one
    QString unit;
    Freshness freshness = Freshness::none;
    QString age;         ///< "2 s ago", "9 min ago, no longer live", "probe open"
    QString climb;       ///< "+ 58 °C/h"; "–" when it cannot be told
    QString offPlan;     ///< "3 °C under", "on plan"; empty without a plan
    bool onPlan = false; ///< offPlan says that it is
    QString step;        ///< "cone wait · 10", "hold 1 076 °C"
    QString stepLeft;    ///< "2 h 11 left", empty for a cone wait
    QString coneCaption; ///< "cone 10 down"; empty without a forecast
    QString coneWhen;    ///< "18:17"
    QString coneBetween; ///< "18:11 to 18:25"
    QString next;        ///< "drop to 1 076 °C"; empty at the end of the plan
    QString nextWhen;    ///< "about 18:20"; empty when a look decides
    QString trouble;     ///< disk, link or the most pressing alarm; empty when all is well
};

StripWords stripWords(const FiringSession& session, const Preferences& preferences);

/// A plan's step in a few words: "climb to 1 100 °C", "cone wait · 9", "three rings".
QString stepWords(const Step& step, const Preferences& preferences);

} // namespace ringhold
