#include "core/units/time.h"

#include <date/tz.h>

#include <cmath>
#include <sstream>

namespace ringhold {

namespace {

const date::time_zone* findZone(const std::string& name) {
    try {
        return date::locate_zone(name);
    } catch (const std::exception&) {
        return nullptr;
    }
}

Error notATime(std::string_view text) {
    return {ErrorKind::badInput, "\"" + std::string(text) + "\" is not an ISO 8601 date and time"};
}

/// Parses all of the text by one format of the date library, or gives nothing.
template <class Time>
std::optional<Time> parseWhole(const std::string& text, const char* format) {
    std::istringstream in(text);
    in.imbue(std::locale::classic());
    Time time{};
    in >> date::parse(format, time);
    if (in.fail())
        return std::nullopt;
    in >> std::ws;
    return in.peek() == std::istringstream::traits_type::eof() ? std::optional(time) : std::nullopt;
}

/// The text with 'T' between date and time, and "+01:00" for "+01" or "+0100".
std::string tidied(std::string_view text) {
    std::string s(text);
    const auto first = s.find_first_not_of(" \t");
    s = first == std::string::npos ? "" : s.substr(first, s.find_last_not_of(" \t\r") - first + 1);
    if (s.size() > 10 && (s[10] == ' ' || s[10] == 't'))
        s[10] = 'T';
    if (!s.empty() && s.back() == 'z')
        s.back() = 'Z';
    const auto sign = s.find_last_of("+-");
    if (s.size() > 16 && sign != std::string::npos && sign > 10) {
        if (s.size() - sign == 3)
            s += ":00";
        else if (s.size() - sign == 5)
            s.insert(sign + 3, ":");
    }
    return s;
}

/// The digits are where ISO 8601 wants them; the date library alone would take "2026-3-1T9:5".
bool hasIsoShape(const std::string& s) {
    static constexpr std::string_view shape = "dddd-dd-ddTdd:dd";
    if (s.size() < shape.size())
        return false;
    for (std::size_t i = 0; i < shape.size(); ++i) {
        const bool digit = s[i] >= '0' && s[i] <= '9';
        if (shape[i] == 'd' ? !digit : s[i] != shape[i])
            return false;
    }
    return true;
}

} // namespace

Duration durationFromSeconds(double seconds) {
    return Duration(std::llround(seconds * 1000.0));
}

std::string formatIso8601(Instant at) {
    const auto whole = date::floor<std::chrono::seconds>(at);
    const std::string text = whole == at ? date::format("%FT%T", whole) : date::format("%FT%T", at);
    return text + "Z";
}

Result<Instant> parseIso8601(std::string_view text, const std::string& zoneName) {
    const std::string s = tidied(text);
    if (!hasIsoShape(s))
        return notATime(text);
    for (const char* format : {"%FT%TZ", "%FT%RZ", "%FT%T%Ez", "%FT%R%Ez"})
        if (const auto instant = parseWhole<Instant>(s, format))
            return *instant;
    using Civil = date::local_time<std::chrono::milliseconds>;
    for (const char* format : {"%FT%T", "%FT%R"}) {
        if (const auto civil = parseWhole<Civil>(s, format)) {
            const auto* zone = findZone(zoneName);
            if (!zone)
                return Error{ErrorKind::badInput, "the time zone \"" + zoneName + "\" is not known"};
            return Instant(zone->to_sys(*civil, date::choose::earliest));
        }
    }
    return notATime(text);
}

std::string localZone() {
    try {
        return date::current_zone()->name();
    } catch (const std::exception&) {
        return "UTC";
    }
}

std::string formatInZone(Instant at, const std::string& zoneName, const std::string& format) {
    const auto* zone = findZone(zoneName);
    if (!zone)
        return date::format(format, date::floor<std::chrono::seconds>(at));
    return date::format(format, date::make_zoned(zone, date::floor<std::chrono::seconds>(at)));
}

} // namespace ringhold
