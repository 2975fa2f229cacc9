// What looks and the model tell of a firing's cones and of its probe's offset.
#pragma once

#include "core/firing/firing_record.h"
#include "core/report/report_content.h"

#include <optional>
#include <vector>

namespace ringhold {

/// Each pack as the looks tell it, and as the model does where they do not.
class ConeStory {
  public:
    /// `history` holds what earlier firings filed.
    ConeStory(const FiringRecord& record, const Curve& control, const std::vector<FiledOffset>& history);

    const std::vector<ReportedPack>& packs() const { return m_packs; }
    /// For the plan's curve: by the first pack's offset as it was found.
    std::optional<Instant> coneDownOn(const Curve& whole, const std::string& cone) const;
    /// The first pack's offset carried down to another temperature; nothing where nothing is known of it.
    std::optional<OffsetPrior> offsetAt(Temperature temperature) const;

  private:
    std::vector<ReportedPack> m_packs;
    ConeType m_type = ConeType::selfSupporting;
    std::optional<OffsetPrior> m_offset; ///< of the first pack that has a model
    std::optional<Temperature> m_offsetAt;
};

} // namespace ringhold
