#include "core/learn/firing_means.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>

namespace ringhold {

namespace {

struct Gathered {
    FiringMean mean;
    std::vector<double> outcomes;
};

const std::optional<CorrectedTemperature>& temperatureOf(const PieceResult& piece, Cause cause) {
    static const std::optional<CorrectedTemperature> none;
    return cause == Cause::growthHold ? piece.growthHold : cause == Cause::peak ? piece.peak : none;
}

double squaresAbout(const std::vector<double>& values, double mean) {
    double squares = 0;
    for (const double value : values)
        squares += (value - mean) * (value - mean);
    return squares;
}

double meanOf(const std::vector<double>& values) {
    return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

} // namespace

FiringMeans firingMeansOf(std::span<const PieceResult> pieces, Cause cause, Judged judged) {
    std::map<FiringId, Gathered> byFiring;
    FiringMeans means;
    for (const auto& piece : pieces) {
        const auto x = causeOf(piece, cause);
        const auto y = judgedBy(piece, judged);
        if (!x || !y)
            continue;
        auto& [mean, outcomes] = byFiring[piece.firing];
        outcomes.push_back(*y);
        ++means.pieces;
        mean.cause += *x;
        if (const auto& temperature = temperatureOf(piece, cause)) {
            mean.ownSd = temperature->ownSd_C;
            mean.seriesSd = temperature->seriesSd_C;
            mean.series = temperature->series;
        }
    }
    for (auto& [firing, gathered] : byFiring) {
        auto& mean = gathered.mean;
        mean.firing = firing;
        mean.pieces = static_cast<int>(gathered.outcomes.size());
        mean.cause /= mean.pieces;
        mean.outcome = meanOf(gathered.outcomes);
        means.withinSquares += squaresAbout(gathered.outcomes, mean.outcome);
        means.withinFreedom += mean.pieces - 1;
        means.firings.push_back(mean);
    }
    return means;
}

double pieceSdOf(std::span<const PieceResult> pieces, Judged judged) {
    std::vector<double> all;
    for (const auto& piece : pieces)
        if (const auto outcome = judgedBy(piece, judged))
            all.push_back(*outcome);
    return all.size() < 2 ? 0
                          : std::sqrt(squaresAbout(all, meanOf(all)) / static_cast<double>(all.size() - 1));
}

std::vector<double> weightsOf(const FiringMeans& means, double residualSd) {
    std::vector<double> weights(means.firings.size(), 1.0);
    constexpr int fewestWithin = 4;
    if (means.withinFreedom < fewestWithin || means.withinSquares <= 0)
        return weights;
    const double within = means.withinSquares / means.withinFreedom;
    double oneOverPieces = 0;
    for (const auto& firing : means.firings)
        oneOverPieces += 1.0 / firing.pieces / static_cast<double>(means.firings.size());
    const double between = std::max(0.0, residualSd * residualSd - within * oneOverPieces);
    double sum = 0;
    for (std::size_t i = 0; i < weights.size(); ++i)
        sum += weights[i] = 1 / (between + within / means.firings[i].pieces);
    for (double& weight : weights)
        weight *= static_cast<double>(weights.size()) / sum;
    return weights;
}

} // namespace ringhold
