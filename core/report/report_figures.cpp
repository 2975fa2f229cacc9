#include "core/report/report_figures.h"

#include "core/learn/firing_cost.h"
#include "core/watch/curve_parts.h"
#include "core/watch/spike_filter.h"

#include <algorithm>

namespace ringhold {

namespace {

constexpr auto nearPeak = TemperatureDifference::fromCelsius(10);
constexpr auto lastPart = TemperatureDifference::fromCelsius(100);
constexpr auto atTheTop = TemperatureDifference::fromCelsius(2); // where the climb ends and a soak begins

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

std::vector<ReportedEnergy> energiesOf(const FiringRecord& record) {
    std::vector<ReportedEnergy> energies;
    for (const auto& known : energiesKnown(record))
        energies.push_back({known, {}});
    if (const auto price = record.kiln.pricePerKilowattHour; price && !energies.empty())
        energies.front().cost = energies.front().known.energy.kilowattHours() * *price;
    return energies;
}

std::optional<ReportedGas> gasReported(const FiringRecord& record) {
    const auto used = gasOf(record);
    if (!used)
        return std::nullopt;
    const auto price = record.kiln.gasPrice;
    return ReportedGas{*used, price ? std::optional(*used * *price) : std::nullopt};
}

} // namespace ringhold
