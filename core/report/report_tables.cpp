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

std::string faultWords(WareFault fault) {
    switch (fault) {
    case WareFault::crawled:
        return "crawled";
    case WareFault::pinholes:
        return "pinholes";
    case WareFault::noCrystals:
        return "no crystals";
    case WareFault::tooManySeeds:
        return "too many seeds";
    case WareFault::dunting:
        return "dunting";
    case WareFault::stuck:
        return "stuck";
    case WareFault::dull:
        return "dull";
    }
    return {};
}

std::string sizeCell(const Outcome& out) {
    if (out.largest_mm && out.typical_mm)
        return figure(*out.largest_mm, 0) + " (" + figure(*out.typical_mm, 0) + ") mm";
    if (out.typical_mm)
        return "(" + figure(*out.typical_mm, 0) + ") mm";
    return out.largest_mm ? figure(*out.largest_mm, 0) + " mm" : none;
}

std::string joined(const std::vector<std::string>& parts) {
    std::string text;
    for (const auto& part : parts)
        if (!part.empty())
            text += (text.empty() ? "" : "; ") + part;
    return text;
}

/// Faults first, then what else was seen.
std::string seenCell(const Outcome& out) {
    std::vector<std::string> parts;
    for (const auto fault : out.knownFaults)
        parts.push_back(faultWords(fault));
    parts.push_back(out.faults);
    if (!out.crystalColour.empty())
        parts.push_back(out.crystalColour + (out.groundColour.empty() ? "" : " on " + out.groundColour));
    if (!out.runOff.empty() || out.runOff_mm)
        parts.push_back("ran " + out.runOff + (out.runOff.empty() || !out.runOff_mm ? "" : ", ") +
                        (out.runOff_mm ? figure(*out.runOff_mm, 0) + " mm" : ""));
    if (out.catcherClean)
        parts.push_back(*out.catcherClean ? "catcher clean" : "catcher stuck");
    parts.push_back(out.note);
    return joined(parts);
}

constexpr const char* meterWords = "the meter’s stands";

std::string sourceWords(EnergySource source) {
    switch (source) {
    case EnergySource::meterStands:
        return meterWords;
    case EnergySource::voltsAndAmps:
        return "line volts and amps";
    case EnergySource::ratedVoltsAndAmps:
        return "line amps at the rated volts";
    case EnergySource::dutyAndRatedPower:
        return "duty and rated power";
    }
    return {};
}

std::string amountWords(const KnownEnergy& known) {
    const double error_kWh = known.energy.kilowattHours() * known.relativeError();
    return energyWords(known.energy) + " ± " + figure(error_kWh, error_kWh < 1 ? 1 : 0);
}

std::vector<std::string> useCells(const std::string& what, const std::string& used, const std::string& by,
                                  std::optional<double> cost, std::size_t pieces) {
    return {what, used, by, cost ? figure(*cost, 2) : none,
            cost && pieces > 0 ? figure(*cost / static_cast<double>(pieces), 2) : none};
}

std::vector<std::string> wareCells(const ReportedPiece& ware) {
    const auto& piece = ware.piece;
    const std::string set = std::string(piece.catcher ? "catcher" : "") +
                            (piece.catcher && piece.sagger ? ", " : "") + (piece.sagger ? "sagger" : "");
    std::vector<std::string> cells{piece.name, piece.glaze, piece.shelf, set.empty() ? none : set};
    if (!ware.outcome)
        return cells.insert(cells.end(), {none, none, none, none, ""}), cells;
    const auto& out = *ware.outcome;
    cells.insert(cells.end(), {out.crystals ? crystalsWords(*out.crystals) : none, sizeCell(out),
                               out.rings ? std::to_string(*out.rings) : none,
                               out.grade.empty() ? none : out.grade, seenCell(out)});
    return cells;
}

const std::string noticeLevel = "notice"; // as the book has it

std::vector<std::string> alarmCells(const AlarmLine& alarm, Instant raised, const WordStyle& style) {
    std::string seen = "nobody";
    if (alarm.acknowledged)
        seen = clockWords(alarm.acknowledged->at, style) +
               (alarm.acknowledged->by.empty() ? "" : " by " + alarm.acknowledged->by);
    return {alarmTitle(alarm), alarm.level, clockWords(raised, style),
            alarm.ended ? clockWords(*alarm.ended, style) : none, seen};
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
    ReportTable table{{"piece", "glaze", "shelf", "set on", "crystals", "largest (typical)", "rings", "grade",
                       "faults, notes"},
                      {},
                      {}};
    for (const auto& ware : content.ware)
        table.rows.push_back(wareCells(ware));
    table.stressed.assign(table.rows.size(), false);
    return table;
}

ReportTable alarmTable(const ReportContent& content) {
    ReportTable table{{"alarm", "level", "raised", "over", "acknowledged"}, {}, {}};
    for (const auto& line : content.log) {
        const auto* alarm = std::get_if<AlarmLine>(&line.what);
        if (!alarm || alarm->level == noticeLevel)
            continue;
        table.rows.push_back(alarmCells(*alarm, line.at, content.style));
        table.stressed.push_back(!alarm->acknowledged);
    }
    return table;
}

ReportTable figureTable(const ReportContent& content) {
    ReportTable table{{"", "used", "known by", "cost", "a piece"}, {}, {}};
    const std::size_t pieces = content.ware.size();
    for (const auto& [known, cost] : content.energies)
        table.rows.push_back(
            useCells("electricity", amountWords(known), sourceWords(known.source), cost, pieces));
    if (const auto& gas = content.gas)
        table.rows.push_back(useCells("gas", figure(gas->used_m3, 1) + " m³", meterWords, gas->cost, pieces));
    table.stressed.assign(table.rows.size(), false);
    return table;
}

std::string photoWords(const ReportedPiece& piece) {
    std::string words = piece.piece.name;
    if (piece.outcome && piece.outcome->largest_mm)
        words += ", " + figure(*piece.outcome->largest_mm, 0) + " mm";
    if (piece.outcome && !piece.outcome->grade.empty())
        words += ", " + piece.outcome->grade;
    return words;
}

} // namespace ringhold
