// Ring radii as they are typed and shown.
#pragma once

#include "core/base/result.h"
#include "core/firing/ware_records.h"

#include <QString>

#include <vector>

namespace ringhold {

/// "4.2  –  8.1": from the innermost ring, in mm from the crystal's centre, a dash for one without a radius.
QString ringsText(const std::vector<RingRadius>& rings);

/// What was typed, parted by spaces or semicolons; a decimal comma will do, "-" or "–" skips a ring that
/// cannot be seen. Radii that are as they were keep their error; new ones are taken to be within 0.3 mm (one
/// standard deviation). badInput for anything but numbers of mm above 0 that grow outwards.
Result<std::vector<RingRadius>> ringsTyped(const QString& text, const std::vector<RingRadius>& before);

} // namespace ringhold
