#include "core/report/words.h"

#include "core/cones/bending.h"

#include <fmt/format.h>

#include <array>
#include <cmath>

namespace ringhold {

namespace {

constexpr const char* minus = "−";

bool fahrenheit(const WordStyle& style) {
    return style.scale == TemperatureScale::fahrenheit;
}

double shown(Temperature t, const WordStyle& style) {
    return fahrenheit(style) ? t.fahrenheit() : t.celsius();
}

double shown(TemperatureDifference d, const WordStyle& style) {
    return fahrenheit(style) ? d.fahrenheit() : d.celsius();
}

double shown(Rate rate, const WordStyle& style) {
    return fahrenheit(style) ? rate.fahrenheitPerHour() : rate.celsiusPerHour();
}

std::string joined(const std::vector<std::string>& parts) {
    std::string text;
    for (const auto& part : parts)
        text += (text.empty() ? "" : ", ") + part;
    return text;
}

} // namespace

std::string figure(double value, int decimals) {
    const double scale = std::pow(10.0, decimals);
    const double rounded = std::round(std::abs(value) * scale) / scale;
    return fmt::format("{}{:.{}f}", value < 0 && rounded > 0 ? std::string(minus) + " " : "", rounded,
                       decimals);
}

std::string unitWords(const WordStyle& style) {
    return fahrenheit(style) ? "°F" : "°C";
}

std::string degreesFigure(Temperature temperature, const WordStyle& style, int decimals) {
    return figure(shown(temperature, style), decimals);
}

std::string temperatureWords(Temperature temperature, const WordStyle& style, int decimals) {
    return degreesFigure(temperature, style, decimals) + " " + unitWords(style);
}

std::string differenceWords(TemperatureDifference difference, const WordStyle& style, int decimals,
                            bool plus) {
    const std::string sign = plus && difference.celsius() > 0 ? "+ " : "";
    return sign + figure(shown(difference, style), decimals) + " " + unitWords(style);
}

std::string rateWords(Rate rate, const WordStyle& style, int decimals) {
    return figure(shown(rate, style), decimals) + " " + unitWords(style) + "/h";
}

std::string driftWords(Rate rate, std::optional<Rate> halfWidth, const WordStyle& style) {
    if (!halfWidth)
        return rateWords(rate, style, 1);
    return figure(shown(rate, style), 1) + " ± " + rateWords(*halfWidth, style, 1);
}

std::string percentWords(double share, int decimals) {
    return figure(share * 100, decimals) + " %";
}

std::string voltsWords(Volts volts) {
    return figure(volts.volts, 0) + " V";
}

std::string energyWords(Energy energy) {
    return figure(energy.kilowattHours(), energy.kilowattHours() < 10 ? 1 : 0) + " kWh";
}

std::string durationWords(Duration length) {
    const long seconds = std::lround(inSeconds(length));
    if (seconds < 60)
        return fmt::format("{} s", seconds);
    const long minutes = std::lround(inMinutes(length));
    return minutes < 60 ? fmt::format("{} min", minutes)
                        : fmt::format("{} h {:02}", minutes / 60, minutes % 60);
}

std::string minutesWords(Duration length) {
    return figure(inMinutes(length), 1) + " min";
}

std::string clockWords(Instant at, const WordStyle& style) {
    return formatInZone(at, style.zone, "%H:%M");
}

std::string dateWords(Instant at, const WordStyle& style, bool weekday) {
    const std::string day = formatInZone(at, style.zone, "%d");
    const std::string date = (day[0] == '0' ? day.substr(1) : day) + formatInZone(at, style.zone, " %B %Y");
    return weekday ? formatInZone(at, style.zone, "%A ") + date : date;
}

std::string spanWords(Instant from, Instant to, const WordStyle& style) {
    const auto zoneAt = [&](Instant at) { return formatInZone(at, style.zone, "%Z"); };
    const bool oneDay = dateWords(from, style) == dateWords(to, style);
    const bool withinDays = to - from < std::chrono::hours(24 * 6);
    std::string text = dateWords(from, style, true) + ", " + clockWords(from, style);
    if (zoneAt(from) != zoneAt(to))
        text += " " + zoneAt(from);
    text += " to ";
    if (!oneDay)
        text += withinDays ? formatInZone(to, style.zone, "%A ") : dateWords(to, style, true) + ", ";
    return text + clockWords(to, style) + " " + zoneAt(to);
}

std::string whenWords(const TimeInterval& when, const WordStyle& style) {
    const auto clock = [&](const std::optional<Instant>& at) {
        return at ? clockWords(*at, style) : std::string("?");
    };
    if (when.median && when.p05 && when.p95)
        return clock(when.median) + " (" + clock(when.p05) + " to " + clock(when.p95) + ")";
    if (when.median && when.p05)
        return clock(when.median) + " (" + clock(when.p05) + " or later)";
    if (when.p05)
        return "not before " + clock(when.p05);
    return "–";
}

std::string hourWords(double hour) {
    if (hour <= hourStanding)
        return "standing";
    if (hour >= hourDown)
        return "down";
    const long halves = std::lround(hour * 2);
    const long whole = halves / 2;
    if (halves < 1)
        return "standing";
    if (halves == 1)
        return "just leaning";
    if (whole >= 6)
        return "nearly down";
    return fmt::format("at {}{} o’clock", whole, halves % 2 ? "½" : "");
}

std::string lookWords(const std::vector<ConeHour>& cones) {
    std::vector<std::string> parts;
    for (const auto& [cone, hour] : cones)
        parts.push_back(cone + " " + hourWords(hour));
    return joined(parts);
}

std::string standingWords(const std::vector<ConeHour>& cones) {
    std::vector<std::string> parts;
    for (const auto& [cone, hour] : cones) {
        const std::string words = hourWords(hour);
        const bool verb = parts.empty() || words == "down" || words == "standing";
        parts.push_back(cone + (verb ? " is " : " ") + words);
    }
    return joined(parts);
}

std::string countWords(int count) {
    static constexpr std::array words{"no",    "one",   "two",  "three", "four",   "five",  "six",
                                      "seven", "eight", "nine", "ten",   "eleven", "twelve"};
    return count >= 0 && static_cast<std::size_t>(count) < words.size()
               ? words[static_cast<std::size_t>(count)]
               : std::to_string(count);
}

} // namespace ringhold
