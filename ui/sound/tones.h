// The sounds, reckoned: a few notes each, made by the program itself.
#pragma once

#include "ui/sound/sounder.h"

#include <vector>

namespace ringhold {

/// One channel, between -1 and 1, beginning and ending in silence. Between 500 and 1400 Hz with two
/// overtones, so that small loudspeakers and older ears have them: common practice, no source.
std::vector<float> samplesOf(Sound sound, int samplesPerSecond);

} // namespace ringhold
