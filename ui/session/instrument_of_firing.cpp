#include "ui/session/instrument_of_firing.h"

#include "core/instrument/switchable_instrument.h"
#include "ui/session/notebook.h"

namespace ringhold {

std::string instrumentKey(KilnId kiln) {
    return "instrument of kiln " + std::to_string(static_cast<std::int64_t>(kiln));
}

QString instrumentOf(const Notebook& notebook, KilnId kiln) {
    const auto kept = notebook.reader().preference(instrumentKey(kiln));
    return kept && *kept ? QString::fromStdString(**kept) : QString();
}

Result<std::unique_ptr<Instrument>> instrumentFor(InstrumentFactory& factory, const QString& specification) {
    if (specification.isEmpty())
        return std::unique_ptr<Instrument>();
    const auto spec = parseInstrumentSpec(specification.toStdString());
    if (!spec)
        return spec.error();
    return factory.make(*spec);
}

Status useInstrument(Notebook& notebook, FiringSession& session, const QString& specification) {
    auto* instrument = dynamic_cast<SwitchableInstrument*>(session.instrument());
    if (!instrument || session.now() - notebook.clock().now() > std::chrono::seconds(1))
        return Error{ErrorKind::badInput, "a practice firing keeps its practice kiln: its clock is its own"};
    auto made = instrumentFor(notebook.instruments(), specification);
    if (!made)
        return made.error();
    if (const auto taken = instrument->use(std::move(*made)); !taken)
        return taken;
    return notebook.writer().setPreference(instrumentKey(session.record().kiln.id),
                                           specification.toStdString());
}

} // namespace ringhold
