#include "ui/past/opened_firing.h"

#include "core/book/drawn_firing.h"
#include "core/book/reader.h"
#include "core/learn/known_offset.h"
#include "core/watch/energy_meter.h"

namespace ringhold {

namespace {

/// What past firings told of its probe, about this firing's peak.
std::optional<OffsetPrior> offsetOf(const OpenedFiring& opened, const std::vector<FiledOffset>& filed) {
    if (!opened.probe || !opened.figures.peak)
        return std::nullopt;
    const auto known =
        knownOffset(filed, opened.record.firing.id, *opened.probe, opened.figures.peak->temperature);
    return known.prior.firings > 0 ? std::optional(known.prior) : std::nullopt;
}

} // namespace

Result<std::shared_ptr<const OpenedFiring>> openFiring(const Book& book, FiringId firing, OpenedFor what) {
    const BookReader reader(book);
    const auto stands = reader.meterStands(firing);
    if (!stands)
        return stands.error();
    auto drawn = drawnFiring(book, firing, {what == OpenedFor::looking, !energyByMeter(*stands)});
    if (!drawn)
        return drawn.error();
    const auto filed = reader.filedOffsets(drawn->record.kiln.id);
    if (!filed)
        return filed.error();
    auto opened = std::make_shared<OpenedFiring>();
    opened->probe = std::move(drawn->probe);
    opened->record = std::move(drawn->record);
    opened->control = std::move(drawn->control);
    opened->others = std::move(drawn->others);
    opened->use = useOf(opened->record);
    std::erase_if(opened->record.readings, [](const Reading& r) { return r.origin != Origin::hand; });
    opened->record.readings.shrink_to_fit();
    opened->figures = figuresOf(opened->record, opened->control);
    opened->offset = offsetOf(*opened, *filed);
    opened->alarms = alarmsTold(opened->record.alarmEvents);
    opened->events = opened->record.logEvents;
    return std::shared_ptr<const OpenedFiring>(std::move(opened));
}

Result<std::shared_ptr<const OpenedFiring>> OpenedFirings::get(const Book& book, FiringId firing,
                                                               OpenedFor what) {
    const auto known = m_opened.find(firing);
    if (known != m_opened.end() && known->second.what >= what)
        return known->second.firing;
    auto opened = openFiring(book, firing, what);
    if (!opened)
        return opened;
    if (m_opened.size() >= most)
        m_opened.clear();
    m_opened[firing] = {*opened, what};
    return opened;
}

} // namespace ringhold
