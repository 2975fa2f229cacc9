// How the upper layers come by an instrument without knowing any transport.
#pragma once

#include "core/instrument/instrument.h"
#include "core/instrument/instrument_spec.h"

#include <memory>
#include <string>
#include <vector>

namespace ringhold {

/// A kind of instrument that a factory can make, for choosers and help.
struct InstrumentKind {
    std::string scheme;  ///< "serial"
    std::string example; ///< "serial:/dev/ttyUSB0?baud=9600"
};

class InstrumentFactory {
  public:
    virtual ~InstrumentFactory() = default;
    virtual std::vector<InstrumentKind> kinds() const = 0;
    /// badInput for an unknown scheme or parameter.
    virtual Result<std::unique_ptr<Instrument>> make(const InstrumentSpec& spec) = 0;
};

} // namespace ringhold
