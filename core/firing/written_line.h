// What the potter writes on the line below the spread, understood: a note, a reading, looks or a setting, and
// when it was.
#pragma once

#include "core/base/result.h"
#include "core/units/temperature.h"
#include "core/units/time.h"

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace ringhold {

struct WrittenNote {
    std::string text;
};

struct WrittenReading {
    Temperature value;
};

struct WrittenLooks {
    struct One {
        std::string cone;
        double hour = 0;
    };
    std::vector<One> looks;
};

struct WrittenSetting {
    std::string what;
    std::string value;
};

struct WrittenLine {
    std::variant<WrittenNote, WrittenReading, WrittenLooks, WrittenSetting> what;
    Instant at;
};

/// What a line is meant to be. `open`: found out from the text, a note if it is nothing else.
enum class LineKind { open, note, reading, look, setting };

/// What is needed to understand a line.
struct WritingContext {
    Instant now;
    std::string zone = "UTC";
    bool fahrenheit = false;        ///< of a figure without its unit
    std::vector<std::string> cones; ///< of all packs
};

/// Reads a line.
/// - When: "3 min ago", "1 h ago" at the end, or "18:03" at the beginning ("at 18:03" at the end too), civil
/// time of the zone, the
///   latest such time that is not after now; else now.
/// - Reading: "1201", "1201 C", "2194 °F". -50 to 1800 °C.
/// - Looks: a cone and an hour, "10 3.5", "9 standing", "9 down", several with commas; also as the log tells
/// them, "10 at 3½ o'clock".
/// - Setting: "damper: half open", a word, a colon and a value.
/// badInput says in plain words what was not understood; an empty line is badInput too.
Result<WrittenLine> readWrittenLine(std::string_view text, LineKind kind, const WritingContext& context);

/// An hour as potters write it: "3", "3.5", "3,5", "3½", "12" and "standing" for 0, "down" for 6, "leaning"
/// and "just leaning" for half an hour; "o'clock" may follow.
Result<double> readHour(std::string_view text);

/// "18:03" or "8:03" in that zone (an IANA name), as the latest such time that is not after now.
std::optional<Instant> readClockTime(std::string_view text, Instant now, const std::string& zone);

} // namespace ringhold
