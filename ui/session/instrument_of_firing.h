// The instrument that a live firing listens to, and taking another one.
#pragma once

#include "core/base/result.h"
#include "core/firing/records.h"
#include "core/instrument/instrument_factory.h"

#include <QString>

namespace ringhold {

class FiringSession;
class Notebook;

/// Under which preference the book keeps the instrument of a kiln.
std::string instrumentKey(KilnId kiln);

/// The specification that the kiln's last firing began with or took since; empty for readings by hand.
QString instrumentOf(const Notebook& notebook, KilnId kiln);

/// Null for readings by hand. badInput when there can be no such instrument.
Result<std::unique_ptr<Instrument>> instrumentFor(InstrumentFactory& factory, const QString& specification);

/// From now on the firing listens to that one; empty: readings by hand only. What was logged stays. badInput
/// when there can be no such instrument, and for a practice firing: the firing then goes on as it was.
Status useInstrument(Notebook& notebook, FiringSession& session, const QString& specification);

} // namespace ringhold
