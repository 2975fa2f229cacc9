#include "core/learn/comparison.h"

#include "core/cones/bending.h"
#include "core/watch/ring_count.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <set>

namespace ringhold {

namespace {

struct Told {
    const ComparedFiring* firing;
    FiringFigures figures;
    bool corrected;
};

std::optional<FigureValue> plain(std::optional<double> value) {
    return value ? std::optional(FigureValue{*value}) : std::nullopt;
}

std::optional<FigureValue> temperature(const Told& told, std::optional<Temperature> read) {
    if (!read)
        return std::nullopt;
    if (!told.corrected)
        return FigureValue{read->celsius()};
    const auto foundAt = told.firing->offsetAt.value_or(told.figures.peak->temperature);
    const OffsetPrior offset = carriedTo(*read, *told.firing->offset, foundAt);
    return FigureValue{(*read - offset.mean).celsius(), offset.sd.celsius()};
}

std::optional<double> ringsOf(const Told& told) {
    const auto& plan = told.firing->record->firing.plan;
    if (!plan || !told.figures.peak)
        return std::nullopt;
    std::optional<double> count;
    const auto& curve = told.firing->control;
    for (const auto& step : plan->steps)
        if (const auto* rings = std::get_if<Rings>(&step))
            count = count.value_or(0) +
                    static_cast<double>(countRings(cut(curve, told.figures.peak->at, curve.back().at),
                                                   {rings->high, rings->low})
                                            .size());
    return count;
}

/// The cold pack's word counts before any look through the spyhole.
std::optional<double> coneHourOf(const Told& told) {
    std::optional<double> seen, cold;
    for (const auto& look : told.firing->record->looks)
        if (!look.struck && look.cone == told.figures.firingCone)
            (look.cold ? cold : seen) = look.hour;
    return cold ? cold : seen;
}

std::optional<FigureValue> energyOf(const Told& told) {
    const auto energy = told.firing->energy ? told.firing->energy : electricityOf(*told.firing->record);
    return energy ? std::optional(FigureValue{energy->energy.kilowattHours(), {}, energy->source})
                  : std::nullopt;
}

std::vector<double> sizesOf(const Told& told) {
    std::vector<double> sizes;
    for (const auto& outcome : told.firing->record->outcomes)
        if (outcome.largest_mm)
            sizes.push_back(*outcome.largest_mm);
    return sizes;
}

std::optional<double> largestOf(const Told& told) {
    const auto sizes = sizesOf(told);
    return sizes.empty() ? std::nullopt : std::optional(std::ranges::max(sizes));
}

std::optional<double> typicalOf(const Told& told) {
    const auto sizes = sizesOf(told);
    double sum = 0;
    for (const double size : sizes)
        sum += size;
    return sizes.empty() ? std::nullopt : std::optional(sum / static_cast<double>(sizes.size()));
}

/// How a figure is got, and from what difference on it is worth looking at.
struct FigureKind {
    Figure figure;
    double threshold; ///< in the figure's unit, or as a share of the largest value
    bool asShare;
    bool ofTemperature; ///< that an offset would shift
    std::function<std::optional<FigureValue>(const Told&)> value;
};

template <class Get>
auto ofHold(Get get) {
    return [get](const Told& told) {
        const auto& hold = told.figures.growthHold;
        return hold ? get(told, *hold) : std::optional<FigureValue>();
    };
}

const std::vector<FigureKind>& kinds() {
    static const std::vector<FigureKind> all{
        {Figure::peak_C, 3, false, true,
         [](const Told& t) {
             return temperature(t,
                                t.figures.peak ? std::optional(t.figures.peak->temperature) : std::nullopt);
         }},
        {Figure::nearPeak_min, 3, false, false,
         [](const Told& t) {
             return plain(t.figures.peak ? std::optional(inMinutes(t.figures.nearPeak)) : std::nullopt);
         }},
        {Figure::lastClimb_C_per_h, 10, false, false,
         [](const Told& t) {
             return plain(t.figures.lastClimb ? std::optional(t.figures.lastClimb->celsiusPerHour())
                                              : std::nullopt);
         }},
        {Figure::growthHold_C, 3, false, true,
         ofHold([](const Told& t, const HoldStatistics& hold) { return temperature(t, hold.mean); })},
        {Figure::growthHoldSd_C, 1, false, false,
         ofHold([](const Told&, const HoldStatistics& hold) { return plain(hold.sd.celsius()); })},
        {Figure::growthHold_h, 0.25, false, false,
         ofHold([](const Told&, const HoldStatistics& hold) { return plain(hold.minutes() / 60); })},
        {Figure::rings, 1, false, false, [](const Told& t) { return plain(ringsOf(t)); }},
        {Figure::coneHour, 0.5, false, false, [](const Told& t) { return plain(coneHourOf(t)); }},
        {Figure::energy_kWh, 0.05, true, false, [](const Told& t) { return energyOf(t); }},
        {Figure::largest_mm, 0.2, true, false, [](const Told& t) { return plain(largestOf(t)); }},
        {Figure::typical_mm, 0.2, true, false, [](const Told& t) { return plain(typicalOf(t)); }},
        {Figure::pieces, 1, false, false,
         [](const Told& t) { return plain(static_cast<double>(t.firing->record->pieces.size())); }},
    };
    return all;
}

FigureRow rowOf(const FigureKind& kind, const std::vector<Told>& firings) {
    FigureRow row{.figure = kind.figure, .values = {}};
    double least = INFINITY, most = -INFINITY;
    for (const auto& firing : firings) {
        row.values.push_back(kind.value(firing));
        if (row.values.back()) {
            least = std::min(least, row.values.back()->value);
            most = std::max(most, row.values.back()->value);
        }
    }
    row.spread = most > least ? most - least : 0;
    row.matters = row.spread > 0 && row.spread >= kind.threshold * (kind.asShare ? std::abs(most) : 1.0);
    return row;
}

std::optional<ProbeId> controlProbe(const FiringRecord& record) {
    const auto channel = std::ranges::find(record.channels, Quantity::temperature, &Channel::quantity);
    return channel == record.channels.end() ? std::nullopt : channel->probe;
}

bool oneProbe(std::span<const ComparedFiring> firings) {
    std::set<std::optional<ProbeId>> probes;
    for (const auto& firing : firings)
        probes.insert(controlProbe(*firing.record));
    return probes.size() < 2 && !probes.contains(std::nullopt);
}

} // namespace

std::optional<Instant> momentOf(const FiringFigures& figures, const Curve& control, AlignAt align) {
    if (align == AlignAt::coneDown)
        return figures.coneDown;
    if (align == AlignAt::growthHold)
        return figures.growthHold ? std::optional(figures.growthHold->start) : std::nullopt;
    return control.empty() ? std::nullopt : std::optional(control.front().at);
}

Comparison compare(std::span<const ComparedFiring> firings) {
    firings = firings.first(std::min(firings.size(), mostCompared));
    Comparison comparison;
    comparison.corrected = !firings.empty() && std::ranges::all_of(firings, [](const ComparedFiring& firing) {
        return firing.offset.has_value();
    });
    std::vector<Told> told;
    for (const auto& firing : firings)
        told.push_back({&firing, firing.figures ? *firing.figures : figuresOf(*firing.record, firing.control),
                        comparison.corrected});
    const bool comparable = comparison.corrected || oneProbe(firings);
    for (const auto& kind : kinds()) {
        FigureRow row = rowOf(kind, told);
        row.comparable = comparable || !kind.ofTemperature;
        const auto has = [](const std::optional<FigureValue>& value) { return value.has_value(); };
        if (std::ranges::any_of(row.values, has))
            comparison.rows.push_back(std::move(row));
    }
    return comparison;
}

} // namespace ringhold
