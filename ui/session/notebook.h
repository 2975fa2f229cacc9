// The open book as the window sees it: reading, writing, preferences and the firings that are live.
#pragma once

#include "core/base/clock.h"
#include "core/book/book.h"
#include "core/book/reader.h"
#include "core/book/writer.h"
#include "core/instrument/instrument_factory.h"
#include "ui/session/firing_session.h"
#include "ui/session/preferences.h"

#include <QObject>

#include <memory>
#include <vector>

namespace ringhold {

/// What a new firing begins with.
struct NewFiring {
    KilnId kiln{};
    std::optional<ProbeId> probe;
    QString title;
    std::optional<Plan> plan;
    std::vector<Pack> packs;   ///< ids are given when written
    std::vector<Piece> pieces; ///< likewise
    QString instrument;        ///< a specification; empty: readings by hand only
};

/// Lives in the window's thread; pages hold a reference to it and to nothing else of the outside.
class Notebook : public QObject {
    Q_OBJECT

  public:
    /// Opens (or makes) the book. Factory and clock outlive the notebook.
    static Result<std::unique_ptr<Notebook>> open(const std::filesystem::path& file,
                                                  InstrumentFactory& factory, const Clock& clock);
    ~Notebook() override;

    BookReader reader() const { return BookReader(m_book); }
    /// After writing through it, call bookChanged() so that all pages show it.
    BookWriter writer() { return BookWriter(m_book); }
    /// For GlazeCards, WareFinds and KilnCare; likewise.
    const Book& book() const { return m_book; }
    Preferences& preferences() { return *m_preferences; }
    InstrumentFactory& instruments() { return m_factory; }
    const Clock& clock() const { return m_clock; }
    std::filesystem::path file() const { return m_book.file(); }

    /// Live firings, oldest first.
    const std::vector<std::unique_ptr<FiringSession>>& sessions() const { return m_sessions; }
    /// Writes the firing, its packs and pieces in one transaction and starts its session.
    Result<FiringSession*> begin(const NewFiring& firing);
    /// A session for every firing in the book that has not ended: after a crash or restart. Gives what could
    /// not be resumed.
    std::vector<Error> resume();
    /// Ends the firing; its session is gone when this returns.
    Status end(FiringSession& session);
    /// Adopts a session around an instrument that is made already: the practice kiln.
    Result<FiringSession*> beginWith(const NewFiring& firing, std::unique_ptr<Instrument> instrument);

  Q_SIGNALS:
    void bookChanged();     ///< kilns, probes, firings, pieces, outcomes or offsets were written
    void sessionsChanged(); ///< a firing began or ended

  private:
    Notebook(Book book, InstrumentFactory& factory, const Clock& clock);
    Result<FiringSession*> start(FiringId firing, std::unique_ptr<Instrument> instrument);
    Result<std::unique_ptr<Instrument>> makeInstrument(const QString& specification);
    Result<FiringId> write(const NewFiring& firing);

    Book m_book;
    InstrumentFactory& m_factory;
    const Clock& m_clock;
    std::unique_ptr<Preferences> m_preferences;
    std::vector<std::unique_ptr<FiringSession>> m_sessions;
};

} // namespace ringhold
