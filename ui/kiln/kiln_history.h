// The past firings of one kiln as what its health, evenness and costs are told from.
#pragma once

#include "core/book/reader.h"
#include "core/learn/evenness.h"
#include "core/learn/firing_cost.h"
#include "core/learn/health.h"

#include <map>
#include <optional>
#include <vector>

namespace ringhold {

struct KilnFiring {
    FiringSummary firing;
    std::optional<ProbeId> probe; ///< that it was judged by
    FiringHealth health;
    FiringUse use;
    std::optional<Evenness> evenness; ///< told by its cold packs, two at least
};

/// Reads whole firings, and keeps what it found of those that are as they were. The book outlives it.
class KilnPast {
  public:
    static constexpr std::size_t mostFirings = 40; ///< the latest: older ones wear differently

    explicit KilnPast(const Book& book) : m_book(&book) {}

    /// Those that have ended, in time order.
    Result<std::vector<KilnFiring>> of(const Kiln& kiln);

  private:
    /// What changes when a firing is read anew.
    struct Seen {
        std::int64_t readings = 0;
        int coldLooks = 0;
        std::size_t stands = 0;
        std::size_t filed = 0;
        std::optional<double> prices[2];
        bool operator==(const Seen&) const = default;
    };
    struct Kept {
        Seen seen;
        KilnFiring firing;
    };

    Result<KilnFiring> read(const FiringSummary& firing, const std::vector<FiledOffset>& filed) const;
    Result<Seen> look(const FiringSummary& firing, const Kiln& kiln,
                      const std::vector<FiledOffset>& filed) const;

    const Book* m_book;
    std::map<FiringId, Kept> m_kept;
};

/// The cold packs of a record, as they stand.
std::vector<ColdPack> coldPacksOf(const FiringRecord& record);

/// The firings that were judged by that probe, as what its health is told from.
std::vector<FiringHealth> healthByProbe(const std::vector<KilnFiring>& firings, ProbeId probe);

} // namespace ringhold
