#include "app/verbs/judgement_output.h"

#include "core/report/hold_words.h"

#include <fmt/format.h>

namespace ringhold {

namespace {

/// More are counted, not listed: noise at a band's edge makes many.
constexpr std::size_t mostExcursionsListed = 8;

Json toJson(const std::vector<Excursion>& excursions) {
    Json all = Json::array();
    for (const auto& excursion : excursions)
        all.push_back({{"start", formatIso8601(excursion.start)},
                       {"end", formatIso8601(excursion.end)},
                       {"peak_C", rounded(excursion.peak.celsius(), 2)}});
    return all;
}

Json toJson(const std::optional<RateInterval>& interval) {
    if (!interval)
        return {};
    return {{"low", rounded(interval->low.celsiusPerHour(), 3)},
            {"high", rounded(interval->high.celsiusPerHour(), 3)}};
}

Json toJson(const std::optional<Duration>& length) {
    return length ? Json(rounded(inMinutes(*length), 2)) : Json();
}

Json toJson(const HoldStatistics& hold) {
    return {{"start", formatIso8601(hold.start)},
            {"end", formatIso8601(hold.end)},
            {"minutes", rounded(hold.minutes(), 2)},
            {"mean_C", rounded(hold.mean.celsius(), 3)},
            {"sd_C", rounded(hold.sd.celsius(), 3)},
            {"min_C", rounded(hold.min.celsius(), 2)},
            {"max_C", rounded(hold.max.celsius(), 2)},
            {"inside_percent", rounded(100 * hold.insideShare, 2)},
            {"longest_excursion_minutes", rounded(inMinutes(hold.longestExcursion), 2)},
            {"degree_minutes_above", rounded(hold.degreeMinutesAbove, 2)},
            {"degree_minutes_below", rounded(hold.degreeMinutesBelow, 2)},
            {"degree_minutes_above_target", rounded(hold.degreeMinutesAboveTarget, 2)},
            {"degree_minutes_below_target", rounded(hold.degreeMinutesBelowTarget, 2)},
            {"drift_C_per_h", rounded(hold.drift.rate.celsiusPerHour(), 3)},
            {"drift_90_C_per_h", toJson(hold.drift.interval90)},
            {"arrived", formatIso8601(hold.arrival->arrived)},
            {"overshoot_C", rounded(hold.arrival->overshoot.celsius(), 2)},
            {"settling_minutes", toJson(hold.arrival->settling)},
            {"uniformity_class", hold.uniformity ? Json(hold.uniformity->furnaceClass) : Json()},
            {"readings", hold.readings},
            {"longest_gap_minutes", rounded(inMinutes(hold.longestGap), 2)},
            {"excursions", toJson(hold.excursions)}};
}

std::string shownDrift(const Drift& drift) {
    const auto rate = fmt::format("drift {:+.2f} °C/h", drift.rate.celsiusPerHour());
    return drift.interval90
               ? rate + fmt::format(" (90 %: {:+.2f} to {:+.2f})", drift.interval90->low.celsiusPerHour(),
                                    drift.interval90->high.celsiusPerHour())
               : rate + " (too short to say how sure)";
}

std::string shownArrival(const HoldArrival& arrival, bool absolute) {
    return fmt::format("    in the band from {}, {:.1f} °C past the target, {}\n",
                       shownTime(arrival.arrived, absolute), arrival.overshoot.celsius(),
                       arrival.settling ? "at rest after " + spokenDuration(*arrival.settling)
                                        : std::string("never quite at rest"));
}

void describe(std::ostream& out, const std::vector<Excursion>& excursions, bool absolute) {
    for (std::size_t i = 0; i < std::min(excursions.size(), mostExcursionsListed); ++i)
        out << fmt::format(
            "    outside from {}, for {}, as far as {:.1f} °C\n", shownTime(excursions[i].start, absolute),
            spokenDuration(excursions[i].end - excursions[i].start), excursions[i].peak.celsius());
    if (excursions.size() > mostExcursionsListed)
        out << fmt::format("    and {} more\n", excursions.size() - mostExcursionsListed);
}

void describe(std::ostream& out, const HoldStatistics& hold, bool absolute) {
    out << fmt::format("Hold from {} to {}: {}\n", shownTime(hold.start, absolute),
                       shownTime(hold.end, absolute), spokenDuration(hold.end - hold.start))
        << fmt::format("    mean {:.1f} °C, standard deviation {:.2f}, from {:.1f} to {:.1f}\n",
                       hold.mean.celsius(), hold.sd.celsius(), hold.min.celsius(), hold.max.celsius())
        << fmt::format("    {:.1f} % of the time inside the band, longest excursion {}\n",
                       100 * hold.insideShare, spokenDuration(hold.longestExcursion))
        << fmt::format("    beyond the band {:.0f} °C min above, {:.0f} below\n", hold.degreeMinutesAbove,
                       hold.degreeMinutesBelow)
        << "    " << shownDrift(hold.drift) << '\n'
        << shownArrival(*hold.arrival, absolute) << "    " << uniformityWords(hold, {}) << '\n';
    if (const auto few = fewReadingsWords(hold); !few.empty())
        out << "    " << few << '\n';
    describe(out, hold.excursions, absolute);
}

} // namespace

Json toJson(const std::vector<HoldStatistics>& holds) {
    Json all = Json::array();
    for (const auto& hold : holds)
        all.push_back(toJson(hold));
    return all;
}

Json toJson(const std::vector<Ring>& rings) {
    Json all = Json::array();
    for (const auto& ring : rings)
        all.push_back({{"low_start", formatIso8601(ring.low.start)},
                       {"low_minutes", rounded(inMinutes(ring.low.length), 2)},
                       {"low_mean_C", rounded(ring.low.mean.celsius(), 2)},
                       {"high_start", formatIso8601(ring.high.start)},
                       {"high_minutes", rounded(inMinutes(ring.high.length), 2)},
                       {"high_mean_C", rounded(ring.high.mean.celsius(), 2)}});
    return all;
}

void describe(std::ostream& out, const std::vector<HoldStatistics>& holds, const HoldBand& band,
              bool absolute) {
    if (holds.empty())
        out << fmt::format("No hold: the curve never stayed 20 min between {:.1f} and {:.1f} °C.\n",
                           band.low().celsius(), band.high().celsius());
    for (const auto& hold : holds)
        describe(out, hold, absolute);
}

void describe(std::ostream& out, const std::vector<Ring>& rings, bool absolute) {
    if (rings.empty())
        out << "No growth ring: the curve never went down to the low and returned.\n";
    for (std::size_t i = 0; i < rings.size(); ++i)
        out << fmt::format("Ring {}: from {} {} at {:.1f} °C, then {} at {:.1f} °C\n", i + 1,
                           shownTime(rings[i].low.start, absolute), spokenDuration(rings[i].low.length),
                           rings[i].low.mean.celsius(), spokenDuration(rings[i].high.length),
                           rings[i].high.mean.celsius());
}

} // namespace ringhold
