#include "core/report/report_curves.h"

#include "core/firing/live_firing.h"
#include "core/plan/plan_check.h"

#include <algorithm>

namespace ringhold {

namespace {

std::string labelOf(const FiringRecord& record, const Channel& channel) {
    for (const auto& probe : record.probes)
        if (channel.probe == probe.id && !probe.label.empty())
            return probe.label;
    return channel.label;
}

const Channel* firstWithReadings(const FiringRecord& record, bool byHand) {
    for (const auto& channel : record.channels)
        if (channel.quantity == Quantity::temperature && (channel.label == byHandLabel) == byHand &&
            !curveOf(record, channel.id).empty())
            return &channel;
    return nullptr;
}

} // namespace

PlanContext planContext(const FiringRecord& record, const Curve& control, ConeDownEstimate coneDown) {
    PlanContext context;
    context.start = control.front().at;
    context.startTemperature = control.front().temperature;
    context.kiln = kilnModelFor(record.kiln.ratedPower, record.kiln.ratedVolts);
    context.coneDown = std::move(coneDown);
    return context;
}

Curve curveOf(const FiringRecord& record, ChannelId channel) {
    Curve curve;
    for (const auto& reading : record.readings) {
        if (reading.channel != channel || reading.struck)
            continue;
        if (!curve.empty() && reading.at == curve.back().at)
            curve.pop_back();
        if (curve.empty() || reading.at > curve.back().at)
            curve.push_back({reading.at, Temperature::fromCelsius(reading.value)});
    }
    return curve;
}

std::optional<ChannelId> controlChannel(const FiringRecord& record) {
    for (const bool byHand : {false, true})
        if (const Channel* channel = firstWithReadings(record, byHand))
            return channel->id;
    return std::nullopt;
}

const Probe* controlProbe(const FiringRecord& record) {
    const auto control = controlChannel(record);
    for (const auto& channel : record.channels)
        for (const auto& probe : record.probes)
            if (channel.id == control && channel.probe == probe.id)
                return &probe;
    return nullptr;
}

std::vector<NamedCurve> otherCurves(const FiringRecord& record) {
    std::vector<NamedCurve> others;
    const auto control = controlChannel(record);
    for (const auto& channel : record.channels) {
        if (channel.quantity != Quantity::temperature || channel.id == control)
            continue;
        if (auto curve = curveOf(record, channel.id); !curve.empty())
            others.push_back({labelOf(record, channel), std::move(curve)});
    }
    return others;
}

std::optional<PlanFollowed> followPlan(const FiringRecord& record, const Curve& control,
                                       ConeDownEstimate coneDown) {
    const auto& plan = record.firing.plan;
    if (!plan || plan->steps.empty() || control.empty() || !check(*plan))
        return std::nullopt;
    StepFollower follower(*plan, planContext(record, control, std::move(coneDown)));
    follower.restart({}, record.looks);
    PlanFollowed followed;
    auto& runs = followed.runs;
    bool level = false;
    for (const auto& point : control) {
        follower.add(point);
        const auto position = follower.position();
        if (!runs.empty())
            runs.back().end = point.at;
        if (!position)
            break;
        if (runs.empty() || runs.back().step != position->step) {
            runs.push_back({position->step, point.at, point.at, point.at});
            level = false;
        }
        if (!level && position->motion == Motion::level) {
            runs.back().levelStart = point.at;
            level = true;
        }
    }
    followed.drawn = follower.drawn();
    return followed;
}

} // namespace ringhold
