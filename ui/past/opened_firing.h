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

class Book;

/// What a firing is opened for: a comparison draws and judges the control curve alone.
enum class OpenedFor { comparing, looking };

struct OpenedFiring {
    FiringRecord record; ///< of its readings only those by hand of its curves: the curves hold the others
    Curve control;       ///< what it is judged by; may be empty
    std::vector<Curve> others; ///< empty when it was opened for a comparison
    std::vector<AlarmRecord> alarms;
    std::vector<LogEvent> events;
    FiringFigures figures;
    std::optional<Probe> probe; ///< of the control curve, if the book knows it
    /// Of that probe at the cones, about the peak; nothing while no firing has told it.
    std::optional<OffsetPrior> offset;
    FiringUse use; ///< what it took, at the kiln's prices
};

Result<std::shared_ptr<const OpenedFiring>> openFiring(const Book& book, FiringId firing,
                                                       OpenedFor what = OpenedFor::looking);

/// Keeps the firings opened last, as many as can be laid over each other, until forget().
class OpenedFirings {
  public:
    static constexpr std::size_t most = 24;

    /// One that was opened for looking at serves a comparison as well.
    Result<std::shared_ptr<const OpenedFiring>> get(const Book& book, FiringId firing,
                                                    OpenedFor what = OpenedFor::looking);
    void forget() { m_opened.clear(); }

  private:
    struct Kept {
        std::shared_ptr<const OpenedFiring> firing;
        OpenedFor what = OpenedFor::comparing;
    };
    std::map<FiringId, Kept> m_opened;
};

} // namespace ringhold
