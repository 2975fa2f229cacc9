// What a glaze's own crystals told, in words.
#pragma once

#include "core/book/glaze_evidence.h"

#include <QString>

namespace ringhold {

class Preferences;

/// "Fastest at 1 085 °C (1 070 to 1 098): 42 µm/min (35 to 50) ... 7 pieces from 3 firings", or what is
/// missing and that the published range stands in.
QString growthWords(const GlazeGrowth& growth, const Preferences& preferences);
/// "7 pieces from 3 firings, 12 rings".
QString grownFromWords(const GlazeGrowth& growth);
/// From which depth excursions show, and the band to alarm on; or that the answers are too few to say.
QString visibleWords(const VisibleBand& visible, const Preferences& preferences);

} // namespace ringhold
