#include "core/report/make_report.h"

#include "core/report/report_cones.h"
#include "core/report/report_curves.h"
#include "core/report/report_figures.h"
#include "core/report/report_forecast.h"
#include "core/report/report_holds.h"

#include <algorithm>

namespace ringhold {

namespace {

std::vector<FiledOffset> earlier(const std::vector<FiledOffset>& history, const Firing& firing) {
    std::vector<FiledOffset> kept;
    std::ranges::copy_if(history, std::back_inserter(kept),
                         [&](const FiledOffset& f) { return f.firing != firing.id && f.at < firing.began; });
    return kept;
}

/// The end, or the last that is known: of a firing still open, or ended before its last lines.
Instant lastKnown(const FiringRecord& record) {
    Instant last = record.firing.ended.value_or(record.firing.began);
    if (record.firing.ended)
        return last;
    const auto reach = [&last](const auto& lines) {
        for (const auto& line : lines)
            last = std::max(last, line.at);
    };
    reach(record.readings);
    reach(record.notes);
    reach(record.settings);
    reach(record.looks);
    return last;
}

std::vector<ReportedPiece> wareOf(const FiringRecord& record) {
    std::vector<ReportedPiece> ware;
    for (const auto& piece : record.pieces) {
        const auto outcome = std::ranges::find(record.outcomes, piece.id, &Outcome::piece);
        ware.push_back({piece, outcome == record.outcomes.end() ? std::nullopt : std::optional(*outcome)});
        for (const auto& photo : record.photos)
            if (photo.piece == piece.id && !photo.jpeg.empty())
                ware.back().photos.push_back({photo.caption, photo.jpeg});
    }
    return ware;
}

std::vector<Caution> cautionsFor(Fuel fuel) {
    std::vector<Caution> cautions{Caution::notebookOnly, Caution::spyhole, Caution::hotWare, Caution::dust,
                                  Caution::fumes};
    if (fuel != Fuel::electric)
        cautions.push_back(Caution::carbonMonoxide);
    cautions.push_back(Caution::licensedTrades);
    return cautions;
}

/// Where the glaze grew most of the time: the last long hold found, or else the best temperature of the rate.
Temperature growthTemperature(const std::vector<ReportedHold>& holds, const GrowthRate& rate) {
    const HoldStatistics* longest = nullptr;
    for (const auto& hold : holds)
        if (hold.found && rate.at_um_per_min(hold.found->mean) > 0 &&
            (!longest || hold.found->minutes() > longest->minutes()))
            longest = &*hold.found;
    return longest ? longest->mean : rate.window.best;
}

void reckonHolds(ReportContent& content, const FiringRecord& record, const ConeStory& cones,
                 const GrowthRate& rate) {
    const Curve& control = content.curves.control;
    const auto followed = followPlan(record, control, [&cones](const Curve& whole, const std::string& cone) {
        return cones.coneDownOn(whole, cone);
    });
    if (followed) {
        content.curves.planned = followed->drawn;
        content.holds = holdsOf(*record.firing.plan, *followed, control);
        content.rings = ringsOf(*record.firing.plan, *followed, control);
        content.curves.bands = bandsOf(content.holds);
    }
    const auto offset = cones.offsetAt(growthTemperature(content.holds, rate));
    content.crystal = drawCrystal(control, rate, offset ? offset->mean : TemperatureDifference(),
                                  content.holds, content.rings);
}

} // namespace

ReportContent makeReport(const FiringRecord& record, const ReportContext& context) {
    ReportContent content;
    content.firing = record.firing.id;
    content.kiln = record.kiln;
    content.title = record.firing.title;
    content.planName = record.firing.plan ? record.firing.plan->name : std::string();
    content.began = record.firing.began;
    content.until = lastKnown(record);
    content.stillOpen = !record.firing.ended;
    content.style = context.style;
    if (const auto control = controlChannel(record))
        content.curves.control = curveOf(record, *control);
    content.curves.others = otherCurves(record);
    content.peak = peakOf(content.curves.control);
    const ConeStory cones(record, content.curves.control, earlier(context.history, record.firing));
    content.packs = cones.packs();
    content.forecasts =
        forecastsTold(record, content.curves.control, earlier(context.history, record.firing), content.packs);
    content.filed = offsetsFiled(record);
    reckonHolds(content, record, cones, context.growth);
    content.energies = energiesOf(record);
    content.gas = gasReported(record);
    content.supply = supplyOf(record);
    content.readings = readingsOf(record, content.curves.control);
    content.log = logLines(record, context.alarms, context.events);
    content.ware = wareOf(record);
    content.cautions = cautionsFor(record.kiln.fuel);
    return content;
}

} // namespace ringhold
