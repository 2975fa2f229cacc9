// A plan's step as a row of cells: which of its values stands where, and what it is called.
#pragma once

#include "core/plan/plan.h"

#include <QString>

#include <optional>
#include <string>
#include <string_view>
#include <variant>

namespace ringhold {

class Preferences;

/// In the order of the alternatives of Step.
enum class StepKind { climb, hold, coneWait, drop, rings, cool };
inline constexpr int stepKinds = static_cast<int>(std::variant_size_v<Step>);

StepKind kindOf(const Step& step);
/// "climb", "cone wait".
QString kindWords(StepKind kind);

/// A sensible step of that kind for a kiln that is at `from`; all its values are the potter's to change.
Step usualStep(StepKind kind, Temperature from);
/// The step as another kind, with the temperature, rate and time that it had, as far as the other has them.
Step converted(const Step& step, StepKind kind, Temperature from);
/// The temperature at which the plan's first `steps` steps leave the kiln, if all goes as the plan says.
Temperature endOf(const Plan& plan, std::size_t steps);

enum class StepColumn {
    kind,
    which,       ///< cone or count
    temperature, ///< the one that the step goes to or stays at; of rings the high one
    rate,
    time,    ///< of a hold or soak; of rings at the high
    limit,   ///< band, ceiling, or the low of rings
    lowTime, ///< of rings at the low
    takes    ///< reckoned, not part of the plan
};
inline constexpr int stepColumns = static_cast<int>(StepColumn::takes) + 1;

/// A value of a step, in its place.
using StepValue = std::variant<std::string*, int*, Temperature*, TemperatureDifference*, Rate*,
                               std::optional<Rate>*, Duration*>;

struct StepCell {
    StepValue value;
    std::string_view key; ///< in a plan file: "ceiling_C"
    const char* words;    ///< "ceiling"
};

/// Nothing where a step of that kind has no value in the column.
std::optional<StepCell> cellOf(Step& step, StepColumn column);
/// The column of a plan file's key, if the step has it.
std::optional<StepColumn> columnOf(const Step& step, std::string_view key);

/// As it stands in the table: "1 262", "± 6", "max 1 285", "full".
QString shownIn(const StepCell& cell, const Preferences& preferences);
/// With its unit, to be read out behind the cell's words: "1 285 °C".
QString toldIn(const StepCell& cell, const Preferences& preferences);
/// As it is offered for editing: the bare figure.
QString offeredIn(const StepCell& cell, const Preferences& preferences);

enum class Typing { changed, unchanged, notUnderstood };
/// Puts what was typed into the value. The text that was offered leaves it to the last bit as it was.
Typing typeInto(const StepCell& cell, const QString& text, const Preferences& preferences);

} // namespace ringhold
