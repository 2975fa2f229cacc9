// Writing in the book.
#pragma once

#include "core/base/result.h"
#include "core/book/log_records.h"
#include "core/firing/kiln_records.h"
#include "core/firing/records.h"

#include <cstddef>
#include <span>
#include <string>
#include <string_view>

namespace ringhold {

class Book;

/// Puts records into an open book and alters them. Each call is a transaction of its own, on the disk when it
/// returns, unless a WriteTransaction is open. Same thread as the book, which must outlive this.
///
/// badInput: the record breaks a rule of the book or refers to what is not there. notFound: the id to alter
/// is not in the book. unwritable: disk full or read-only. failed: another program holds the book.
///
/// Lines of the log (readings, looks, settings, notes) are never overwritten: they are struck, which can be
/// taken back, or corrected, which strikes the old line and adds a new one. Each leaves a LogEvent at `when`.
class BookWriter {
  public:
    explicit BookWriter(const Book& book) : m_book(&book) {}

    /// The id in the record is not looked at; the new one is given back.
    Result<KilnId> add(const Kiln& kiln);
    Result<ProbeId> add(const Probe& probe);
    Result<FiringId> add(const Firing& firing); ///< a kiln has at most one firing that has not ended
    Result<ChannelId> add(const Channel& channel);
    Result<PackId> add(const Pack& pack);
    Result<LookId> add(const Look& look); ///< its cone must be in the pack
    Result<SettingId> add(const Setting& setting);
    Result<NoteId> add(const Note& note);
    Result<PieceId> add(const Piece& piece);
    Result<StepCorrectionId> add(const StepCorrection& correction);
    Result<MeterStandId> add(const MeterStand& stand);
    Status add(const AlarmEvent& event); ///< stays as it is for ever
    Status add(const LogEvent& event);
    /// Gives how many were new: a reading that the book has already (same channel, instant, value and origin)
    /// is not written twice.
    Result<std::size_t> add(std::span<const Reading> readings);

    Status alter(const Kiln& kiln);
    Status alter(const Probe& probe);
    Status alter(const Firing& firing);
    Status alter(const Channel& channel);
    Status alter(const Pack& pack); ///< a cone that a look names stays
    Status alter(const Piece& piece);
    Status end(FiringId firing, Instant at);
    Status add(std::span<const Piece> pieces); ///< all of them or none
    /// With its outcome, photos and all that was measured: a piece that was never in the kiln. See
    /// WareFinds::whole() for what to keep to take that back.
    Status remove(PieceId piece);
    Status restore(const Piece& piece); ///< a removed one, under its old id

    /// One for each piece; an earlier one is replaced.
    Status set(const Outcome& outcome);
    Status removeOutcome(PieceId piece);
    /// One for each firing, probe and place; an earlier one is replaced.
    Status file(const FiledOffset& offset);
    Status setPreference(std::string_view name, std::string_view value);

    Status strike(LookId look, Instant when);
    Status strike(SettingId setting, Instant when);
    Status strike(NoteId note, Instant when);
    Status strike(StepCorrectionId correction, Instant when);
    Status strike(MeterStandId stand, Instant when);
    Status restore(LookId look, Instant when);
    Status restore(SettingId setting, Instant when);
    Status restore(NoteId note, Instant when);
    Status restore(StepCorrectionId correction, Instant when);
    Status restore(MeterStandId stand, Instant when);
    /// `now.id` is the line to be struck; gives the id of the new one.
    Result<LookId> correct(const Look& now, Instant when);
    Result<SettingId> correct(const Setting& now, Instant when);
    Result<NoteId> correct(const Note& now, Instant when);
    Result<MeterStandId> correct(const MeterStand& now, Instant when);

    /// Strikes the readings from the first instant to the last, both included; gives how many.
    Result<std::size_t> strikeReadings(ChannelId channel, Instant first, Instant last, Instant when);
    Result<std::size_t> restoreReadings(ChannelId channel, Instant first, Instant last, Instant when);
    /// Strikes what the channel read at that instant and writes this value, as given by hand.
    Status correct(const Reading& now, Instant when);

  private:
    const Book* m_book;
};

} // namespace ringhold
