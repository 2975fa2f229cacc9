// The text by which an instrument is named: "serial:/dev/ttyUSB0?baud=9600", "practice:?seed=1&speed=60".
#pragma once

#include "core/base/result.h"

#include <map>
#include <string>
#include <string_view>

namespace ringhold {

struct InstrumentSpec {
    std::string scheme; ///< before the first colon
    std::string target; ///< between colon and question mark: a path, "host:port", or nothing
    std::map<std::string, std::string> parameters;
};

/// badInput when there is no scheme or a parameter is not name=value.
Result<InstrumentSpec> parseInstrumentSpec(std::string_view text);

} // namespace ringhold
