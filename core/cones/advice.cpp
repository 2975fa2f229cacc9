#include "core/cones/advice.h"

#include "core/cones/down_times.h"
#include "core/cones/hour_belief.h"

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

Error bad(std::string what) {
    return {ErrorKind::badInput, std::move(what)};
}

/// A cone that is known to stand in the pack, and the climb shown.
struct Asked {
    ClimbShown shown;
    std::size_t pack;
    std::size_t cone;     ///< in the pack
    std::size_t gridCone; ///< in the grid
};

Result<Asked> asked(const ConeForecaster& forecaster, const ConeOfPack& which) {
    const auto shown = forecaster.climbShown();
    if (!shown)
        return bad("advice needs two readings");
    if (which.pack >= forecaster.packs().size())
        return bad("there is no such pack");
    const auto& cones = forecaster.packs()[which.pack].cones;
    const auto found = std::ranges::find(cones, which.cone);
    if (found == cones.end())
        return bad("cone \"" + which.cone + "\" is not in the pack");
    const auto cone = static_cast<std::size_t>(found - cones.begin());
    return Asked{*shown, which.pack, cone, forecaster.gridCone(which.pack, cone)};
}

TimeInterval downOn(const ConeForecaster& forecaster, const Asked& asked, const FutureTemperature& future,
                    std::optional<Rate> drop = std::nullopt) {
    const auto& shift = forecaster.posterior().packs[asked.pack].shift[asked.cone];
    const auto ahead = drop
                           ? WorkAhead::dropping(forecaster.grid(), asked.gridCone, future, 1.0, shift, *drop)
                           : WorkAhead(forecaster.grid(), asked.gridCone, future, {1.0}, shift);
    DownTimes times(ahead);
    times.add(shift, 0, 1.0);
    return times.interval();
}

/// To `to` and there for good.
Curve soakAt(const ClimbShown& shown, Temperature to) {
    const double away_C = (to - shown.temperature).celsius();
    const double pace_C_per_h =
        away_C > 0 ? std::max(shown.rate.celsiusPerHour(), leastUp_C_per_h) : comesDown_C_per_h;
    const Instant there = shown.at + durationFromHours(std::abs(away_C) / pace_C_per_h);
    Curve curve{{shown.at, shown.temperature}};
    if (there > shown.at)
        curve.push_back({there, to});
    curve.push_back({there + forecastHorizon, to});
    return curve;
}

/// W gained along the curve up to an instant, and what a drop from there adds.
struct WorkAhead {
    double gained = 0;
    double inCooling = 0;
};

WorkAhead workUntil(const HeatWorkLaw& law, const Curve& ahead, Instant end, double shift_C, Rate drop) {
    WorkAhead work;
    double at_K = ahead.front().temperature.kelvin() - shift_C;
    for (std::size_t i = 1; i < ahead.size() && ahead[i - 1].at < end; ++i) {
        const Instant to = std::min(ahead[i].at, end);
        const double to_K = temperatureAt(ahead, to).kelvin() - shift_C;
        work.gained += law.gained(at_K, to_K, inSeconds(to - ahead[i - 1].at));
        at_K = to_K;
    }
    work.inCooling = workInCooling(law, at_K, drop);
    return work;
}

/// Gathers where one cone points at the end of a future and after cooling from it.
class HoursGathered {
  public:
    HoursGathered(const ConeForecaster& forecaster, const Asked& asked)
        : m_forecaster(forecaster), m_asked(asked) {}

    void add(const Curve& ahead, Instant end, Rate drop, double weight) {
        const auto& grid = m_forecaster.grid();
        const auto& law = grid.cones()[m_asked.gridCone]->law;
        const auto now = grid.lnWork(m_asked.gridCone);
        std::vector<double> atEnd;
        std::vector<double> cooled;
        for (std::size_t node = 0; node < now.size(); ++node) {
            const auto more = workUntil(law, ahead, end, grid.shifts().at_C(node), drop);
            const double work = std::exp(now[node]) + more.gained;
            atEnd.push_back(std::log(work));
            cooled.push_back(std::log(work + more.inCooling));
        }
        add(m_atEnd, atEnd, weight);
        add(m_cooled, cooled, weight);
    }

    HoursAhead told() const {
        return {m_atEnd.interval(), m_cooled.interval(), m_atEnd.probabilityDown(),
                m_cooled.probabilityDown()};
    }

  private:
    void add(HourBelief& belief, const std::vector<double>& lnWork, double weight) const {
        belief.add(m_forecaster.posterior(), m_asked.pack, m_asked.cone, m_forecaster.grid().shifts(), lnWork,
                   weight);
    }

    const ConeForecaster& m_forecaster;
    const Asked& m_asked;
    HourBelief m_atEnd;
    HourBelief m_cooled;
};

/// The rate for which W of that shift is 1 at `by`.
std::optional<Rate> rateFor(const HeatWorkLaw& law, const ClimbShown& shown, double work, double shift_C,
                            Instant by) {
    const double from_K = shown.temperature.kelvin() - shift_C;
    const double hours = inHours(by - shown.at);
    const auto enough = [&](double rate_C_per_h) {
        return work + law.gained(from_K, from_K + rate_C_per_h * hours, hours * 3600) >= 1;
    };
    if (work >= 1)
        return Rate{};
    if (hours <= 0 || !enough(fastestRate().celsiusPerHour()))
        return std::nullopt;
    if (enough(0))
        return Rate{};
    double low = 0;
    double high = fastestRate().celsiusPerHour();
    while (high - low > 0.05) {
        const double middle = (low + high) / 2;
        (enough(middle) ? high : low) = middle;
    }
    return Rate::fromCelsiusPerHour(high);
}

} // namespace

FutureTemperature holdAt(const ClimbShown& shown, Temperature hold) {
    FutureTemperature future;
    for (const auto& node : rateNodes())
        future.cases.push_back(
            {node.weight, soakAt(shown, hold + TemperatureDifference::fromCelsius(node.z * holdSd_C))});
    return future;
}

Result<TimeInterval> downWhenHeldAt(const ConeForecaster& forecaster, const ConeOfPack& which,
                                    Temperature hold) {
    const auto known = asked(forecaster, which);
    if (!known)
        return known.error();
    return downOn(forecaster, *known, holdAt(known->shown, hold));
}

Result<Interval<std::optional<Rate>>> rateToBeDownBy(const ConeForecaster& forecaster,
                                                     const ConeOfPack& which, Instant by) {
    const auto known = asked(forecaster, which);
    if (!known)
        return known.error();
    const auto& grid = forecaster.grid();
    const auto& shift = forecaster.posterior().packs[known->pack].shift[known->cone];
    const auto at = [&](double share) {
        const double shift_C = shift.quantile_C(share);
        const double work = std::exp(grid.shifts().interpolated(grid.lnWork(known->gridCone), shift_C));
        return rateFor(grid.cones()[known->gridCone]->law, known->shown, work, shift_C, by);
    };
    return Interval<std::optional<Rate>>{at(0.05), at(0.5), at(0.95)};
}

Result<HoursAhead> hoursAfterSoak(const ConeForecaster& forecaster, const ConeOfPack& which, Temperature top,
                                  Duration soak, Rate drop) {
    const auto known = asked(forecaster, which);
    if (!known)
        return known.error();
    HoursGathered hours(forecaster, *known);
    for (const auto& possible : holdAt(known->shown, top).cases) {
        const Instant arrives = possible.curve[possible.curve.size() - 2].at;
        hours.add(possible.curve, arrives + soak, drop, possible.weight);
    }
    return hours.told();
}

Result<HoursAhead> hoursAfter(const ConeForecaster& forecaster, const ConeOfPack& which,
                              const FutureTemperature& future, Instant end, Rate drop) {
    const auto known = asked(forecaster, which);
    if (!known)
        return known.error();
    HoursGathered hours(forecaster, *known);
    for (const auto& possible : future.cases)
        hours.add(possible.curve, end, drop, possible.weight);
    return hours.told();
}

Result<std::vector<HoursAhead>> hoursAfterDrop(const ConeForecaster& forecaster, std::size_t pack,
                                               Rate drop) {
    if (pack >= forecaster.packs().size())
        return bad("there is no such pack");
    std::vector<HoursAhead> told;
    for (const auto& cone : forecaster.packs()[pack].cones) {
        const auto known = asked(forecaster, {pack, cone});
        if (!known)
            return known.error();
        HoursGathered hours(forecaster, *known);
        hours.add({{known->shown.at, known->shown.temperature}}, known->shown.at, drop, 1);
        told.push_back(hours.told());
    }
    return told;
}

Result<TimeInterval> earliestDrop(const ConeForecaster& forecaster, const ConeOfPack& which,
                                  const FutureTemperature& future, Rate drop) {
    const auto known = asked(forecaster, which);
    if (!known)
        return known.error();
    return downOn(forecaster, *known, future, drop);
}

} // namespace ringhold
