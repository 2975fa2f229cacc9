#include "core/learn/power_trace.h"

#include <algorithm>
#include <map>

namespace ringhold {

namespace {

constexpr Duration longestGap = std::chrono::minutes(10);

struct TimedValue {
    Instant at;
    double value = 0;
};

std::vector<TimedValue> valuesOf(const FiringRecord& record, Quantity quantity) {
    const auto channel = std::ranges::find(record.channels, quantity, &Channel::quantity);
    std::vector<TimedValue> values;
    if (channel == record.channels.end())
        return values;
    for (const auto& reading : record.readings)
        if (reading.channel == channel->id && !reading.struck)
            values.push_back({reading.at, reading.value});
    return values;
}

/// The channels of amps added up: at each reading what each of them had last, unless it is older than a gap.
std::vector<TimedValue> ampsOf(const FiringRecord& record) {
    std::map<ChannelId, TimedValue> last;
    for (const auto& channel : record.channels)
        if (channel.quantity == Quantity::lineAmps)
            last[channel.id] = {};
    std::vector<TimedValue> sums;
    for (const auto& reading : record.readings) {
        if (reading.struck || !last.contains(reading.channel))
            continue;
        last[reading.channel] = {reading.at, reading.value};
        TimedValue sum{reading.at};
        for (const auto& [channel, value] : last)
            if (reading.at - value.at <= longestGap)
                sum.value += value.value;
        if (!sums.empty() && sums.back().at == sum.at)
            sums.back() = sum;
        else
            sums.push_back(sum);
    }
    return sums;
}

/// The last value at or before that instant, unless it is older than a gap.
std::optional<double> lastBefore(const std::vector<TimedValue>& values, Instant at) {
    const auto next = std::ranges::upper_bound(values, at, {}, &TimedValue::at);
    if (next == values.begin() || at - std::prev(next)->at > longestGap)
        return std::nullopt;
    return std::prev(next)->value;
}

std::optional<Volts> asVolts(std::optional<double> value) {
    return value ? std::optional(Volts{*value}) : std::nullopt;
}

std::optional<FiringPower> byAmps(const FiringRecord& record, const std::vector<TimedValue>& amps,
                                  const std::vector<TimedValue>& volts) {
    const auto rated = record.kiln.ratedVolts;
    if (amps.empty() || (volts.empty() && !rated))
        return std::nullopt;
    FiringPower power{{}, volts.empty() ? PowerBasis::ratedVoltsAmps : PowerBasis::voltsAndAmps};
    for (const auto& [at, value] : amps) {
        const auto line = asVolts(lastBefore(volts, at));
        if (line || rated)
            power.trace.push_back({at, {value * (line ? *line : *rated).volts}, line});
    }
    return power;
}

std::optional<FiringPower> byDuty(const FiringRecord& record, const std::vector<TimedValue>& volts) {
    const auto duty = valuesOf(record, Quantity::duty);
    if (duty.empty() || !record.kiln.ratedPower)
        return std::nullopt;
    FiringPower power{{}, PowerBasis::dutyOfRated};
    for (const auto& [at, share] : duty) {
        const auto line = asVolts(lastBefore(volts, at));
        const bool scaled = line && record.kiln.ratedVolts && record.kiln.ratedVolts->volts > 0;
        const double ratio = scaled ? line->volts / record.kiln.ratedVolts->volts : 1;
        power.trace.push_back({at, {record.kiln.ratedPower->watts * share * ratio * ratio}, line});
    }
    return power;
}

/// The sum of value times seconds, and the seconds, over the parts of [from, to] that points cover.
template <class Value>
std::pair<double, double> summed(const PowerTrace& trace, Instant from, Instant to, const Value& value) {
    double sum = 0, seconds = 0;
    for (std::size_t i = 0; i + 1 < trace.size(); ++i) {
        const std::optional<double> here = value(trace[i]);
        const Duration length = std::min(trace[i + 1].at, to) - std::max(trace[i].at, from);
        if (!here || length <= Duration(0) || trace[i + 1].at - trace[i].at > longestGap)
            continue;
        sum += *here * inSeconds(length);
        seconds += inSeconds(length);
    }
    return {sum, seconds};
}

} // namespace

std::optional<FiringPower> powerOf(const FiringRecord& record) {
    const auto volts = valuesOf(record, Quantity::lineVolts);
    if (auto power = byAmps(record, ampsOf(record), volts))
        return power;
    return byDuty(record, volts);
}

Duration missingIn(const PowerTrace& trace) {
    Duration missing(0);
    for (std::size_t i = 0; i + 1 < trace.size(); ++i)
        if (const Duration length = trace[i + 1].at - trace[i].at; length > longestGap)
            missing += length;
    return missing;
}

std::optional<Volts> meanLine(const PowerTrace& trace, Instant from, Instant to) {
    const auto [sum, seconds] = summed(trace, from, to, [](const PowerPoint& point) {
        return point.line ? std::optional(point.line->volts) : std::nullopt;
    });
    return seconds > 0 ? std::optional(Volts{sum / seconds}) : std::nullopt;
}

std::optional<Power> meanPower(const PowerTrace& trace, Instant from, Instant to) {
    const auto [sum, seconds] =
        summed(trace, from, to, [](const PowerPoint& point) { return std::optional(point.power.watts); });
    return seconds > 0 ? std::optional(Power{sum / seconds}) : std::nullopt;
}

} // namespace ringhold
