#include "core/cones/bending.h"
#include "core/report/report_words.h"

#include <fmt/format.h>

#include <algorithm>

namespace ringhold {

namespace {

const std::string none = "–";

std::string markCell(const ConeMark& mark, const WordStyle& style) {
    const auto clock = [&](const std::optional<Instant>& at) { return at ? clockWords(*at, style) : none; };
    switch (mark.source) {
    case ConeSource::look:
        return clock(mark.seen);
    case ConeSource::by:
        return "by " + clock(mark.seen);
    case ConeSource::model:
        return clock(mark.model.median) + " model\n" +
               (mark.model.p95 ? clock(mark.model.p05) + " to " + clock(mark.model.p95)
                               : clock(mark.model.p05) + " or never");
    case ConeSource::unknown:
        break;
    }
    return none;
}

std::string downCell(const ReportedCone& cone, const WordStyle& style) {
    const std::string cell = markCell(cone.down, style);
    if (!cone.last.cold || cone.last.hour >= hourDown)
        return cell;
    std::string cold = hourWords(cone.last.hour);
    if (cold.starts_with("at "))
        cold = cold.substr(3);
    return (cell == none ? "" : cell + "\n") + "cold: " + cold;
}

/// "7 min, 9 under"; "none".
std::string longestOut(const HoldStatistics& hold, const HoldBand& band, const WordStyle& style) {
    const auto longest =
        std::ranges::max_element(hold.excursions, {}, [](const Excursion& e) { return e.end - e.start; });
    if (longest == hold.excursions.end())
        return "none";
    const auto off = longest->peak - band.target;
    const bool over = off.celsius() > 0;
    const auto size = over ? off : -off;
    return durationWords(longest->end - longest->start) + ", " +
           figure(style.scale == TemperatureScale::fahrenheit ? size.fahrenheit() : size.celsius(), 0) +
           (over ? " over" : " under");
}

std::optional<Rate> halfWidth(const Drift& drift) {
    if (!drift.interval90)
        return std::nullopt;
    return Rate::fromCelsiusPerHour(
        (drift.interval90->high.celsiusPerHour() - drift.interval90->low.celsiusPerHour()) / 2);
}

std::string degreesCell(TemperatureDifference difference, const WordStyle& style, int decimals) {
    return figure(style.scale == TemperatureScale::fahrenheit ? difference.fahrenheit()
                                                              : difference.celsius(),
                  decimals);
}

std::vector<std::string> holdCells(const ReportedHold& hold, const ReportContent& content) {
    const auto& style = content.style;
    const bool growth = hold.found && content.crystal && hold.found->start > content.crystal->began;
    const std::string name = (growth ? "growth " : "") + degreesFigure(hold.band.target, style) + " ± " +
                             differenceWords(hold.band.halfWidth, style);
    if (!hold.found)
        return {name, "not held", none, none, none, none, none};
    const auto& found = *hold.found;
    return {name,
            durationWords(found.end - found.start),
            degreesFigure(found.mean, style, 1),
            degreesCell(found.sd, style, 1),
            percentWords(found.insideShare),
            longestOut(found, hold.band, style),
            driftWords(found.drift.rate, halfWidth(found.drift), style)};
}

std::vector<std::string> ringCells(std::size_t number, const ReportedRing& ring, const WordStyle& style) {
    const auto& [low, high] = ring.ring;
    const std::string drawn = ring.drawn.outer_mm > 0 ? figure(ring.drawn.inner_mm, 1) + " to " +
                                                            figure(ring.drawn.outer_mm, 1) + " mm"
                                                      : none;
    return {std::to_string(number),
            clockWords(low.start, style),
            temperatureWords(low.mean, style),
            minutesWords(low.length),
            clockWords(high.start, style),
            temperatureWords(high.mean, style),
            minutesWords(high.length),
            drawn};
}

std::string crystalsWords(Crystals crystals) {
    switch (crystals) {
    case Crystals::none:
        return "none";
    case Crystals::few:
        return "few";
    case Crystals::many:
        return "many";
    case Crystals::covered:
        return "covered";
    }
    return {};
}

std::vector<std::string> wareCells(const ReportedPiece& ware) {
    const auto& piece = ware.piece;
    const std::string set = std::string(piece.catcher ? "catcher" : "") +
                            (piece.catcher && piece.sagger ? ", " : "") + (piece.sagger ? "sagger" : "");
    std::vector<std::string> cells{piece.name, piece.glaze, piece.shelf, set.empty() ? none : set};
    if (!ware.outcome)
        return cells.insert(cells.end(), {none, none, none, none, ""}), cells;
    const auto& out = *ware.outcome;
    const std::string gap = out.faults.empty() || out.note.empty() ? "" : "; ";
    cells.insert(cells.end(), {out.crystals ? crystalsWords(*out.crystals) : none,
                               out.largest_mm ? figure(*out.largest_mm, 0) + " mm" : none,
                               out.rings ? std::to_string(*out.rings) : none,
                               out.grade.empty() ? none : out.grade, out.faults + gap + out.note});
    return cells;
}

} // namespace

ReportTable coneTable(const ReportedPack& pack, const WordStyle& style) {
    ReportTable table{{"", "first lean", "3 o’clock", "down"}, {}, {}};
    for (const auto& cone : pack.cones) {
        table.rows.push_back(
            {cone.cone, markCell(cone.firstLean, style), markCell(cone.three, style), downCell(cone, style)});
        table.stressed.push_back(cone.waitedFor);
    }
    return table;
}

ReportTable holdTable(const ReportContent& content) {
    const std::string unit = unitWords(content.style);
    ReportTable table{
        {"hold", "time", "mean " + unit, "sd", "in band", "longest out, " + unit, "drift, 90 %"}, {}, {}};
    for (const auto& hold : content.holds)
        table.rows.push_back(holdCells(hold, content));
    table.stressed.assign(table.rows.size(), false);
    return table;
}

ReportTable ringTable(const ReportedRings& rings, const WordStyle& style) {
    ReportTable table{
        {"ring", "down at", "low", "dwell", "back at", "high", "dwell", "from the centre"}, {}, {}};
    for (std::size_t i = 0; i < rings.rings.size(); ++i)
        table.rows.push_back(ringCells(i + 1, rings.rings[i], style));
    table.stressed.assign(table.rows.size(), false);
    return table;
}

ReportTable wareTable(const ReportContent& content) {
    ReportTable table{
        {"piece", "glaze", "shelf", "set on", "crystals", "largest", "rings", "grade", "faults, notes"},
        {},
        {}};
    for (const auto& ware : content.ware)
        table.rows.push_back(wareCells(ware));
    table.stressed.assign(table.rows.size(), false);
    return table;
}

} // namespace ringhold
