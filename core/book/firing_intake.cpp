#include "core/book/firing_intake.h"

#include "core/book/glaze_cards.h"
#include "core/book/ware_finds.h"
#include "core/book/write_sql.h"
#include "core/book/writer.h"

#include <algorithm>
#include <cctype>
#include <map>

namespace ringhold {

namespace {

/// From an id in the record to the one in the book. An id that leads nowhere becomes 0, which the book
/// refuses.
template <class Id>
class NewIds {
  public:
    void set(Id old, Id now) { m_ids[old] = now; }
    Id operator()(Id old) const {
        const auto found = m_ids.find(old);
        return found == m_ids.end() ? Id{} : found->second;
    }
    std::optional<std::int64_t> number(std::int64_t old) const {
        const auto found = m_ids.find(Id{old});
        return found == m_ids.end() ? std::nullopt : std::optional(static_cast<std::int64_t>(found->second));
    }

  private:
    std::map<Id, Id> m_ids;
};

/// Writes one record after the other.
class Intake {
  public:
    Intake(const Book& book, const FiringRecord& record)
        : m_book(book), m_record(record), m_writer(book), m_finds(book), m_cards(book) {}

    Result<TakenFiring> write() {
        using Part = Status (Intake::*)();
        for (const Part part :
             {&Intake::writeKiln, &Intake::writeProbes, &Intake::writeFiring, &Intake::writeReadings,
              &Intake::writePacks, &Intake::writeLog, &Intake::writeWare, &Intake::writeFinds,
              &Intake::writeCards, &Intake::writeOffsets, &Intake::writeEvents})
            if (Status done = (this->*part)(); !done)
                return done.error();
        return m_taken;
    }

  private:
    /// Adds each record with its references put right; notes the new ids where they are asked for.
    template <class Record, class Writer, class Fix, class Ids>
    Status addEach(const std::vector<Record>& records, Writer& writer, const Fix& fix, Ids& ids) {
        for (const auto& record : records) {
            Record mine = record;
            fix(mine);
            const auto added = writer.add(mine);
            if (!added)
                return added.error();
            ids.set(record.id, *added);
        }
        return {};
    }

    template <class Record>
    Status addLines(const std::vector<Record>& records, auto& ids) {
        return addEach(
            records, m_writer, [this](Record& line) { line.firing = m_taken.firing; }, ids);
    }

    template <class Record, class Fix, class Write>
    Status writeEach(const std::vector<Record>& records, const Fix& fix, const Write& write) {
        for (Record mine : records) {
            fix(mine);
            if (Status done = write(mine); !done)
                return done;
        }
        return {};
    }

    Status writeKiln() {
        const auto known = BookReader(m_book).kilnNamed(m_record.kiln.name);
        if (!known)
            return known.error();
        if (*known) {
            m_kiln = (*known)->id;
            return {};
        }
        m_taken.newKiln = true;
        const auto added = m_writer.add(m_record.kiln);
        if (!added)
            return added.error();
        m_kiln = *added;
        return {};
    }

    Status writeProbes() {
        const auto known = BookReader(m_book).probes(m_kiln);
        if (!known)
            return known.error();
        for (const auto& probe : m_record.probes) {
            const auto same = std::ranges::find_if(*known, [&](const Probe& each) {
                return each.label == probe.label && each.type == probe.type &&
                       each.position == probe.position && each.fitted == probe.fitted;
            });
            if (same != known->end()) {
                m_probes.set(probe.id, same->id);
                continue;
            }
            Probe mine = probe;
            mine.kiln = m_kiln;
            const auto added = m_writer.add(mine);
            if (!added)
                return added.error();
            m_probes.set(probe.id, *added);
        }
        return {};
    }

    /// The last instant that anything in the record tells of.
    Instant lastInstant() const {
        Instant last = m_record.firing.began;
        const auto hear = [&](const auto& lines) {
            for (const auto& line : lines)
                last = std::max(last, line.at);
        };
        hear(m_record.readings);
        hear(m_record.settings);
        hear(m_record.notes);
        for (const auto& look : m_record.looks)
            if (!look.cold)
                last = std::max(last, look.at);
        return last;
    }

    Status writeFiring() {
        Firing mine = m_record.firing;
        mine.kiln = m_kiln;
        if (!mine.ended)
            mine.ended = m_taken.endedWith = lastInstant();
        const auto added = m_writer.add(mine);
        if (!added)
            return added.error();
        m_taken.firing = *added;
        return addEach(
            m_record.channels, m_writer,
            [this](Channel& channel) {
                channel.firing = m_taken.firing;
                if (channel.probe)
                    channel.probe = m_probes(*channel.probe);
            },
            m_channels);
    }

    /// Line by line as they are, those included that a correction left with the same value.
    Status writeReadings() {
        return sql::guarded(m_book.file(), [&]() -> Status {
            SQLite::Statement statement(m_book.database(), R"sql(
                INSERT INTO reading (channel, at_ms, seq, value, by_hand, struck) VALUES (?1, ?2,
                    (SELECT ifnull(max(seq) + 1, 0) FROM reading WHERE channel = ?1 AND at_ms = ?2), ?3, ?4, ?5)
                )sql");
            for (const auto& reading : m_record.readings) {
                statement.reset();
                sql::bindAll(statement, m_channels(reading.channel), reading.at, reading.value,
                             reading.origin == Origin::hand, reading.struck);
                statement.exec();
            }
            return {};
        });
    }

    Status writePacks() {
        if (Status done = addLines(m_record.packs, m_packs); !done)
            return done;
        return addEach(
            m_record.looks, m_writer, [this](Look& look) { look.pack = m_packs(look.pack); }, m_looks);
    }

    Status writeLog() {
        if (Status done = addLines(m_record.settings, m_settings); !done)
            return done;
        if (Status done = addLines(m_record.notes, m_notes); !done)
            return done;
        if (Status done = addLines(m_record.stepCorrections, m_corrections); !done)
            return done;
        return addLines(m_record.meterStands, m_stands);
    }

    Status writeWare() {
        if (Status done = addLines(m_record.pieces, m_pieces); !done)
            return done;
        return writeEach(
            m_record.outcomes, [this](Outcome& outcome) { outcome.piece = m_pieces(outcome.piece); },
            [this](const Outcome& outcome) { return m_writer.set(outcome); });
    }

    Status writeFinds() {
        const auto ofPiece = [this](auto& find) { find.piece = m_pieces(find.piece); };
        const auto set = [this](const auto& find) { return m_finds.set(find); };
        if (Status done = addEach(m_record.photos, m_finds, ofPiece, m_photos); !done)
            return done;
        if (Status done = addEach(
                m_record.photoMeasures, m_finds,
                [this](PhotoMeasure& measure) { measure.photo = m_photos(measure.photo); }, m_measures);
            !done)
            return done;
        if (Status done = writeEach(m_record.ringRadii, ofPiece, set); !done)
            return done;
        return writeEach(m_record.sagsSeen, ofPiece, set);
    }

    Status writeCards() {
        for (const auto& card : m_record.glazeCards) {
            const auto known = m_cards.named(card.name);
            if (!known)
                return known.error();
            if (*known)
                m_taken.keptCards.push_back((*known)->name);
            else if (const auto added = m_cards.add(card); !added)
                return added.error();
        }
        return {};
    }

    Status writeOffsets() {
        return writeEach(
            m_record.filedOffsets,
            [this](FiledOffset& offset) {
                offset.firing = m_taken.firing;
                offset.kiln = m_kiln;
                offset.probe = m_probes(offset.probe);
            },
            [this](const FiledOffset& offset) { return m_writer.file(offset); });
    }

    Status writeEvents() {
        const auto here = [this](auto& event) { event.firing = m_taken.firing; };
        if (Status done = writeEach(m_record.alarmEvents, here,
                                    [this](const AlarmEvent& event) { return m_writer.add(event); });
            !done)
            return done;
        return writeEach(
            m_record.logEvents,
            [&](LogEvent& event) {
                here(event);
                if (event.kind == "struck" || event.kind == "restored" || event.kind == "corrected")
                    event.detail = renamed(event.detail);
            },
            [this](const LogEvent& event) { return m_writer.add(event); });
    }

    std::optional<std::int64_t> newNumber(const std::string& line, std::int64_t old) const {
        return line == "look"              ? m_looks.number(old)
               : line == "setting"         ? m_settings.number(old)
               : line == "note"            ? m_notes.number(old)
               : line == "step_correction" ? m_corrections.number(old)
               : line == "meter_stand"     ? m_stands.number(old)
               : line == "channel"         ? m_channels.number(old)
                                           : std::nullopt;
    }

    /// "look 31 by look 32" with the numbers that the lines have now.
    std::string renamed(const std::string& detail) const {
        std::string out;
        std::string word;
        std::string before;
        const auto finish = [&] {
            const bool number = !word.empty() && word.size() < 18 &&
                                std::ranges::all_of(word, [](unsigned char c) { return std::isdigit(c); });
            const auto now = number ? newNumber(before, std::stoll(word)) : std::nullopt;
            out += now ? std::to_string(*now) : word;
            before = std::exchange(word, "");
        };
        for (const char c : detail)
            if (c == ' ') {
                finish();
                out += c;
            } else
                word += c;
        finish();
        return out;
    }

    const Book& m_book;
    const FiringRecord& m_record;
    BookWriter m_writer;
    WareFinds m_finds;
    GlazeCards m_cards;
    TakenFiring m_taken;
    KilnId m_kiln{};
    NewIds<ProbeId> m_probes;
    NewIds<ChannelId> m_channels;
    NewIds<PackId> m_packs;
    NewIds<LookId> m_looks;
    NewIds<SettingId> m_settings;
    NewIds<NoteId> m_notes;
    NewIds<StepCorrectionId> m_corrections;
    NewIds<MeterStandId> m_stands;
    NewIds<PieceId> m_pieces;
    NewIds<PhotoId> m_photos;
    NewIds<PhotoMeasureId> m_measures;
};

} // namespace

Result<TakenFiring> takeIn(const Book& book, const FiringRecord& record) {
    return sql::together(book, [&](SQLite::Database&) { return Intake(book, record).write(); });
}

} // namespace ringhold
