// A firing as it was taken out of the book to be looked at.
#pragma once

#include "core/book/log_records.h"
#include "core/cones/offset_prior.h"
#include "core/firing/firing_record.h"
#include "core/learn/firing_cost.h"
#include "core/learn/firing_figures.h"

#include <map>
#include <memory>

namespace ringhold {

class BookReader;

struct OpenedFiring {
    FiringRecord record; ///< of its readings only those written by hand: the curves hold the others
    Curve control;       ///< what it is judged by; may be empty
    std::vector<Curve> others;
    std::vector<AlarmRecord> alarms;
    std::vector<LogEvent> events;
    FiringFigures figures;
    std::optional<Probe> probe; ///< of the control curve, if the book knows it
    /// Of that probe at the cones, about the peak; nothing while no firing has told it.
    std::optional<OffsetPrior> offset;
    FiringUse use; ///< what it took, at the kiln's prices
};

Result<std::shared_ptr<const OpenedFiring>> openFiring(const BookReader& reader, FiringId firing);

/// Keeps the firings opened last, as many as can be laid over each other, until forget().
class OpenedFirings {
  public:
    static constexpr std::size_t most = 24;

    Result<std::shared_ptr<const OpenedFiring>> get(const BookReader& reader, FiringId firing);
    void forget() { m_opened.clear(); }

  private:
    std::map<FiringId, std::shared_ptr<const OpenedFiring>> m_opened;
};

} // namespace ringhold
