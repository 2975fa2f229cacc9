#include "app/verbs/look_argument.h"

#include <charconv>

namespace ringhold {

namespace {

std::optional<double> hourNamed(const std::string& text) {
    if (text == "standing")
        return 0.0;
    if (text == "down")
        return 6.0;
    double hour = 0;
    const auto* last = text.data() + text.size();
    const auto [end, error] = std::from_chars(text.data(), last, hour);
    if (error != std::errc{} || end != last)
        return std::nullopt;
    if (hour == 12.0)
        return 0.0;
    return isTellableHour(hour) ? std::optional(hour) : std::nullopt;
}

Error badLook(const std::string& text, const std::string& what) {
    return {ErrorKind::badInput, "--look " + text + ": " + what};
}

} // namespace

Result<WatchedLook> parseLook(const std::string& text, const std::string& zone) {
    const auto at = text.find('@');
    const auto equals = text.rfind('=');
    if (at == std::string::npos || at == 0 || equals == std::string::npos || equals < at)
        return badLook(text, "a look is CONE@TIME=HOUR");
    const auto time = parseIso8601(text.substr(at + 1, equals - at - 1), zone);
    if (!time)
        return badLook(text, time.error().what);
    const auto hour = hourNamed(text.substr(equals + 1));
    if (!hour)
        return badLook(text, "the hour is standing, 0.5 to 5.5 in halves, or down");
    return WatchedLook{.pack = 0, .cone = text.substr(0, at), .at = *time, .hour = *hour};
}

} // namespace ringhold
