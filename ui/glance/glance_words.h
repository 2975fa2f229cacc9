// What the glance view says of one firing: little, and large.
#pragma once

#include "core/firing/live_firing.h"

#include <QString>

namespace ringhold {

class FiringSession;
class LiveAlarms;
class Preferences;

/// How the state line is told, besides its words.
enum class GlanceTone { well, plain, warning };

struct GlanceWords {
    QString kiln;        ///< "Heron"
    QString step;        ///< "hold 1 076 °C · 1 h 40 of 3 h 30", "ring 2 of 3, low · 8:42 left"
    QString temperature; ///< figure; "–" without a reading
    QString unit;
    bool live = false; ///< else it is what was, not what is
    QString state;     ///< "in band · 1 °C under", "3 °C over plan", "on plan"
    GlanceTone tone = GlanceTone::plain;
    QString next;  ///< "then 3 rings, 22:15 · in 1 h 50", "cone 10 down 18:17 (18:11 to 18:25)"
    QString age;   ///< "2 s ago"
    QString alarm; ///< "RELAY STUCK ON? since 21:04"; empty when nothing calls
    bool urgent = false;
    int alarmsMore = 0; ///< besides that one
};

GlanceWords glanceWords(const FiringSession& session, const LiveAlarms& alarms,
                        const Preferences& preferences);
/// In one line, for a screen reader.
QString spokenWords(const GlanceWords& words);

} // namespace ringhold
