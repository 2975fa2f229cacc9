#include "core/plan/plan_kiln.h"

#include <cmath>

namespace ringhold {

namespace {

bool usable(double figure) {
    return std::isfinite(figure) && figure > 0;
}

} // namespace

KilnModel kilnModelFor(std::optional<Power> ratedPower, std::optional<Volts> ratedVolts) {
    KilnModel model;
    KilnConstants& kiln = model.constants;
    if (ratedVolts && usable(ratedVolts->volts))
        kiln.ratedVolts = *ratedVolts;
    if (!ratedPower || !usable(ratedPower->watts))
        return model;
    const double factor = ratedPower->watts / kiln.fullPower.watts;
    for (double* extensive : {&kiln.chamber_J_per_K, &kiln.brick_J_per_K, &kiln.chamberToBrick_W_per_K,
                              &kiln.brickLoss_W_per_K, &kiln.chamberLoss_W_per_K, &kiln.radiatingArea_m2})
        *extensive *= factor;
    kiln.fullPower = *ratedPower;
    model.basis = KilnBasis::scaledByRatedPower;
    return model;
}

} // namespace ringhold
