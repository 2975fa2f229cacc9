// The pieces of one glaze as what is learned from: what their firing did to them and how they came out.
#pragma once

#include "core/book/reader.h"
#include "core/learn/firing_figures.h"
#include "core/learn/piece_result.h"
#include "ui/glaze/glaze_use.h"

#include <map>
#include <optional>
#include <vector>

namespace ringhold {

/// What of a firing all its pieces share.
struct FiringResult {
    FiringFigures figures;
    std::optional<Probe> probe; ///< of the control curve
    std::optional<CorrectedTemperature> growthHold;
    std::optional<CorrectedTemperature> peak;
};

/// The probe's reading with its offset taken off: the one filed by this firing's own cones, else what the
/// other firings of the probe told, else that of a new probe. What an offset is carried away from the cones
/// adds is an error that all firings of the probe share.
CorrectedTemperature correctedFor(const std::vector<FiledOffset>& filed, FiringId firing, const Probe& probe,
                                  Temperature read, Temperature peak);

/// Reads whole firings, and keeps what it found of them until forget().
class GlazeResults {
  public:
    Result<std::vector<PieceResult>> of(const Book& book, const std::vector<GlazeFiring>& firings);
    void forget() { m_firings.clear(); }

  private:
    Result<FiringResult> read(const Book& book, FiringId firing) const;

    std::map<FiringId, FiringResult> m_firings;
};

/// "A" 26, "B" 25 ... "Z" 1; a plus or minus behind it counts a third. Nothing for grades of another kind.
std::optional<double> gradeRank(const std::string& grade);

} // namespace ringhold
