// The cones that the program knows: published end points, and the heat-work law fitted to each.
#pragma once

#include "core/base/result.h"
#include "core/cones/cone.h"
#include "core/cones/cone_fit.h"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace ringhold {

/// How a published value came to us.
enum class Basis {
    read,     ///< seen on a copy of the chart
    memory,   ///< recalled, not seen
    readWeak, ///< seen on one careless copy
    study     ///< worked out by this project
};

/// One published end point, and how far the fitted law is from it.
struct PublishedEndPoint {
    EndPoint point;
    Basis basis = Basis::read;
    TemperatureDifference residual; ///< law minus table
};

/// Where a cone's activation energy comes from.
enum class ActivationSource {
    ownRates, ///< fitted to this cone's own end points
    sibling   ///< taken from the self-supporting cone of that name, since this series has too few rates
};

struct Cone {
    std::string name; ///< "05.5", "9"
    ConeType type = ConeType::selfSupporting;
    HeatWorkLaw law;
    ActivationSource activation = ActivationSource::ownRates;
    std::vector<PublishedEndPoint> published; ///< slowest rate first

    /// The law's own error for this cone, one standard deviation: from the fit's residuals with the degrees
    /// of freedom it has left, at least 1.5 °C; 3 °C where three rates do not test it. Between 15 and 150
    /// °C/h.
    TemperatureDifference modelSd() const;
    /// Largest distance of the law from the table, without sign.
    TemperatureDifference worstResidual() const;
};

/// Thread-safe once made: never changes.
class ConeTable {
  public:
    /// From the two CSV texts in resources/tables. badInput names the line.
    static Result<ConeTable> parse(std::string_view endPoints, std::string_view fits);
    /// The table built into the program.
    static const ConeTable& builtIn();

    /// Nothing when that series has no such cone. Names are as potters write them: "06" and "6" differ; "9"
    /// is "9".
    const Cone* find(std::string_view name, ConeType type = ConeType::selfSupporting) const;
    /// Coolest first.
    std::vector<const Cone*> series(ConeType type) const;

  private:
    std::vector<Cone> m_cones;
};

/// Refits every cone of an end-point table (the CSV text) and writes the fit table (CSV text): what
/// resources/tables/cone_fit.csv was made by.
Result<std::string> fitConeTable(std::string_view endPoints);

} // namespace ringhold
