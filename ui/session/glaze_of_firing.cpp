#include "ui/session/glaze_of_firing.h"

#include "core/book/book.h"
#include "ui/session/notebook.h"

namespace ringhold {

namespace {

constexpr int afterChange_ms = 3000;

/// In the other thread. What cannot be read is not known.
std::optional<KnownGlaze> readKnown(const std::filesystem::path& file, FiringId firing) {
    const auto book = Book::open(file, Access::read);
    if (!book)
        return std::nullopt;
    const auto pieces = BookReader(*book).pieces(firing);
    const std::string name = pieces ? mainGlaze(*pieces) : std::string();
    if (name.empty())
        return std::nullopt;
    auto knowledge = GlazeEvidence(*book).of(name);
    return knowledge ? std::optional(KnownGlaze{name, std::move(*knowledge)}) : std::nullopt;
}

} // namespace

GlazeOfFiring::GlazeOfFiring(const FiringSession& session, Notebook& notebook, QObject* parent)
    : QObject(parent), m_session(session), m_notebook(notebook) {
    m_later.setSingleShot(true);
    connect(&m_later, &QTimer::timeout, this, &GlazeOfFiring::read);
    connect(&notebook, &Notebook::bookChanged, this, [this] { m_later.start(afterChange_ms); });
    read();
}

GrowthRate GlazeOfFiring::rate() const {
    return m_known ? m_known->knowledge.growth.rate() : publishedGrowthRate();
}

void GlazeOfFiring::read() {
    const auto file = m_notebook.file();
    const FiringId firing = m_session.record().firing.id;
    m_work.ask([file, firing] { return readKnown(file, firing); },
               [this](const std::optional<KnownGlaze>& known) {
                   m_known = known;
                   Q_EMIT changed();
               });
}

} // namespace ringhold
