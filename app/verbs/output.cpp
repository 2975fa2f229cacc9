#include "app/verbs/output.h"

#include <fmt/format.h>

#include <cmath>

namespace ringhold {

Json rounded(double value, int decimals) {
    if (!std::isfinite(value))
        return {};
    const double scale = std::pow(10.0, decimals);
    return std::round(value * scale) / scale;
}

void print(std::ostream& out, const Json& json) {
    out << json.dump(-1, ' ', false, Json::error_handler_t::replace) << '\n';
}

std::string clockTime(Instant at) {
    return formatInZone(at, localZone(), "%H:%M");
}

std::string dateAndTime(Instant at) {
    return formatInZone(at, localZone(), "%F %H:%M");
}

std::string shownTime(Instant at, bool absolute) {
    return absolute ? dateAndTime(at) : "+" + formatInZone(at, "UTC", "%T");
}

std::string spokenDuration(Duration length) {
    const auto seconds = std::llround(inSeconds(length));
    if (seconds < 60)
        return fmt::format("{} s", seconds);
    const auto minutes = std::llround(inMinutes(length));
    return minutes < 60 ? fmt::format("{} min", minutes)
                        : fmt::format("{} h {:02} min", minutes / 60, minutes % 60);
}

} // namespace ringhold
