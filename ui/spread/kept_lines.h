// Lines of the writing line and of the log on their way into a live firing.
#pragma once

#include "core/base/result.h"
#include "core/firing/line_key.h"
#include "core/firing/written_line.h"

namespace ringhold {

class LiveFiring;

/// Writes the line: looks to the first pack that has their cone, "meter: 41234.5" as a meter's stand. On the
/// disk when this returns; badInput for a stand that is none.
Status keepLine(LiveFiring& firing, const WrittenLine& line);

/// Strikes the line, or restores it.
Status strikeLine(LiveFiring& firing, const LineKey& line, Instant when, bool restore);

} // namespace ringhold
