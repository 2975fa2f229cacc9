#include "core/report/report_figures.h"

#include "core/watch/curve_parts.h"
#include "core/watch/spike_filter.h"

#include <algorithm>

namespace ringhold {

namespace {

constexpr auto nearPeak = TemperatureDifference::fromCelsius(10);
constexpr auto lastPart = TemperatureDifference::fromCelsius(100);
constexpr auto atTheTop = TemperatureDifference::fromCelsius(2); // where the climb ends and a soak begins
constexpr Duration longestStep = std::chrono::minutes(10);

/// The readings of one channel that count.
std::vector<Reading> valuesOf(const FiringRecord& record, const Channel& channel) {
    std::vector<Reading> values;
    std::ranges::copy_if(record.readings, std::back_inserter(values),
                         [&](const Reading& r) { return r.channel == channel.id && !r.struck; });
    return values;
}

const Channel* firstOf(const FiringRecord& record, Quantity quantity) {
    const auto first = std::ranges::find(record.channels, quantity, &Channel::quantity);
    return first == record.channels.end() ? nullptr : &*first;
}

/// The last value read by then.
std::optional<double> valueAt(const std::vector<Reading>& values, Instant at) {
    const auto after = std::ranges::upper_bound(values, at, {}, &Reading::at);
    return after == values.begin() ? std::nullopt : std::optional(std::prev(after)->value);
}

/// The integral over time by trapezoids, in watt seconds; `watts` gives the power of a reading.
template <class Watts>
double joulesOf(const std::vector<Reading>& values, Watts watts) {
    double joules = 0;
    for (std::size_t i = 1; i < values.size(); ++i)
        if (const Duration step = values[i].at - values[i - 1].at; step <= longestStep)
            joules += (watts(values[i - 1]) + watts(values[i])) / 2 * inSeconds(step);
    return joules;
}

std::optional<ReportedEnergy> byAmps(const FiringRecord& record, const std::vector<Reading>& volts) {
    const auto rated = record.kiln.ratedVolts;
    if (!firstOf(record, Quantity::lineAmps) || (volts.empty() && !rated))
        return std::nullopt;
    double joules = 0;
    for (const auto& channel : record.channels) {
        if (channel.quantity != Quantity::lineAmps)
            continue;
        joules += joulesOf(valuesOf(record, channel), [&](const Reading& amps) {
            const auto line = valueAt(volts, amps.at);
            return amps.value * (line ? *line : rated ? rated->volts : volts.front().value);
        });
    }
    const bool measured = !volts.empty();
    return ReportedEnergy{{joules},
                          measured ? 0.05 : 0.08,
                          measured ? EnergySource::voltsAndAmps : EnergySource::ratedVoltsAndAmps,
                          {}};
}

std::optional<ReportedEnergy> byDuty(const FiringRecord& record, const std::vector<Reading>& volts) {
    const Channel* duty = firstOf(record, Quantity::duty);
    const auto& kiln = record.kiln;
    if (!duty || !kiln.ratedPower)
        return std::nullopt;
    const double joules = joulesOf(valuesOf(record, *duty), [&](const Reading& share) {
        const auto line = valueAt(volts, share.at);
        const double sag = line && kiln.ratedVolts ? *line / kiln.ratedVolts->volts : 1.0;
        return share.value * kiln.ratedPower->watts * sag * sag;
    });
    return ReportedEnergy{{joules}, 0.10, EnergySource::dutyAndRatedPower, {}};
}

} // namespace

std::optional<ReportedPeak> peakOf(const Curve& control) {
    if (control.empty())
        return std::nullopt;
    const Curve curve = withoutSpikes(control);
    const auto peak = std::ranges::max_element(curve, {}, &CurvePoint::temperature);
    ReportedPeak told{peak->temperature, peak->at, {}, {}};
    told.within10C =
        totalLength(stretchesWithin(curve, peak->temperature - nearPeak, peak->temperature + nearPeak));
    const auto top = std::ranges::find_if(
        curve, [&](const CurvePoint& p) { return p.temperature >= peak->temperature - atTheTop; });
    const auto below = std::find_if(std::reverse_iterator(top), curve.rend(), [&](const CurvePoint& p) {
        return top->temperature - p.temperature >= lastPart;
    });
    if (below != curve.rend())
        told.lastClimb = Rate::fromCelsiusPerHour((top->temperature - below->temperature).celsius() /
                                                  inHours(top->at - below->at));
    return told;
}

ReportedReadings readingsOf(const FiringRecord& record, const Curve& control) {
    ReportedReadings told;
    told.control = control.size();
    for (const auto& reading : record.readings)
        ++(reading.struck ? told.struck : told.all);
    for (std::size_t i = 1; i < control.size(); ++i) {
        const Stretch gap{control[i - 1].at, control[i].at};
        if (!told.longestGap || gap.length() > told.longestGap->length())
            told.longestGap = gap;
    }
    return told;
}

std::optional<ReportedSupply> supplyOf(const FiringRecord& record) {
    const Channel* channel = firstOf(record, Quantity::lineVolts);
    const auto volts = channel ? valuesOf(record, *channel) : std::vector<Reading>();
    if (volts.empty())
        return std::nullopt;
    const auto [min, max] = std::ranges::minmax_element(volts, {}, &Reading::value);
    return ReportedSupply{{min->value}, {max->value}, min->at};
}

std::vector<ReportedMeter> metersOf(const FiringRecord& record) {
    std::vector<ReportedMeter> meters;
    const auto& kiln = record.kiln;
    for (const auto& [unit, price] : {std::pair(MeterUnit::kilowattHours, kiln.pricePerKilowattHour),
                                      std::pair(MeterUnit::cubicMetres, kiln.gasPrice)}) {
        std::vector<MeterStand> stands;
        std::ranges::copy_if(record.meterStands, std::back_inserter(stands),
                             [unit](const MeterStand& s) { return s.unit == unit && !s.struck; });
        if (stands.size() < 2 || stands.back().stand < stands.front().stand)
            continue;
        const double used = stands.back().stand - stands.front().stand;
        meters.push_back({unit, used, price ? std::optional(used * *price) : std::nullopt});
    }
    return meters;
}

std::optional<ReportedEnergy> energyOf(const FiringRecord& record) {
    const Channel* line = firstOf(record, Quantity::lineVolts);
    const auto volts = line ? valuesOf(record, *line) : std::vector<Reading>();
    auto energy = byAmps(record, volts);
    if (!energy)
        energy = byDuty(record, volts);
    if (!energy || energy->energy.joules <= 0)
        return std::nullopt;
    if (record.kiln.pricePerKilowattHour)
        energy->cost = energy->energy.kilowattHours() * *record.kiln.pricePerKilowattHour;
    return energy;
}

} // namespace ringhold
