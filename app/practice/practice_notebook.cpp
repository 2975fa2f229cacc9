#include "app/practice/practice_notebook.h"

#include "app/verbs/kiln_book.h"
#include "core/kiln/two_node_kiln.h"
#include "core/watch/firing_forecast.h"

#include <algorithm>

namespace ringhold {

namespace {

const std::vector<std::string> practicePack{"8", "9", "10"};

} // namespace

Result<PracticeNotebook> PracticeNotebook::begin(const Book& book, std::uint64_t seed, const Plan& plan,
                                                 Instant at) {
    PracticeNotebook notebook(book);
    if (const auto status = notebook.findKiln(seed); !status)
        return status.error();
    if (const auto status = notebook.findProbe(); !status)
        return status.error();
    if (const auto status = notebook.beginFiring(plan, at); !status)
        return status.error();
    return notebook;
}

Status PracticeNotebook::findKiln(std::uint64_t seed) {
    auto kiln = kilnFor(*m_book, "Practice kiln " + std::to_string(seed));
    if (!kiln)
        return kiln.error();
    m_kiln = std::move(*kiln);
    const KilnConstants constants;
    m_kiln.ratedPower = constants.fullPower;
    m_kiln.ratedVolts = constants.ratedVolts;
    m_kiln.note = "Make-believe: not a real kiln.";
    return BookWriter(*m_book).alter(m_kiln);
}

Status PracticeNotebook::findProbe() {
    const auto known = BookReader(*m_book).probes(m_kiln.id);
    if (!known)
        return known.error();
    if (!known->empty()) {
        m_probe = known->front();
        return {};
    }
    m_probe.kiln = m_kiln.id;
    m_probe.label = "probe";
    m_probe.position = "middle of the wall";
    const auto id = BookWriter(*m_book).add(m_probe);
    if (!id)
        return id.error();
    m_probe.id = *id;
    return {};
}

Status PracticeNotebook::beginFiring(const Plan& plan, Instant at) {
    BookWriter writer(*m_book);
    const auto open = BookReader(*m_book).openFiring(m_kiln.id);
    if (!open)
        return open.error();
    if (*open)
        if (const auto status = writer.end((*open)->id, (*open)->began); !status)
            return status;
    m_firing.kiln = m_kiln.id;
    m_firing.title = plan.name;
    m_firing.began = at;
    m_firing.plan = plan;
    const auto firing = writer.add(m_firing);
    if (!firing)
        return firing.error();
    m_firing.id = *firing;
    m_pack.firing = *firing;
    m_pack.place = "middle shelf";
    m_pack.cones = practicePack;
    const auto pack = writer.add(m_pack);
    if (!pack)
        return pack.error();
    m_pack.id = *pack;
    return {};
}

Result<OffsetPrior> PracticeNotebook::prior() const {
    const auto filed = BookReader(*m_book).filedOffsets(m_kiln.id);
    if (!filed)
        return filed.error();
    return offsetPriorFor(&m_probe, m_pack.place, *filed);
}

Status PracticeNotebook::write(const std::vector<PracticeLook>& looks, bool cold) {
    BookWriter writer(*m_book);
    for (const auto& look : looks) {
        const auto written = writer.add(Look{
            .id = {}, .pack = m_pack.id, .at = look.at, .cone = look.cone, .hour = look.hour, .cold = cold});
        if (!written)
            return written.error();
    }
    return {};
}

Status PracticeNotebook::file(TemperatureDifference mean, TemperatureDifference sd, Instant at) {
    return BookWriter(*m_book).file({.firing = m_firing.id,
                                     .kiln = m_kiln.id,
                                     .probe = m_probe.id,
                                     .place = m_pack.place,
                                     .at = at,
                                     .mean = mean,
                                     .sd = sd});
}

Status PracticeNotebook::end(Instant at) {
    return BookWriter(*m_book).end(m_firing.id, at);
}

Result<Curve> PracticeNotebook::curve() const {
    const BookReader reader(*m_book);
    const auto channels = reader.channels(m_firing.id);
    if (!channels)
        return channels.error();
    const auto control = std::find_if(channels->begin(), channels->end(), [](const Channel& channel) {
        return channel.quantity == Quantity::temperature;
    });
    if (control == channels->end())
        return Error{ErrorKind::failed, "the practice kiln said nothing"};
    return reader.curve(control->id);
}

} // namespace ringhold
