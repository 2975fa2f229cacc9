#include "core/watch/told_hold.h"

#include <algorithm>
#include <cctype>
#include <charconv>
#include <cmath>
#include <string_view>
#include <utility>

namespace ringhold {

namespace {

constexpr double widest_C = 100;
constexpr double hottest_C = 1800;

/// Small letters, without blanks of any width, and "±" for its makeshifts.
std::string plain(std::string_view text) {
    std::string result(text);
    for (const std::string_view blank : {" ", "\t", "\u00a0", "\u202f", "\u2009"})
        for (auto at = result.find(blank); at != std::string::npos; at = result.find(blank))
            result.erase(at, blank.size());
    for (const std::string_view makeshift : {"+/-", "+-"})
        if (const auto at = result.find(makeshift); at != std::string::npos)
            result.replace(at, makeshift.size(), "±");
    std::ranges::transform(result, result.begin(),
                           [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    std::ranges::replace(result, ',', '.');
    return result;
}

/// Takes the unit off the end.
TemperatureScale takeScale(std::string& text, TemperatureScale usual) {
    for (const auto& [ending, scale] : {std::pair{"°c", TemperatureScale::celsius},
                                        {"°f", TemperatureScale::fahrenheit},
                                        {"c", TemperatureScale::celsius},
                                        {"f", TemperatureScale::fahrenheit}})
        if (text.ends_with(ending)) {
            text.erase(text.size() - std::string_view(ending).size());
            return scale;
        }
    return usual;
}

std::optional<double> number(std::string_view text) {
    double value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    const bool whole = error == std::errc() && end == text.data() + text.size();
    return whole && std::isfinite(value) ? std::optional(value) : std::nullopt;
}

std::optional<Temperature> readTarget(std::string_view text, TemperatureScale scale) {
    const auto value = number(text);
    if (!value)
        return std::nullopt;
    const auto target = scale == TemperatureScale::fahrenheit ? Temperature::fromFahrenheit(*value)
                                                              : Temperature::fromCelsius(*value);
    const bool held = target.celsius() >= 0 && target.celsius() <= hottest_C;
    return held ? std::optional(target) : std::nullopt;
}

std::optional<TemperatureDifference> readHalfWidth(std::string_view text, TemperatureScale scale) {
    const auto value = number(text);
    if (!value)
        return std::nullopt;
    const auto half = scale == TemperatureScale::fahrenheit ? TemperatureDifference::fromFahrenheit(*value)
                                                            : TemperatureDifference::fromCelsius(*value);
    const bool held = half.celsius() > 0 && half.celsius() <= widest_C;
    return held ? std::optional(half) : std::nullopt;
}

std::string shortFigure(double value) {
    const double tenths = std::round(value * 10) / 10;
    return figure(tenths, tenths == std::round(tenths) ? 0 : 1);
}

} // namespace

std::optional<ToldHold> toldHold(const Setting& setting, TemperatureScale scale) {
    if (setting.struck || plain(setting.what) != holdSetting)
        return std::nullopt;
    std::string text = plain(setting.value);
    ToldHold told{setting.at, {}, {}};
    if (text == "over")
        return told;
    scale = takeScale(text, scale);
    const std::string_view sign = "±";
    const auto middle = text.find(sign);
    const std::string target = text.substr(0, middle);
    if (!target.empty() && !(told.target = readTarget(target, scale)))
        return std::nullopt;
    if (middle != std::string::npos &&
        !(told.halfWidth = readHalfWidth(std::string_view(text).substr(middle + sign.size()), scale)))
        return std::nullopt;
    return told.over() ? std::nullopt : std::optional(told);
}

std::string toldHoldWords(const HoldBand& band, const WordStyle& style) {
    const bool fahrenheit = style.scale == TemperatureScale::fahrenheit;
    const double target = fahrenheit ? band.target.fahrenheit() : band.target.celsius();
    const double half = fahrenheit ? band.halfWidth.fahrenheit() : band.halfWidth.celsius();
    return shortFigure(target) + " ± " + shortFigure(half) + " " + unitWords(style);
}

} // namespace ringhold
