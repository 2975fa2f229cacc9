// What a plan is reckoned for: a kiln of the book, a probe with its filed offset, a series of cones,
// a glaze.
#pragma once

#include "core/book/reader.h"
#include "core/cones/offset_prior.h"
#include "core/growth/growth_rate.h"
#include "core/plan/plan_energy.h"

#include <QString>

#include <optional>
#include <string>
#include <vector>

namespace ringhold {

class Preferences;

/// A probe, and what is believed of its offset against the cones at one place.
struct OffsetChoice {
    std::string probe; ///< its label; empty when no probe is meant
    std::string place; ///< of the packs that told the offset; empty when none did
    OffsetPrior prior;
};

/// Of the kiln's probes that are not retired: each with each place where its offset was found, the newest
/// first, then those without. Never empty.
Result<std::vector<OffsetChoice>> offsetChoices(const BookReader& reader, KilnId kiln);

struct PlanBasis {
    std::optional<Kiln> kiln; ///< without: a typical one
    OffsetChoice offset;
    ConeType cones = ConeType::selfSupporting;
    std::string glaze{}; ///< whose growth rate is meant; empty: any
    /// The glaze's own once its crystals told it, else the published range.
    GrowthRate growth = publishedGrowthRate();
};

/// When no kiln is chosen: any probe of usual wire.
PlanBasis typicalBasis();

/// From a cold kiln at the beginning of time. The end of a cone wait is estimated by the heat-work law with
/// the offset's mean, or assumed where the chart does not have one of the plan's cones.
PlanContext contextOf(const PlanBasis& basis, const Plan& plan);

/// "reads 7 °C high (+ 4 to + 10), from 3 firings"; nine times in ten the truth lies in the range.
QString offsetWords(const OffsetPrior& prior, const Preferences& preferences);
/// "control, cones on the middle shelf".
QString choiceWords(const OffsetChoice& choice);
QString coneTypeWords(ConeType type);

} // namespace ringhold
