// How a kiln and its probes wear, in words.
#pragma once

#include "core/learn/evenness.h"
#include "core/learn/health.h"

#include <QString>
#include <QStringList>

namespace ringhold {

class Preferences;

/// "The climb over 1000 to 1200 °C took 14 % longer (9 to 19) than ten firings ago, at the same volts: 92 min
/// now.", or what is missing.
QString climbWords(const KilnHealth& health, const Preferences& preferences);
/// What the elements' resistance says, and from which rise on to think of new ones; empty where volts and
/// amps were never read.
QString elementWords(const KilnHealth& health);
/// "A firing takes about 71 kWh; ..."; empty where no firing's energy is known.
QString energyWords(const KilnHealth& health);
/// "T1: 14 firings, 42 h above 1 200 °C. Its offset falls: ..."
QString probeWords(const QString& probe, const ProbeHealth& health, const Preferences& preferences);
/// "top + 5 °C ± 3, bottom - 7 °C ± 3", hottest first, ± being the 90 % interval.
QString placesWords(const Evenness& evenness, const Preferences& preferences);
/// "12 °C ± 4"; a dash where fewer than two places could be told.
QString spreadWords(const Evenness& evenness, const Preferences& preferences);

} // namespace ringhold
