// The text of an instrument's specification, which parseInstrumentSpec() reads again.
#pragma once

#include "core/instrument/instrument_spec.h"

#include <string>

namespace ringhold {

/// "serial:/dev/ttyUSB0?baud=19200". A target with a question mark, or a parameter with an ampersand, has no
/// such text: badInput.
Result<std::string> specText(const InstrumentSpec& spec);

} // namespace ringhold
