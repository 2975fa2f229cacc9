#include "ui/session/notebook.h"

#include "core/book/book_alarm_journal.h"
#include "core/book/book_firing_log.h"
#include "core/book/journal.h"
#include "core/book/transaction.h"
#include "core/instrument/switchable_instrument.h"
#include "ui/common/word_style.h"
#include "ui/session/instrument_of_firing.h"

#include <algorithm>

namespace ringhold {

namespace {

/// Keeps the journals' concrete types out of the session.
FiringSession::Journals journalsOf(const std::filesystem::path& file) {
    return {[file](JournalListener& listener) -> Result<std::unique_ptr<Journal>> {
                auto journal = BookJournal::open(file, listener);
                if (!journal)
                    return journal.error();
                return std::unique_ptr<Journal>(std::move(*journal));
            },
            [file](FiringSession::AlarmsKept kept) -> std::unique_ptr<AlarmJournal> {
                return std::make_unique<BookAlarmJournal>(file, std::move(kept));
            }};
}

WatchSettings watchSettings(const Preferences& preferences) {
    WatchSettings settings;
    settings.attendance = preferences.attendanceInterval();
    settings.style = styleOf(preferences);
    return settings;
}

} // namespace

Notebook::Notebook(Book book, InstrumentFactory& factory, const Clock& clock)
    : m_book(std::move(book)), m_factory(factory), m_clock(clock),
      m_preferences(std::make_unique<Preferences>(m_book)) {
    connect(m_preferences.get(), &Preferences::changed, this, [this] {
        for (const auto& session : m_sessions)
            session->setWatchSettings(watchSettings(*m_preferences));
    });
}

Notebook::~Notebook() = default;

Result<std::unique_ptr<Notebook>> Notebook::open(const std::filesystem::path& file,
                                                 InstrumentFactory& factory, const Clock& clock) {
    auto book = Book::open(file, Access::create);
    if (!book)
        return book.error();
    return std::unique_ptr<Notebook>(new Notebook(std::move(*book), factory, clock));
}

Result<std::unique_ptr<Instrument>> Notebook::makeInstrument(const QString& specification) {
    auto made = instrumentFor(m_factory, specification);
    if (!made)
        return made.error();
    return std::unique_ptr<Instrument>(std::make_unique<SwitchableInstrument>(std::move(*made)));
}

Result<FiringId> Notebook::write(const NewFiring& wanted) {
    auto transaction = WriteTransaction::begin(m_book);
    if (!transaction)
        return transaction.error();
    auto writer = this->writer();
    Firing firing{{}, wanted.kiln, wanted.title.toStdString(), m_clock.now(), {}, wanted.plan, {}};
    const auto id = writer.add(firing);
    if (!id)
        return id.error();
    for (auto pack : wanted.packs) {
        pack.firing = *id;
        if (const auto added = writer.add(pack); !added)
            return added.error();
    }
    for (auto piece : wanted.pieces) {
        piece.firing = *id;
        if (const auto added = writer.add(piece); !added)
            return added.error();
    }
    if (wanted.probe) {
        // the control channel is there from the start, so that the probe is known before the first reading
        const Channel channel{
            {}, *id, Quantity::temperature, wanted.instrument.isEmpty() ? byHandLabel : "", wanted.probe};
        if (const auto added = writer.add(channel); !added)
            return added.error();
    }
    if (const auto kept = writer.setPreference(instrumentKey(wanted.kiln), wanted.instrument.toStdString());
        !kept)
        return kept.error();
    if (const auto done = transaction->commit(); !done)
        return done.error();
    return *id;
}

Result<FiringSession*> Notebook::begin(const NewFiring& wanted) {
    auto instrument = makeInstrument(wanted.instrument);
    if (!instrument)
        return instrument.error();
    return beginWith(wanted, std::move(*instrument));
}

Result<FiringSession*> Notebook::beginWith(const NewFiring& wanted, std::unique_ptr<Instrument> instrument) {
    const auto id = write(wanted);
    if (!id)
        return id.error();
    Q_EMIT bookChanged();
    return start(*id, std::move(instrument));
}

Result<FiringSession*> Notebook::start(FiringId firing, std::unique_ptr<Instrument> instrument) {
    auto record = reader().whole(firing);
    if (!record)
        return record.error();
    auto filed = reader().filedOffsets(record->kiln.id);
    if (!filed)
        return filed.error();
    FiringSession::Parts parts;
    parts.record = std::move(*record);
    parts.filed = std::move(*filed);
    parts.log = std::make_unique<BookFiringLog>(m_book);
    parts.instrument = std::move(instrument);
    parts.clock = &m_clock;
    parts.watch = watchSettings(*m_preferences);
    auto session = FiringSession::make(std::move(parts), journalsOf(m_book.file()));
    if (!session)
        return session.error();
    m_sessions.push_back(std::move(*session));
    Q_EMIT sessionsChanged();
    return m_sessions.back().get();
}

std::vector<Error> Notebook::resume() {
    std::vector<Error> failures;
    const auto firings = reader().firings();
    if (!firings)
        return {firings.error()};
    for (const auto& firing : *firings) {
        if (firing.ended)
            continue;
        const auto specification = reader().preference(instrumentKey(firing.kiln));
        auto instrument = makeInstrument(
            specification && *specification ? QString::fromStdString(**specification) : QString());
        if (!instrument) {
            failures.push_back(instrument.error());
            instrument = makeInstrument({}); // go on by hand rather than not at all
        }
        if (const auto started = start(firing.id, std::move(*instrument)); !started)
            failures.push_back(started.error());
    }
    return failures;
}

Status Notebook::end(FiringSession& session) {
    if (const auto ended = session.end(); !ended)
        return ended;
    std::erase_if(m_sessions, [&](const auto& s) { return s.get() == &session; });
    Q_EMIT sessionsChanged();
    Q_EMIT bookChanged();
    return {};
}

} // namespace ringhold
