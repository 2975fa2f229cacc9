#include "core/learn/sag_visibility.h"

#include "core/learn/distributions.h"

#include <cmath>
#include <vector>

namespace ringhold {

namespace {

const double priorMean = std::log(6.0);
const double priorSd = std::log(4.0) / 1.645;
constexpr double slips = 0.05;
constexpr double widths[] = {0.15, 0.25, 0.4, 0.6}; ///< of the probit, in logarithms of depth
constexpr int steps = 400;

/// Of the logarithm of the threshold, for each width of the probit.
struct Posterior {
    std::vector<double> lnThreshold;
    std::vector<double> byWidth[std::size(widths)];
    std::vector<double> weight; ///< over all widths; sums to 1
};

double likelihood(const SagAnswer& answer, double lnThreshold, double width) {
    const double shows = normalShareBelow((std::log(answer.depth_C) - lnThreshold) / width);
    const double seen = slips / 2 + (1 - slips) * shows;
    return answer.seen ? seen : 1 - seen;
}

Posterior posteriorOf(std::span<const SagAnswer> answers) {
    Posterior posterior;
    double sum = 0;
    for (int i = 0; i <= steps; ++i) {
        const double z = -4 + 8.0 * i / steps;
        const double lnThreshold = priorMean + priorSd * z;
        posterior.lnThreshold.push_back(lnThreshold);
        posterior.weight.push_back(0);
        for (std::size_t w = 0; w < std::size(widths); ++w) {
            double weight = std::exp(-0.5 * z * z);
            for (const auto& answer : answers)
                weight *= answer.depth_C > 0 ? likelihood(answer, lnThreshold, widths[w]) : 1;
            posterior.byWidth[w].push_back(weight);
            posterior.weight.back() += weight;
            sum += weight;
        }
    }
    for (double& weight : posterior.weight)
        weight /= sum;
    for (auto& weights : posterior.byWidth)
        for (double& weight : weights)
            weight /= sum;
    return posterior;
}

double quantile(const Posterior& posterior, double share) {
    double below = 0;
    for (std::size_t i = 0; i < posterior.weight.size(); ++i) {
        below += posterior.weight[i];
        if (below >= share)
            return std::exp(posterior.lnThreshold[i]);
    }
    return std::exp(posterior.lnThreshold.back());
}

/// How often an excursion of that depth would show, all thresholds and widths considered.
double showing(const Posterior& posterior, double depth_C) {
    double share = 0;
    for (std::size_t w = 0; w < std::size(widths); ++w)
        for (std::size_t i = 0; i < posterior.lnThreshold.size(); ++i)
            share += posterior.byWidth[w][i] *
                     normalShareBelow((std::log(depth_C) - posterior.lnThreshold[i]) / widths[w]);
    return share;
}

/// The depth that shows no more than one time in five, by halving.
double seldomShown(const Posterior& posterior) {
    constexpr double share = 0.2;
    double low = 0.01, high = 1000;
    for (int i = 0; i < 60; ++i) {
        const double middle = std::sqrt(low * high);
        (showing(posterior, middle) < share ? low : high) = middle;
    }
    return low;
}

} // namespace

VisibleBand visibleBand(std::span<const SagAnswer> answers) {
    const Posterior posterior = posteriorOf(answers);
    VisibleBand band;
    for (const auto& answer : answers)
        band.answers += answer.depth_C > 0;
    band.likely_C = quantile(posterior, 0.5);
    band.likely90_C = {quantile(posterior, 0.05), quantile(posterior, 0.95)};
    band.offered_C = seldomShown(posterior);
    constexpr double muchNarrower = 0.5;
    const double width = std::log(band.likely90_C.high / band.likely90_C.low);
    band.told = width < muchNarrower * 2 * 1.645 * priorSd;
    return band;
}

} // namespace ringhold
