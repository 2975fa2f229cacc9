#include "core/learn/cause_lesson.h"

#include "core/learn/cause_curve.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

namespace ringhold {

namespace {

constexpr std::size_t fewestFirings = 4;
constexpr std::size_t fewestForParabola = 6;
constexpr int fewestValuesForParabola = 4;
constexpr std::size_t fewestFiringsWithin = 2;
constexpr int fewestFreedom = 3;

Lesson tooLittle(Lesson lesson, Shortfall shortfall) {
    lesson.verdict = Verdict::notEnough;
    lesson.shortfall = shortfall;
    return lesson;
}

/// Closer together than this, values count as one.
double alike(Cause cause, double value) {
    switch (cause) {
    case Cause::growthHold:
    case Cause::peak:
        return 2; // °C
    case Cause::holdTime:
        return 0.1; // h
    default:
        return 0.02 * std::abs(value);
    }
}

int distinctValues(std::vector<double> values, Cause cause) {
    std::ranges::sort(values);
    int distinct = values.empty() ? 0 : 1;
    double last = values.empty() ? 0 : values.front();
    for (const double value : values)
        if (value - last > alike(cause, value)) {
            ++distinct;
            last = value;
        }
    return distinct;
}

int degreeFor(Cause cause, std::size_t count, int distinct) {
    const bool mayPeak = cause != Cause::holdTime;
    return mayPeak && count >= fewestForParabola && distinct >= fewestValuesForParabola ? 2 : 1;
}

double rootMeanSquare(const FiringMeans& means, double FiringMean::*error) {
    double squares = 0;
    for (const auto& firing : means.firings)
        squares += firing.*error * (firing.*error);
    return std::sqrt(squares / static_cast<double>(means.firings.size()));
}

/// One series shares its error; the errors of several are the firings' own, as seen from the others.
void splitErrors(FiringMeans& means) {
    std::set<std::string> series;
    for (const auto& firing : means.firings)
        series.insert(firing.series);
    if (series.size() < 2)
        return;
    for (auto& firing : means.firings) {
        firing.ownSd = std::hypot(firing.ownSd, firing.seriesSd);
        firing.seriesSd = 0;
    }
}

/// Whatever difference there may be is less than pieces differ anyway.
bool showsNothing(const CauseCurve& curve, double meanOutcome, double pieceSd) {
    return std::ranges::all_of(curve.values(), [&](const CurveValue& value) {
        return value.high - meanOutcome <= pieceSd && meanOutcome - value.low <= pieceSd;
    });
}

double meanOf(const std::vector<double>& values) {
    double sum = 0;
    for (const double value : values)
        sum += value;
    return sum / static_cast<double>(values.size());
}

Lesson told(Lesson lesson, const CauseCurve& curve, double meanOutcome, double pieceSd) {
    lesson.chance = curve.chance();
    lesson.curve = curve.values();
    lesson.claim = curve.claim();
    if (!showsNothing(curve, meanOutcome, pieceSd))
        return tooLittle(lesson, Shortfall::unclear);
    lesson.verdict = Verdict::nothingSeen;
    return lesson;
}

} // namespace

Lesson firingLesson(std::span<const PieceResult> pieces, Cause cause, Judged judged) {
    FiringMeans means = firingMeansOf(pieces, cause, judged);
    Lesson lesson{.cause = cause};
    lesson.pieces = means.pieces;
    lesson.firings = static_cast<int>(means.firings.size());
    if (means.firings.size() < fewestFirings)
        return tooLittle(lesson, Shortfall::tooFewFirings);
    splitErrors(means);
    lesson.ownSd_C = rootMeanSquare(means, &FiringMean::ownSd);
    lesson.sharedSd_C = rootMeanSquare(means, &FiringMean::seriesSd);
    CauseData data{.constants = std::vector<RegressionRow>(means.firings.size(), {1.0}),
                   .typical = {1.0},
                   .sharedSd = lesson.sharedSd_C};
    std::vector<double> ownSd;
    for (const auto& firing : means.firings) {
        data.cause.push_back(firing.cause);
        data.outcome.push_back(firing.outcome);
        ownSd.push_back(firing.ownSd);
    }
    const int distinct = distinctValues(data.cause, cause);
    if (distinct < 2)
        return tooLittle(lesson, Shortfall::allAlike);
    if (!calibrate(data.cause, data.causeVariance, ownSd))
        return tooLittle(lesson, Shortfall::temperaturesUnsure);
    const int degree = degreeFor(cause, means.firings.size(), distinct);
    if (const auto unweighted = CauseCurve::fit(data, degree))
        data.weights = weightsOf(means, unweighted->residualSd());
    const auto curve = CauseCurve::fit(data, degree);
    if (!curve)
        return tooLittle(lesson, Shortfall::allAlike);
    return told(lesson, *curve, meanOf(data.outcome), pieceSdOf(pieces, judged));
}

Lesson applicationLesson(std::span<const PieceResult> pieces, Judged judged) {
    std::map<FiringId, std::vector<const PieceResult*>> byFiring;
    for (const auto& piece : pieces)
        if (piece.application && judgedBy(piece, judged))
            byFiring[piece.firing].push_back(&piece);
    std::erase_if(byFiring, [](const auto& firing) { return firing.second.size() < 2; });
    Lesson lesson{.cause = Cause::application};
    lesson.firings = static_cast<int>(byFiring.size());
    CauseData data;
    data.typical.assign(byFiring.size(),
                        1.0 / static_cast<double>(std::max<std::size_t>(byFiring.size(), 1)));
    std::size_t index = 0;
    for (const auto& [firing, members] : byFiring) {
        for (const auto* piece : members) {
            data.constants.emplace_back(byFiring.size(), 0.0)[index] = 1;
            data.cause.push_back(*piece->application);
            data.causeVariance.push_back(0);
            data.outcome.push_back(*judgedBy(*piece, judged));
        }
        ++index;
    }
    lesson.pieces = static_cast<int>(data.cause.size());
    if (byFiring.size() < fewestFiringsWithin || lesson.pieces - lesson.firings - 1 < fewestFreedom)
        return tooLittle(lesson, Shortfall::tooFewFirings);
    const int distinct = distinctValues(data.cause, Cause::application);
    const auto spare = static_cast<std::size_t>(lesson.pieces - lesson.firings);
    const auto curve = CauseCurve::fit(data, degreeFor(Cause::application, spare, distinct));
    if (distinct < 2 || !curve)
        return tooLittle(lesson, Shortfall::allAlike);
    return told(lesson, *curve, meanOf(data.outcome), pieceSdOf(pieces, judged));
}

} // namespace ringhold
