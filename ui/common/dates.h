// Days as they are shown and typed.
#pragma once

#include "core/base/result.h"
#include "core/units/time.h"

#include <QString>

namespace ringhold {

class Preferences;

/// "1 Mar 2026", in the chosen zone.
QString shortDate(Instant at, const Preferences& preferences);
/// "2026-03-01": what is typed for a day.
QString typedDate(Instant at, const Preferences& preferences);
/// The day's beginning in the chosen zone; badInput when it is no such date.
Result<Instant> dayTyped(const QString& text, const Preferences& preferences);

} // namespace ringhold
