// What looks at cones tell of the probe's offset and of each cone's own deviation.
#pragma once

#include "core/cones/grid_distribution.h"
#include "core/cones/heat_work_grid.h"
#include "core/cones/look_likelihood.h"
#include "core/cones/offset_prior.h"

#include <vector>

namespace ringhold {

/// A look as inference takes it: the cone by its index in the pack, the hour told, and ln W at that instant
/// for each shift of the grid.
struct LookEvidence {
    std::size_t cone = 0;
    double toldHour = 0;
    std::vector<double> lnWork;
};

/// One pack: which of the grid's cones stand in it, what is believed of its offset, and the looks.
struct PackEvidence {
    OffsetPrior prior;
    std::vector<std::size_t> cones; ///< indices into the HeatWorkGrid
    std::vector<LookEvidence> looks;
};

struct InferenceSettings {
    LookReading reading;
    TemperatureDifference coneSd =
        TemperatureDifference::fromCelsius(2.0); ///< one cone from another of its kind
    double exponentMean = 1.375; ///< of the bending law: the middle of the published 1.25 to 1.5
    double exponentSd = 0.13;
    double commonShare = 0.5; ///< of the prior's variance, that all packs have in common
};

/// The joint posterior, marginal by marginal. Model: the offset of a pack is a part common to all packs and a
/// part of its own; a cone's shift is its pack's offset and its own deviation; the bending exponent is
/// common. Looks at one cone share its deviation, so ten of them are not ten times as sure. The tree is
/// solved exactly on a grid by passing messages (F. R. Kschischang, B. J. Frey, H.-A. Loeliger, IEEE Trans.
/// Information Theory 47, 2001, 498); the exponent by five nodes.
struct OffsetPosterior {
    struct ExponentNode {
        double exponent;
        double weight; ///< posterior; the weights sum to 1
    };
    struct PackPosterior {
        GridDistribution offset;
        std::vector<GridDistribution> shift;                        ///< by cone of the pack
        std::vector<std::vector<GridDistribution>> shiftByExponent; ///< by cone, by exponent node
        std::vector<double> wrongLook; ///< by look: the probability that it is a wrong one
    };
    std::vector<ExponentNode> exponents;
    std::vector<PackPosterior> packs;
};

/// The grid gives shifts, and each cone's own uncertainty through gaps; each cone's sd is the settings' with
/// that of the law (what of it is its own, see coneDeviationSd) and of the gaps in quadrature.
OffsetPosterior inferOffset(const HeatWorkGrid& grid, const std::vector<PackEvidence>& packs,
                            const InferenceSettings& settings = {});

/// The sd of one cone's own deviation: from cone to cone, and the law's error.
TemperatureDifference coneDeviationSd(const Cone& cone, const InferenceSettings& settings);

} // namespace ringhold
