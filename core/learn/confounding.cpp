#include "core/learn/confounding.h"

#include "core/learn/cause_curve.h"
#include "core/learn/firing_means.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace ringhold {

namespace {

constexpr double worthSaying = 0.5;
constexpr std::size_t fewestFirings = 4;
constexpr double surely = 0.05;

/// Two causes and the outcome of the same firings.
struct Pairs {
    std::vector<double> cause;
    std::vector<double> other;
    std::vector<double> outcome;
};

Pairs pairsOf(std::span<const PieceResult> pieces, Cause cause, Cause other, Judged judged) {
    const auto first = firingMeansOf(pieces, cause, judged);
    const auto second = firingMeansOf(pieces, other, judged);
    Pairs pairs;
    for (const auto& firing : first.firings)
        for (const auto& same : second.firings)
            if (same.firing == firing.firing) {
                pairs.cause.push_back(firing.cause);
                pairs.other.push_back(same.cause);
                pairs.outcome.push_back(firing.outcome);
            }
    return pairs;
}

double meanOf(const std::vector<double>& values) {
    double sum = 0;
    for (const double value : values)
        sum += value;
    return sum / static_cast<double>(values.size());
}

/// The square of the correlation.
double sharedBy(const std::vector<double>& a, const std::vector<double>& b) {
    const double meanA = meanOf(a), meanB = meanOf(b);
    double products = 0, squaresA = 0, squaresB = 0;
    for (std::size_t i = 0; i < a.size(); ++i) {
        products += (a[i] - meanA) * (b[i] - meanB);
        squaresA += (a[i] - meanA) * (a[i] - meanA);
        squaresB += (b[i] - meanB) * (b[i] - meanB);
    }
    return squaresA > 0 && squaresB > 0 ? products * products / (squaresA * squaresB) : 0;
}

std::optional<bool> standsBesides(const Pairs& pairs, Cause cause) {
    CauseData data{.typical = {1.0, 0.0},
                   .cause = pairs.cause,
                   .causeVariance = std::vector<double>(pairs.cause.size()),
                   .outcome = pairs.outcome};
    const double mean = meanOf(pairs.other);
    for (const double other : pairs.other)
        data.constants.push_back({1.0, other - mean});
    const bool parabola = cause != Cause::holdTime && pairs.cause.size() > fewestFirings + 2;
    const auto curve = CauseCurve::fit(data, parabola ? 2 : 1);
    return curve ? std::optional(curve->chance() <= surely) : std::nullopt;
}

std::optional<Confounder> numericConfounder(std::span<const PieceResult> pieces, Cause cause, Cause other,
                                            Judged judged) {
    const Pairs pairs = pairsOf(pieces, cause, other, judged);
    if (pairs.cause.size() < fewestFirings)
        return std::nullopt;
    Confounder confounder{.with = other, .shared = sharedBy(pairs.cause, pairs.other)};
    if (confounder.shared < worthSaying)
        return std::nullopt;
    confounder.standsBesides = standsBesides(pairs, cause);
    return confounder;
}

struct Placed {
    double cause = 0;
    std::string position;
    FiringId firing{};
};

std::vector<Placed> placedOf(std::span<const PieceResult> pieces, Cause cause, Judged judged) {
    std::vector<Placed> placed;
    for (const auto& piece : pieces)
        if (const auto value = causeOf(piece, cause);
            value && judgedBy(piece, judged) && !piece.position.empty())
            placed.push_back({*value, piece.position, piece.firing});
    return placed;
}

void lessFiringMeans(std::vector<Placed>& placed) {
    std::map<FiringId, std::vector<double>> values;
    for (const auto& piece : placed)
        values[piece.firing].push_back(piece.cause);
    for (auto& piece : placed)
        piece.cause -= meanOf(values[piece.firing]);
}

/// The share of the variance between positions, less what so many positions have by chance.
double sharedWithPositions(const std::vector<Placed>& placed) {
    std::map<std::string, std::vector<double>> byPosition;
    std::vector<double> all;
    for (const auto& piece : placed) {
        byPosition[piece.position].push_back(piece.cause);
        all.push_back(piece.cause);
    }
    if (byPosition.size() < 2 || all.size() <= byPosition.size())
        return 0;
    const double mean = meanOf(all);
    double whole = 0, within = 0;
    for (const double value : all)
        whole += (value - mean) * (value - mean);
    for (const auto& [position, values] : byPosition)
        for (const double value : values)
            within += (value - meanOf(values)) * (value - meanOf(values));
    const auto count = static_cast<double>(all.size());
    const auto groups = static_cast<double>(byPosition.size());
    return whole > 0 ? std::max(0.0, 1 - within / whole * (count - 1) / (count - groups)) : 0;
}

/// The one position of them all, or nothing.
template <class Wanted>
std::string onlyPosition(const std::vector<Placed>& placed, const Wanted& wanted) {
    std::string only;
    for (const auto& piece : placed) {
        if (!wanted(piece.cause))
            continue;
        if (!only.empty() && only != piece.position)
            return {};
        only = piece.position;
    }
    return only;
}

void nameHalves(Confounder& confounder, const std::vector<Placed>& placed) {
    std::vector<double> values;
    for (const auto& piece : placed)
        values.push_back(piece.cause);
    std::ranges::sort(values);
    const double middle = (values[(values.size() - 1) / 2] + values[values.size() / 2]) / 2;
    confounder.upperHalfOn = onlyPosition(placed, [middle](double value) { return value > middle; });
    confounder.lowerHalfOn = onlyPosition(placed, [middle](double value) { return value < middle; });
}

std::optional<Confounder> positionConfounder(std::span<const PieceResult> pieces, Cause cause,
                                             Judged judged) {
    auto placed = placedOf(pieces, cause, judged);
    if (cause == Cause::application)
        lessFiringMeans(placed);
    Confounder confounder{.with = Cause::position, .shared = sharedWithPositions(placed)};
    if (confounder.shared < worthSaying)
        return std::nullopt;
    nameHalves(confounder, placed);
    return confounder;
}

} // namespace

std::vector<Confounder> confoundersOf(std::span<const PieceResult> pieces, Cause cause, Judged judged) {
    std::vector<Confounder> found;
    const auto add = [&found](std::optional<Confounder> confounder) {
        if (confounder)
            found.push_back(std::move(*confounder));
    };
    if (isOfFiring(cause))
        for (const Cause other : {Cause::growthHold, Cause::holdTime, Cause::peak, Cause::application})
            if (other != cause)
                add(numericConfounder(pieces, cause, other, judged));
    if (cause != Cause::position) {
        add(positionConfounder(pieces, cause, judged));
    } else if (auto confounder = positionConfounder(pieces, Cause::application, judged)) {
        confounder->with = Cause::application;
        add(confounder);
    }
    std::ranges::stable_sort(found, std::greater{}, &Confounder::shared);
    return found;
}

} // namespace ringhold
