#include "core/learn/cause_curve.h"
#include "core/learn/cause_lesson.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace ringhold {

namespace {

constexpr std::size_t fewestFirings = 3;
constexpr int fewestFreedom = 3;

struct Cell {
    double sum = 0;
    int pieces = 0;
};

/// Outcomes by firing and position, of the firings in which at least two positions were used.
struct Cells {
    std::map<FiringId, std::map<std::string, Cell>> firings;
    std::vector<std::string> positions;
    std::map<std::string, int> piecesAt;
    int pieces = 0;
    int cells = 0;
};

Cells cellsOf(std::span<const PieceResult> pieces, Judged judged) {
    Cells cells;
    for (const auto& piece : pieces)
        if (const auto outcome = judgedBy(piece, judged); outcome && !piece.position.empty()) {
            auto& cell = cells.firings[piece.firing][piece.position];
            cell.sum += *outcome;
            ++cell.pieces;
        }
    std::erase_if(cells.firings, [](const auto& firing) { return firing.second.size() < 2; });
    for (const auto& [firing, positions] : cells.firings)
        for (const auto& [position, cell] : positions) {
            cells.piecesAt[position] += cell.pieces;
            cells.pieces += cell.pieces;
            ++cells.cells;
        }
    for (const auto& [position, count] : cells.piecesAt)
        cells.positions.push_back(position);
    return cells;
}

/// Ones and zeros for the positions but the last, of which the effect is minus the sum of the others'.
RegressionRow positionColumns(const Cells& cells, const std::string& position) {
    RegressionRow row(cells.positions.size() - 1, position == cells.positions.back() ? -1.0 : 0.0);
    const auto at = std::ranges::find(cells.positions, position) - cells.positions.begin();
    if (position != cells.positions.back())
        row[static_cast<std::size_t>(at)] = 1;
    return row;
}

struct CellRows {
    std::vector<RegressionRow> firingsOnly;
    std::vector<RegressionRow> both;
    std::vector<double> outcomes;
};

CellRows rowsOf(const Cells& cells) {
    CellRows rows;
    std::size_t index = 0;
    for (const auto& [firing, positions] : cells.firings) {
        for (const auto& [position, cell] : positions) {
            RegressionRow row(cells.firings.size(), 0.0);
            row[index] = 1;
            rows.firingsOnly.push_back(row);
            const auto columns = positionColumns(cells, position);
            row.insert(row.end(), columns.begin(), columns.end());
            rows.both.push_back(row);
            rows.outcomes.push_back(cell.sum / cell.pieces);
        }
        ++index;
    }
    return rows;
}

RegressionRow withoutFirings(const Cells& cells, const RegressionRow& columns) {
    RegressionRow row(cells.firings.size(), 0.0);
    row.insert(row.end(), columns.begin(), columns.end());
    return row;
}

Claim claimOf(const Cells& cells, const LinearFit& fit, const std::vector<PositionEffect>& effects) {
    RegressionRow difference = positionColumns(cells, effects.front().position);
    const RegressionRow worst = positionColumns(cells, effects.back().position);
    for (std::size_t i = 0; i < difference.size(); ++i)
        difference[i] -= worst[i];
    const auto [change, sd] = fit.at(withoutFirings(cells, difference));
    const double half = fit.halfWidthFactor() * sd;
    Claim claim;
    claim.trend = Trend::differs;
    claim.change = change;
    claim.change90 = {change - half, change + half};
    return claim;
}

} // namespace

Lesson positionLesson(std::span<const PieceResult> pieces, Judged judged) {
    const Cells cells = cellsOf(pieces, judged);
    Lesson lesson{.cause = Cause::position};
    lesson.pieces = cells.pieces;
    lesson.firings = static_cast<int>(cells.firings.size());
    lesson.shortfall = Shortfall::tooFewFirings;
    const int freedom = cells.cells - lesson.firings - static_cast<int>(cells.positions.size()) + 1;
    if (cells.firings.size() < fewestFirings || freedom < fewestFreedom)
        return lesson;
    const CellRows rows = rowsOf(cells);
    const auto both = fitLinear(rows.both, rows.outcomes);
    const auto firingsOnly = fitLinear(rows.firingsOnly, rows.outcomes);
    if (!both || !firingsOnly) // shelves that were never in one firing cannot be compared
        return lesson;
    lesson.chance = chanceOf(*both, *firingsOnly);
    for (const auto& position : cells.positions)
        lesson.positions.push_back({position,
                                    both->at(withoutFirings(cells, positionColumns(cells, position))),
                                    cells.piecesAt.at(position)});
    std::ranges::sort(lesson.positions, std::greater{},
                      [](const PositionEffect& effect) { return effect.difference.value; });
    lesson.claim = claimOf(cells, *both, lesson.positions);
    const double pieceSd = pieceSdOf(pieces, judged);
    const bool small = std::ranges::all_of(lesson.positions, [&](const PositionEffect& effect) {
        return std::abs(effect.difference.value) + both->halfWidthFactor() * effect.difference.sd <= pieceSd;
    });
    lesson.verdict = small ? Verdict::nothingSeen : Verdict::notEnough;
    lesson.shortfall = small ? std::nullopt : std::optional(Shortfall::unclear);
    return lesson;
}

} // namespace ringhold
