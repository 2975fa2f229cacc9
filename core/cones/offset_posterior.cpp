#include "core/cones/offset_posterior.h"

#include "core/cones/bending.h"

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

constexpr double step_C = 0.5;

/// The even grid on which all marginals are told: that of the shifts, four times as fine.
struct FineGrid {
    double first_C;
    std::size_t count;

    explicit FineGrid(const ShiftGrid& shifts)
        : first_C(shifts.at_C(0)),
          count(static_cast<std::size_t>((shifts.at_C(shifts.size() - 1) - first_C) / step_C + 0.5) + 1) {}

    GridDistribution flat() const { return GridDistribution::flat(first_C, step_C, count); }
    GridDistribution normal(double mean_C, double sd_C) const {
        return GridDistribution::normal(first_C, step_C, count, mean_C, std::max(sd_C, 0.6 * step_C));
    }
};

/// ln W between the nodes of the coarse grid by straight line; it is nearly straight in the shift.
double interpolated(const std::vector<double>& lnWork, double at) {
    const auto node = std::min(static_cast<std::size_t>(at), lnWork.size() - 2);
    return std::lerp(lnWork[node], lnWork[node + 1], at - static_cast<double>(node));
}

GridDistribution likelihoodOf(const LookEvidence& look, const FineGrid& fine, double shiftStep_C,
                              const BendingLaw& bending, const LookReading& reading) {
    GridDistribution likelihood = fine.flat();
    for (std::size_t i = 0; i < fine.count; ++i) {
        const double lnWork = interpolated(look.lnWork, static_cast<double>(i) * step_C / shiftStep_C);
        likelihood[i] =
            lookProbability(look.toldHour, bending.hourAt(std::exp(std::min(lnWork, 1.0))), reading);
    }
    return likelihood;
}

/// Spread of one pack's offset: what it shares with the others, and its own.
struct Spread {
    double common_C = 0;
    std::vector<double> own_C; ///< by pack
};

Spread spreadOf(const std::vector<PackEvidence>& packs, double commonShare) {
    double smallest = 1e9;
    for (const auto& pack : packs)
        smallest = std::min(smallest, pack.prior.sd.celsius());
    Spread spread;
    const double commonVariance = packs.size() > 1 ? commonShare * smallest * smallest : 0.0;
    spread.common_C = std::sqrt(commonVariance);
    for (const auto& pack : packs)
        spread.own_C.push_back(std::sqrt(pack.prior.sd.celsius() * pack.prior.sd.celsius() - commonVariance));
    return spread;
}

/// Everything at one value of the bending exponent. All distributions live on the fine grid; those of a
/// pack's offset are taken about its own prior mean by the normal factors alone, so packs may have different
/// means.
class AtExponent {
  public:
    AtExponent(const HeatWorkGrid& grid, const std::vector<PackEvidence>& packs,
               const InferenceSettings& settings, double exponent)
        : m_grid(grid), m_packs(packs), m_settings(settings), m_fine(grid.shifts()),
          m_spread(spreadOf(packs, settings.commonShare)) {
        const BendingLaw bending(exponent);
        for (const auto& pack : packs) {
            std::vector<GridDistribution> likelihoods(pack.cones.size(), m_fine.flat());
            for (const auto& look : pack.looks)
                likelihoods[look.cone] *=
                    likelihoodOf(look, m_fine, grid.shifts().step_C(), bending, settings.reading);
            m_cones.push_back(std::move(likelihoods));
        }
        passUp();
        passDown();
    }

    double evidence() const { return m_evidence; }
    const GridDistribution& offset(std::size_t pack) const { return m_offset[pack]; }
    const GridDistribution& shift(std::size_t pack, std::size_t cone) const { return m_shift[pack][cone]; }

  private:
    double coneSd_C(std::size_t pack, std::size_t cone) const {
        const std::size_t index = m_packs[pack].cones[cone];
        const double sd_C = coneDeviationSd(*m_grid.cones()[index], m_settings).celsius();
        return std::sqrt(sd_C * sd_C + m_grid.gapVariance_C2(index));
    }

    /// Cones to packs to the common part. The common part is a deviation about 0, told on an even grid of its
    /// own by shifting each pack's message by that pack's mean.
    void passUp() {
        for (std::size_t p = 0; p < m_packs.size(); ++p) {
            std::vector<GridDistribution> messages;
            GridDistribution product = m_fine.flat();
            for (std::size_t c = 0; c < m_cones[p].size(); ++c) {
                messages.push_back(m_cones[p][c].blurred(coneSd_C(p, c)));
                product *= messages.back();
            }
            m_fromCone.push_back(std::move(messages));
            m_packLikelihood.push_back(std::move(product));
        }
    }

    /// For one value of the common part, the evidence of one pack.
    double packEvidence(std::size_t p, double common_C) const {
        const auto own = m_fine.normal(m_packs[p].prior.mean.celsius() + common_C, m_spread.own_C[p]);
        double sum = 0;
        for (std::size_t i = 0; i < own.size(); ++i)
            sum += own[i] * m_packLikelihood[p][i];
        return sum;
    }

    void passDown() {
        const auto commons = commonNodes();
        std::vector<double> weight = commons.second;
        std::vector<std::vector<double>> evidence(m_packs.size());
        for (std::size_t p = 0; p < m_packs.size(); ++p)
            for (std::size_t k = 0; k < commons.first.size(); ++k) {
                evidence[p].push_back(packEvidence(p, commons.first[k]));
                weight[k] *= evidence[p][k];
            }
        m_evidence = 0;
        for (const double w : weight)
            m_evidence += w;
        for (std::size_t p = 0; p < m_packs.size(); ++p)
            marginalsOf(p, commons.first, weight, evidence[p]);
    }

    void marginalsOf(std::size_t p, const std::vector<double>& commons, const std::vector<double>& weight,
                     const std::vector<double>& evidence) {
        // what is believed of this pack's offset from the prior and all other packs
        GridDistribution outside(m_fine.first_C, step_C, std::vector<double>(m_fine.count, 0.0));
        for (std::size_t k = 0; k < commons.size(); ++k)
            if (evidence[k] > 0)
                outside.add(m_fine.normal(m_packs[p].prior.mean.celsius() + commons[k], m_spread.own_C[p]),
                            weight[k] / evidence[k]);
        GridDistribution offset = outside;
        offset *= m_packLikelihood[p];
        offset.normalise();
        m_offset.push_back(std::move(offset));
        std::vector<GridDistribution> shifts;
        for (std::size_t c = 0; c < m_cones[p].size(); ++c) {
            GridDistribution seen = outside;
            for (std::size_t other = 0; other < m_cones[p].size(); ++other)
                if (other != c)
                    seen *= m_fromCone[p][other];
            GridDistribution shift = seen.blurred(coneSd_C(p, c));
            shift *= m_cones[p][c];
            shift.normalise();
            shifts.push_back(std::move(shift));
        }
        m_shift.push_back(std::move(shifts));
    }

    /// Even nodes over four standard deviations of the common part, with their prior weights.
    std::pair<std::vector<double>, std::vector<double>> commonNodes() const {
        if (m_spread.common_C <= 0)
            return {{0.0}, {1.0}};
        constexpr int reach = 12;
        std::vector<double> nodes;
        std::vector<double> weights;
        double total = 0;
        for (int k = -reach; k <= reach; ++k) {
            const double z = 4.0 * k / reach;
            nodes.push_back(z * m_spread.common_C);
            weights.push_back(std::exp(-z * z / 2));
            total += weights.back();
        }
        for (double& weight : weights)
            weight /= total;
        return {nodes, weights};
    }

    const HeatWorkGrid& m_grid;
    const std::vector<PackEvidence>& m_packs;
    const InferenceSettings& m_settings;
    FineGrid m_fine;
    Spread m_spread;
    std::vector<std::vector<GridDistribution>> m_cones;    ///< likelihood of each cone's shift
    std::vector<std::vector<GridDistribution>> m_fromCone; ///< the same, told of the pack's offset
    std::vector<GridDistribution> m_packLikelihood;
    double m_evidence = 1;
    std::vector<GridDistribution> m_offset;
    std::vector<std::vector<GridDistribution>> m_shift;
};

std::vector<OffsetPosterior::ExponentNode> exponentNodes(const InferenceSettings& settings) {
    std::vector<OffsetPosterior::ExponentNode> nodes;
    for (const double z : {-2.0, -1.0, 0.0, 1.0, 2.0})
        nodes.push_back({settings.exponentMean + z * settings.exponentSd, std::exp(-z * z / 2)});
    return nodes;
}

GridDistribution nothing(const HeatWorkGrid& grid) {
    const FineGrid fine(grid.shifts());
    return {fine.first_C, step_C, std::vector<double>(fine.count, 0.0)};
}

OffsetPosterior::PackPosterior emptyPack(const HeatWorkGrid& grid, std::size_t cones) {
    return {nothing(grid),
            std::vector<GridDistribution>(cones, nothing(grid)),
            std::vector<std::vector<GridDistribution>>(cones),
            {}};
}

/// The probability that a look is wrong, by where the rest believes the cone's shift to be.
double wrongness(const LookEvidence& look, const OffsetPosterior& posterior,
                 const OffsetPosterior::PackPosterior& pack, const HeatWorkGrid& grid,
                 const LookReading& reading) {
    const FineGrid fine(grid.shifts());
    double wrong = 0;
    for (std::size_t e = 0; e < posterior.exponents.size(); ++e) {
        const BendingLaw bending(posterior.exponents[e].exponent);
        const auto& shift = pack.shiftByExponent[look.cone][e];
        const auto mixed = likelihoodOf(look, fine, grid.shifts().step_C(), bending, reading);
        const auto careful = likelihoodOf(look, fine, grid.shifts().step_C(), bending,
                                          {.hourSd = reading.hourSd, .wrongShare = 0});
        for (std::size_t i = 0; i < fine.count; ++i)
            if (mixed[i] > 0)
                wrong += posterior.exponents[e].weight * shift[i] *
                         (1 - (1 - reading.wrongShare) * careful[i] / mixed[i]);
    }
    return wrong;
}

} // namespace

TemperatureDifference coneDeviationSd(const Cone& cone, const InferenceSettings& settings) {
    // Most of the law's error is shared by neighbouring cones (their residuals have the same signs) and so is
    // part of the offset; a third of its variance is left to the single cone.
    const double law_C = cone.modelSd().celsius();
    return TemperatureDifference::fromCelsius(std::hypot(settings.coneSd.celsius(), law_C / std::sqrt(3.0)));
}

OffsetPosterior inferOffset(const HeatWorkGrid& grid, const std::vector<PackEvidence>& packs,
                            const InferenceSettings& settings) {
    OffsetPosterior posterior{exponentNodes(settings), {}};
    std::vector<AtExponent> solved;
    double total = 0;
    for (auto& node : posterior.exponents) {
        solved.emplace_back(grid, packs, settings, node.exponent);
        node.weight *= solved.back().evidence();
        total += node.weight;
    }
    for (auto& node : posterior.exponents)
        node.weight /= total;
    for (std::size_t p = 0; p < packs.size(); ++p) {
        auto& pack = posterior.packs.emplace_back(emptyPack(grid, packs[p].cones.size()));
        for (std::size_t e = 0; e < solved.size(); ++e) {
            pack.offset.add(solved[e].offset(p), posterior.exponents[e].weight);
            for (std::size_t c = 0; c < packs[p].cones.size(); ++c) {
                pack.shift[c].add(solved[e].shift(p, c), posterior.exponents[e].weight);
                pack.shiftByExponent[c].push_back(solved[e].shift(p, c));
            }
        }
        for (const auto& look : packs[p].looks)
            pack.wrongLook.push_back(wrongness(look, posterior, pack, grid, settings.reading));
    }
    return posterior;
}

} // namespace ringhold
