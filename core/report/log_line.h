// The lines of the log, as a report and the log page tell them.
#pragma once

#include "core/book/log_records.h"
#include "core/firing/firing_record.h"
#include "core/firing/line_key.h"
#include "core/report/words.h"

#include <string>
#include <variant>
#include <vector>

namespace ringhold {

/// A visit to the spyhole: what was seen of the cones of one pack.
struct LookLine {
    std::string place;
    bool nameThePlace = false; ///< as there are several packs
    std::vector<ConeHour> cones;
    bool cold = false;
};

struct NoteLine {
    std::string text;
};

struct SettingLine {
    std::string what;
    std::string value;
};

/// A reading written by hand.
struct HandReadingLine {
    Quantity quantity = Quantity::temperature;
    double value = 0;  ///< in the quantity's unit
    std::string label; ///< of the probe, where there are several
};

struct AlarmLine {
    std::string level;
    std::string cause; ///< as the book has it
    std::string detail;
    std::optional<Acknowledgement> acknowledged;
    std::optional<Instant> ended;
};

/// The potter's word on the step that the kiln was in.
struct StepLine {
    std::size_t step = 0; ///< from 0; their number when the plan was done
    std::size_t of = 0;   ///< how many the plan has
};

struct MeterLine {
    double stand = 0;
    MeterUnit unit = MeterUnit::kilowattHours;
};

/// What happened to the log itself.
struct EventLine {
    std::string kind;
    std::string detail;
};

struct LogLine {
    Instant at;
    bool struck = false;
    std::variant<LookLine, NoteLine, SettingLine, HandReadingLine, AlarmLine, StepLine, MeterLine, EventLine>
        what;
    std::vector<LineKey> keys{}; ///< of all that makes the line; none for alarms and events
};

/// All of a firing in time order, struck lines too. Looks at one pack within 90 s make one line. Readings of
/// instruments are not in it, nor the events that tell of lines struck, restored or corrected.
std::vector<LogLine> logLines(const FiringRecord& record, const std::vector<AlarmRecord>& alarms = {},
                              const std::vector<LogEvent>& events = {});

/// "Relay stuck on?"; the book's own word for a cause that this program does not know.
std::string alarmTitle(const AlarmLine& alarm);

/// The line without its time: "Look · 9 at 3 o’clock, 10 standing".
std::string lineWords(const LogLine& line, const WordStyle& style);
/// The same where the line's kind is told beside it: "9 at 3 o’clock, 10 standing".
std::string lineWordsWithoutKind(const LogLine& line, const WordStyle& style);

} // namespace ringhold
