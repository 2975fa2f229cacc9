#include "ui/past/opened_firing.h"

#include "core/book/reader.h"
#include "core/learn/known_offset.h"
#include "core/report/report_curves.h"

namespace ringhold {

Result<std::shared_ptr<const OpenedFiring>> openFiring(const BookReader& reader, FiringId firing) {
    auto record = reader.whole(firing);
    if (!record)
        return record.error();
    auto alarms = reader.alarms(firing);
    if (!alarms)
        return alarms.error();
    auto events = reader.events(firing);
    if (!events)
        return events.error();
    const auto filed = reader.filedOffsets(record->kiln.id);
    if (!filed)
        return filed.error();
    auto opened = std::make_shared<OpenedFiring>();
    if (const auto control = controlChannel(*record))
        opened->control = curveOf(*record, *control);
    if (const auto* probe = controlProbe(*record))
        opened->probe = *probe;
    for (auto& other : otherCurves(*record))
        opened->others.push_back(std::move(other.curve));
    opened->use = useOf(*record);
    std::erase_if(record->readings, [](const Reading& r) { return r.origin != Origin::hand; });
    record->readings.shrink_to_fit();
    opened->figures = figuresOf(*record, opened->control);
    if (opened->probe && opened->figures.peak) {
        const auto known = knownOffset(*filed, firing, *opened->probe, opened->figures.peak->temperature);
        if (known.prior.firings > 0)
            opened->offset = known.prior;
    }
    opened->record = std::move(*record);
    opened->alarms = std::move(*alarms);
    opened->events = std::move(*events);
    return std::shared_ptr<const OpenedFiring>(std::move(opened));
}

Result<std::shared_ptr<const OpenedFiring>> OpenedFirings::get(const BookReader& reader, FiringId firing) {
    if (const auto known = m_opened.find(firing); known != m_opened.end())
        return known->second;
    auto opened = openFiring(reader, firing);
    if (!opened)
        return opened;
    if (m_opened.size() >= most)
        m_opened.clear();
    m_opened[firing] = *opened;
    return opened;
}

} // namespace ringhold
