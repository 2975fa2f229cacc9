// Reading in the book.
#pragma once

#include "core/base/result.h"
#include "core/book/log_records.h"
#include "core/firing/firing_record.h"
#include "core/firing/records.h"
#include "core/units/curve.h"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace ringhold {

class Book;

/// A firing as a list of firings shows it.
struct FiringSummary {
    FiringId id{};
    KilnId kiln{};
    std::string kilnName;
    std::string title;
    Instant began;
    std::optional<Instant> ended;
    std::optional<Instant> lastReading; ///< of any channel
    std::int64_t readings = 0;          ///< of all channels, without the struck ones
    std::optional<Temperature> peak;    ///< of the control probe: the first temperature channel with readings
};

/// Which firings are asked for. What is not given lets every firing through.
struct FiringFilter {
    std::optional<KilnId> kiln{};
    std::optional<Instant> from{};   ///< lit at this instant or later
    std::optional<Instant> before{}; ///< lit earlier than this
    std::string glaze{}; ///< part of the name of a glaze in it; large and small letters are the same
    std::string cone{};  ///< "9": that its plan waits for, or else the middle one of one of its packs
    std::string grade{}; ///< that one of its pieces was given
    /// In title, notes that are not struck, ware, outcomes and captions, all of them; each may be a
    /// beginning. Large and small letters and accents make no difference.
    std::string words{};
};

/// Whether the pictures of photos are read too: they are large.
enum class Pictures { without, with };

/// Takes records out of an open book. Each call sees the book at one moment. Same thread as the book, which
/// must outlive this. notFound: no such id; unreadable: the book is damaged; failed: anything else.
class BookReader {
  public:
    explicit BookReader(const Book& book) : m_book(&book) {}

    Result<std::vector<Kiln>> kilns() const; ///< by name
    /// Upper and lower case of unaccented letters are the same.
    Result<std::optional<Kiln>> kilnNamed(std::string_view name) const;
    Result<std::vector<Probe>> probes(KilnId kiln) const;
    /// What all past firings told of the kiln's probes, in time order.
    Result<std::vector<FiledOffset>> filedOffsets(KilnId kiln) const;

    Result<std::vector<FiringSummary>> firings() const; ///< in time order; touches no reading
    Result<std::vector<FiringSummary>> firings(const FiringFilter& filter) const; ///< likewise
    /// The one firing of a kiln that has not ended: logging goes on there.
    Result<std::optional<Firing>> openFiring(KilnId kiln) const;
    Result<Firing> firing(FiringId id) const;
    Result<FiringRecord> whole(FiringId id, Pictures pictures = Pictures::without) const;

    Result<std::vector<Channel>> channels(FiringId firing) const;
    /// With the struck ones, in time order; lines of one instant in the order of writing.
    Result<std::vector<Reading>> readings(ChannelId channel) const;
    /// What counts: without the struck ones, and of several lines of one instant the last written. For a
    /// channel of temperatures.
    Result<Curve> curve(ChannelId channel) const;

    Result<std::vector<Piece>> pieces(FiringId firing) const;     ///< in the order of writing
    Result<std::vector<Outcome>> outcomes(FiringId firing) const; ///< of those pieces that have one, likewise

    Result<std::vector<Pack>> packs(FiringId firing) const; ///< in the order of writing

    Result<std::vector<AlarmEvent>> alarmEvents(FiringId firing) const; ///< in the order of writing
    Result<std::vector<AlarmRecord>> alarms(FiringId firing) const;     ///< summed up, in the order raised
    Result<std::vector<StepCorrection>> stepCorrections(FiringId firing) const; ///< in time order
    Result<std::vector<MeterStand>> meterStands(FiringId firing) const;         ///< in time order
    Result<std::vector<LogEvent>> events(FiringId firing) const;                ///< in time order
    Result<std::optional<std::string>> preference(std::string_view name) const;

  private:
    const Book* m_book;
};

} // namespace ringhold
