#include "core/report/report_words.h"

#include "core/cones/bending.h"
#include "core/report/hold_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

constexpr double z90 = 1.645;

std::string counted(long count, const std::string& one, const std::string& many) {
    return fmt::format("{} {}", count, count == 1 ? one : many);
}

std::string fuelWords(Fuel fuel) {
    switch (fuel) {
    case Fuel::electric:
        return "electric";
    case Fuel::gas:
        return "gas";
    case Fuel::wood:
        return "wood";
    }
    return {};
}

std::string parted(const std::vector<std::string>& parts, const std::string& by) {
    std::string text;
    for (const auto& part : parts)
        if (!part.empty())
            text += (text.empty() ? "" : by) + part;
    return text;
}

std::string peakRemark(const ReportedPeak& peak, const WordStyle& style) {
    const auto ten = TemperatureDifference::fromCelsius(10);
    std::string text = "Peak " + temperatureWords(peak.peak, style) + " at " + clockWords(peak.at, style) +
                       ", " + durationWords(peak.within10C) + " within " + differenceWords(ten, style) +
                       " of it";
    if (peak.lastClimb)
        text += ", after climbing the last " + differenceWords(ten * 10, style) + " at " +
                rateWords(*peak.lastClimb, style);
    return text + ".";
}

std::string readingsRemark(const ReportedReadings& readings, const WordStyle& style) {
    std::string text = counted(static_cast<long>(readings.control), "reading", "readings") +
                       " of the control probe, " + std::to_string(readings.all) + " in all";
    if (readings.longestGap)
        text += "; the longest gap " + durationWords(readings.longestGap->length()) + ", from " +
                clockWords(readings.longestGap->start, style);
    if (readings.struck > 0)
        text += "; " + std::to_string(readings.struck) + " struck out";
    return text + ".";
}

std::string doubtRemark(const ReportedDoubt& doubt, const WordStyle& style) {
    const bool high = doubt.meant.celsius() >= 0;
    return (doubt.look.cold ? std::string("The cold pack")
                            : "The look at " + clockWords(doubt.look.at, style)) +
           ", cone " + doubt.look.cone + " " + hourWords(doubt.look.hour) +
           ", does not fit the rest: for it the probe would have to read " +
           differenceWords(high ? doubt.meant : -doubt.meant, style) + (high ? " high." : " low.");
}

bool anyModelFigure(const ReportContent& content) {
    return std::ranges::any_of(content.packs, [](const ReportedPack& pack) {
        return std::ranges::any_of(pack.cones, [](const ReportedCone& cone) {
            return cone.firstLean.source == ConeSource::model || cone.three.source == ConeSource::model ||
                   cone.down.source == ConeSource::model;
        });
    });
}

} // namespace

std::string titleWords(const ReportContent& content) {
    return fmt::format("Firing {}, {}", static_cast<std::int64_t>(content.firing), content.kiln.name);
}

std::string datesWords(const ReportContent& content) {
    if (content.stillOpen)
        return dateWords(content.began, content.style, true) + ", from " +
               clockWords(content.began, content.style) + ", not ended; as known at " +
               clockWords(content.until, content.style) +
               formatInZone(content.until, content.style.zone, " %Z");
    return spanWords(content.began, content.until, content.style);
}

std::string summaryWords(const ReportContent& content) {
    const auto pieces = static_cast<long>(content.ware.size());
    const auto& kiln = content.kiln;
    return parted(
        {parted({content.title, pieces > 0 ? counted(pieces, "piece", "pieces") : ""}, ", "),
         content.planName.empty() ? "" : "plan “" + content.planName + "”",
         parted({fuelWords(kiln.fuel), kiln.volume_L ? figure(*kiln.volume_L, 0) + " L" : "",
                 content.energies.empty() ? "" : energyWords(content.energies.front().known.energy)},
                ", ")},
        " · ");
}

std::vector<std::string> crystalWords(const ReportedCrystal& crystal) {
    const auto across = [](double radius_mm) { return figure(2 * radius_mm, 0); };
    std::vector<std::string> lines{
        "about " + across(crystal.radius.likely_mm) + " mm across",
        across(crystal.radius.low_mm) + " to " + across(crystal.radius.high_mm) + " mm, " +
            (crystal.rate.basis == GrowthBasis::measured
                 ? "from " + counted(crystal.rate.pieces, "measured piece", "measured pieces")
                 : fmt::format("the range of published growth rates, {:.0f} to {:.0f} µm/min at best",
                               crystal.rate.low_um_per_min, crystal.rate.high_um_per_min))};
    if (crystal.rings.empty())
        return lines;
    const auto [narrow, wide] = std::ranges::minmax_element(crystal.rings, {}, &CrystalRing::width_mm);
    const std::string from = figure(narrow->width_mm(), 1);
    const std::string to = figure(wide->width_mm(), 1);
    const auto count = static_cast<int>(crystal.rings.size());
    lines.push_back(countWords(count) + (count == 1 ? " ring, " : " rings, ") +
                    (from == to ? from : from + " to " + to) + " mm wide");
    return lines;
}

std::vector<std::string> holdRemarks(const ReportContent& content) {
    std::vector<std::string> lines;
    for (const auto& hold : content.holds) {
        if (hold.found)
            lines.push_back(arrivalWords(*hold.found->arrival, content.style) + " " +
                            uniformityWords(*hold.found, content.style));
        if (hold.found && !fewReadingsWords(*hold.found).empty())
            lines.push_back(fewReadingsWords(*hold.found));
        if (!hold.excursionRadius)
            continue;
        const auto longest = std::ranges::max_element(hold.found->excursions, {},
                                                      [](const Excursion& e) { return e.end - e.start; });
        lines.push_back("The time outside from " + clockWords(longest->start, content.style) +
                        " lies about " + figure(hold.excursionRadius->likely_mm, 0) +
                        " mm out from the crystal’s centre (" + figure(hold.excursionRadius->low_mm, 0) +
                        " to " + figure(hold.excursionRadius->high_mm, 0) + ").");
    }
    return lines;
}

namespace {

/// "7 °C high (4 to 10, 90 %)"
std::string highOrLowWords(const Interval<TemperatureDifference>& offset, const WordStyle& style) {
    const bool high = offset.median.celsius() >= 0;
    const auto ends = std::minmax(offset.p05, offset.p95);
    const auto shown = [&](TemperatureDifference d) {
        return figure(style.scale == TemperatureScale::fahrenheit ? d.fahrenheit() : d.celsius(), 0);
    };
    const bool eitherWay = ends.first.celsius() < 0 && ends.second.celsius() > 0;
    const std::string range = eitherWay ? shown(-ends.first) + " low to " + shown(ends.second) + " high"
                              : high    ? shown(ends.first) + " to " + shown(ends.second)
                                        : shown(-ends.second) + " to " + shown(-ends.first);
    return differenceWords(high ? offset.median : -offset.median, style) + (high ? " high (" : " low (") +
           range + ", 90 %)";
}

std::string againstWords(const std::string& place) {
    return " against the cones" + (place.empty() ? std::string() : " of the " + place);
}

} // namespace

std::string offsetWords(const ReportedPack& pack, const WordStyle& style) {
    if (!pack.offset)
        return {};
    const auto& [offset, looks, firings] = *pack.offset;
    const std::string by = parted({looks > 0 ? counted(looks, "look", "looks") : "",
                                   firings > 0 ? counted(firings, "earlier firing", "earlier firings") : ""},
                                  " and ");
    return "The probe read " + highOrLowWords(offset, style) + againstWords(pack.place) + ", by " + by + ".";
}

std::string filedWords(const ReportedFiled& filed, const WordStyle& style) {
    const auto within = filed.sd * z90;
    const Interval<TemperatureDifference> offset{filed.mean - within, filed.mean, filed.mean + within};
    return "Filed for later firings: " + (filed.probe.empty() ? std::string("the probe") : filed.probe) +
           " reads " + highOrLowWords(offset, style) + againstWords(filed.place) + ".";
}

std::string forecastWords(const ReportedForecast& forecast, const WordStyle& style) {
    std::string told = whenWords(forecast.told, style);
    if (told.ends_with(')'))
        told.insert(told.size() - 1, ", 90 %");
    return "An hour before, at " + clockWords(forecast.asOf, style) + ", the forecast for cone " +
           forecast.cone + (forecast.place.empty() ? "" : " on the " + forecast.place) + " was " + told +
           "; a look found it down at " + clockWords(forecast.found, style) +
           (forecast.sooner ? ", or it was so some minutes sooner." : ".");
}

std::vector<std::string> remarks(const ReportContent& content) {
    const auto& style = content.style;
    std::vector<std::string> lines;
    if (content.peak)
        lines.push_back(peakRemark(*content.peak, style));
    for (const auto& forecast : content.forecasts)
        lines.push_back(forecastWords(forecast, style));
    for (const auto& pack : content.packs) {
        if (pack.offset)
            lines.push_back(offsetWords(pack, style));
        for (const auto& doubt : pack.doubts)
            lines.push_back(doubtRemark(doubt, style));
    }
    for (const auto& filed : content.filed)
        lines.push_back(filedWords(filed, style));
    if (anyModelFigure(content))
        lines.push_back("Where no look tells when a cone bent, the heat-work model does, marked “model”, "
                        "with the interval that holds in nine of ten firings.");
    if (content.supply)
        lines.push_back("Line " + figure(content.supply->min.volts, 0) + " to " +
                        voltsWords(content.supply->max) + ", lowest at " +
                        clockWords(content.supply->minAt, style) + ".");
    lines.push_back(readingsRemark(content.readings, style));
    lines.push_back("Temperatures are what the control probe read, uncorrected.");
    return lines;
}

std::string cautionWords(Caution caution, const WordStyle& style) {
    switch (caution) {
    case Caution::notebookOnly:
        return "Ringhold keeps a notebook; it is no safety device. An independent over-temperature limiter "
               "and the breaker protect the kiln, and a firing is never left alone.";
    case Caution::spyhole:
        return "At the spyhole wear infrared-rated eyewear, chosen with its supplier and to local rules.";
    case Caution::hotWare:
        return "Open below " + temperatureWords(Temperature::fromCelsius(100), style) +
               "; above, ware may crack, and it burns.";
    case Caution::dust:
        return "Run-off edges are razor sharp; grinding them makes dust that must not be breathed.";
    case Caution::fumes:
        return "Glaze fumes need exhaust at the kiln or a room of its own, well aired.";
    case Caution::carbonMonoxide:
        return "A burning kiln makes carbon monoxide: keep an alarm for it and fresh air.";
    case Caution::licensedTrades:
        return "Wiring, gas and ventilation are for licensed trades and local codes.";
    }
    return {};
}

} // namespace ringhold
