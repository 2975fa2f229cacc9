#include "app/verbs/forecast_output.h"

#include <fmt/format.h>

namespace ringhold {

namespace {

Json toJson(const TimeInterval& interval) {
    return {{"p05", isoOrNull(interval.p05)},
            {"median", isoOrNull(interval.median)},
            {"p95", isoOrNull(interval.p95)}};
}

Json toJson(const Interval<double>& interval) {
    return {{"p05", rounded(interval.p05, 2)},
            {"median", rounded(interval.median, 2)},
            {"p95", rounded(interval.p95, 2)}};
}

Interval<double> inCelsius(const Interval<TemperatureDifference>& interval) {
    return {interval.p05.celsius(), interval.median.celsius(), interval.p95.celsius()};
}

Json toJson(const ConeForecast& cone) {
    return {{"cone", cone.cone},
            {"work", rounded(cone.work, 4)},
            {"hour", rounded(cone.hour, 2)},
            {"hour_now", toJson(cone.hourNow)},
            {"down", toJson(cone.down)},
            {"is_down", cone.isDown},
            {"probability_down", rounded(cone.probabilityDown, 3)},
            {"at_1", toJson(cone.atHour[0])},
            {"at_3", toJson(cone.atHour[1])},
            {"at_5", toJson(cone.atHour[2])}};
}

/// Each instant by `show`.
template <class Show>
std::string shownBy(const TimeInterval& interval, Show show) {
    const auto quantile = [&](const std::optional<Instant>& at) {
        return at ? show(*at) : std::string("not within 24 h");
    };
    if (!interval.p05)
        return "not within 24 h";
    return fmt::format("{} (90 %: {} to {})", quantile(interval.median), quantile(interval.p05),
                       quantile(interval.p95));
}

std::string shownHour(const Interval<double>& hour) {
    if (spokenHour(hour.p05) == spokenHour(hour.p95))
        return spokenHour(hour.median);
    return fmt::format("{} (90 %: {:.1f} to {:.1f})", spokenHour(hour.median), hour.p05, hour.p95);
}

} // namespace

Json toJson(const Forecast& forecast) {
    const auto& pack = forecast.packs.front();
    Json cones = Json::array();
    for (const auto& cone : pack.cones)
        cones.push_back(toJson(cone));
    return {{"as_of", formatIso8601(forecast.asOf)},
            {"offset_C", toJson(inCelsius(pack.offset))},
            {"cones", cones}};
}

std::string shownInterval(const TimeInterval& interval, bool absolute) {
    return shownBy(interval, [absolute](Instant at) { return shownTime(at, absolute); });
}

std::string shownClock(const TimeInterval& interval) {
    return shownBy(interval, clockTime);
}

std::string spokenHour(double hour) {
    if (hour < 0.25)
        return "standing";
    return hour > 5.75 ? "down" : fmt::format("at {:.1f} o'clock", hour);
}

void describe(std::ostream& out, const Forecast& forecast, bool absolute) {
    const auto& pack = forecast.packs.front();
    const auto offset = inCelsius(pack.offset);
    out << fmt::format("As of {}\n", shownTime(forecast.asOf, absolute))
        << fmt::format("The probe reads {:+.0f} °C against what the cones feel (90 %: {:+.0f} to {:+.0f})\n",
                       offset.median, offset.p05, offset.p95);
    for (const auto& cone : pack.cones) {
        const auto when = shownInterval(cone.down, absolute);
        if (cone.isDown)
            out << fmt::format("Cone {} is down, since {}\n", cone.cone, when);
        else
            out << fmt::format("Cone {} {}; down {}\n", cone.cone, shownHour(cone.hourNow), when);
    }
}

} // namespace ringhold
