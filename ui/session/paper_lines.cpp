#include "ui/session/paper_lines.h"

#include "core/book/book_firing_log.h"
#include "ui/common/word_style.h"
#include "ui/session/notebook.h"

#include <algorithm>

namespace ringhold {

namespace {

constexpr Duration coolingTime = std::chrono::hours(24);

FiringSession* sessionOf(const Notebook& notebook, FiringId firing) {
    for (const auto& session : notebook.sessions())
        if (session->record().firing.id == firing)
            return session.get();
    return nullptr;
}

template <class Value>
Status statusOf(const Result<Value>& result) {
    return result ? Status() : Status(result.error());
}

/// Where lines go: through the session of a live firing, or straight into the book.
class PaperWriter {
  public:
    PaperWriter(Notebook& notebook, FiringId firing, std::vector<Pack> packs)
        : m_session(sessionOf(notebook, firing)), m_log(notebook.book()), m_reader(notebook.reader()),
          m_firing(firing), m_packs(std::move(packs)) {}

    Status write(const WrittenLine& line) {
        return std::visit([&](const auto& what) { return put(what, line.at); }, line.what);
    }

  private:
    Status put(const WrittenReading& reading, Instant at) {
        if (m_session)
            return m_session->firing().writeReading(at, reading.value);
        if (const auto found = findChannel(); !found)
            return found;
        return m_log.add(Reading{*m_channel, at, reading.value.celsius(), Origin::hand, false});
    }
    Status put(const WrittenNote& note, Instant at) {
        return m_session ? statusOf(m_session->firing().writeNote(at, note.text))
                         : statusOf(m_log.add(Note{{}, m_firing, at, note.text, false}));
    }
    Status put(const WrittenSetting& setting, Instant at) {
        return m_session ? statusOf(m_session->firing().writeSetting(at, setting.what, setting.value))
                         : statusOf(m_log.add(Setting{{}, m_firing, at, setting.what, setting.value, false}));
    }
    Status put(const WrittenLooks& looks, Instant at) {
        Status done;
        for (std::size_t i = 0; i < looks.looks.size() && done; ++i)
            done = putLook(looks.looks[i], at);
        return done;
    }
    Status putLook(const WrittenLooks::One& look, Instant at) {
        const auto pack = std::ranges::find_if(
            m_packs, [&](const Pack& p) { return std::ranges::count(p.cones, look.cone) > 0; });
        if (pack == m_packs.end())
            return Error{ErrorKind::badInput, "no pack has a cone " + look.cone};
        return m_session ? statusOf(m_session->firing().writeLook(pack->id, at, look.cone, look.hour))
                         : statusOf(m_log.add(Look{{}, pack->id, at, look.cone, look.hour, false, false}));
    }
    /// The channel by hand, added if there is none.
    Status findChannel() {
        if (m_channel)
            return {};
        const auto channels = m_reader.channels(m_firing);
        if (!channels)
            return channels.error();
        for (const auto& channel : *channels)
            if (channel.quantity == Quantity::temperature && channel.label == byHandLabel)
                m_channel = channel.id;
        if (m_channel)
            return {};
        const auto added = m_log.add(Channel{{}, m_firing, Quantity::temperature, byHandLabel, {}});
        if (added)
            m_channel = *added;
        return statusOf(added);
    }

    FiringSession* m_session;
    BookFiringLog m_log;
    BookReader m_reader;
    FiringId m_firing;
    std::vector<Pack> m_packs;
    std::optional<ChannelId> m_channel;
};

} // namespace

Result<PaperContext> paperContext(Notebook& notebook, FiringId firing) {
    const auto found = notebook.reader().firing(firing);
    if (!found)
        return found.error();
    const auto packs = notebook.reader().packs(firing);
    if (!packs)
        return packs.error();
    const auto* session = sessionOf(notebook, firing);
    const auto style = styleOf(notebook.preferences());
    PaperContext context{found->began,
                         session ? session->now() : notebook.clock().now(),
                         style.zone,
                         style.scale == TemperatureScale::fahrenheit,
                         {}};
    if (found->ended)
        context.until = std::min(context.until, *found->ended + coolingTime);
    context.until = std::max(context.until, context.from);
    for (const auto& pack : *packs)
        context.cones.insert(context.cones.end(), pack.cones.begin(), pack.cones.end());
    return context;
}

PaperWritten writePaperLines(Notebook& notebook, FiringId firing, std::span<const WrittenLine> lines) {
    PaperWritten written;
    const auto packs = notebook.reader().packs(firing);
    if (!packs)
        return {0, packs.error()};
    PaperWriter writer(notebook, firing, *packs);
    for (const auto& line : lines) {
        written.trouble = writer.write(line);
        if (!written.trouble)
            break;
        ++written.lines;
    }
    if (written.lines > 0)
        Q_EMIT notebook.bookChanged();
    return written;
}

} // namespace ringhold
