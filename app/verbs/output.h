// How verbs write figures.
#pragma once

#include "core/base/result.h"
#include "core/units/time.h"

#include <nlohmann/json.hpp>

#include <optional>
#include <ostream>

namespace ringhold {

/// Keys stay in the order in which they are set.
using Json = nlohmann::ordered_json;

/// For JSON: without the digits that mean nothing. Null when not finite.
Json rounded(double value, int decimals);
inline Json rounded(const std::optional<double>& value, int decimals) {
    return value ? rounded(*value, decimals) : Json();
}
inline Json isoOrNull(const std::optional<Instant>& at) {
    return at ? Json(formatIso8601(*at)) : Json();
}

/// One object on one line. Bytes that are no UTF-8 are replaced.
void print(std::ostream& out, const Json& json);

/// "21:14" on this computer's clock.
std::string clockTime(Instant at);
/// "2026-03-01 21:14" on this computer's clock.
std::string dateAndTime(Instant at);
/// An instant as people read it; where the file had elapsed times only, "+2:05:10" since its zero.
std::string shownTime(Instant at, bool absolute);
/// "3 h 05 min", "42 min", "8 s".
std::string spokenDuration(Duration length);

} // namespace ringhold
