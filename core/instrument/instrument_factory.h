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

/// An instrument that this computer has just now: a port with something plugged in.
struct InstrumentFound {
    std::string scheme;      ///< of a kind that can be listened to by it
    std::string target;      ///< what stands behind the scheme's colon: "/dev/ttyUSB0"
    std::string description; ///< what the maker calls it, perhaps empty
};

class InstrumentFactory {
  public:
    virtual ~InstrumentFactory() = default;
    virtual std::vector<InstrumentKind> kinds() const = 0;
    /// Looks anew at each call; costs milliseconds.
    virtual std::vector<InstrumentFound> found() const { return {}; }
    /// badInput for an unknown scheme or parameter.
    virtual Result<std::unique_ptr<Instrument>> make(const InstrumentSpec& spec) = 0;
};

} // namespace ringhold
