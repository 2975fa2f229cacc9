// What firings teach of a glaze, in words.
#pragma once

#include "core/learn/next_experiment.h"

#include <QString>

namespace ringhold {

class Preferences;

/// "growth hold", "time in the growth hold" ...
QString causeWords(Cause cause);
/// "largest crystal", "grade", "crystals".
QString judgedWords(Judged judged);
/// A value of the cause: "1076 °C", "3.5 h", "0.12 g/cm²".
QString causeValue(Cause cause, double value, const Preferences& preferences);
/// "Not enough to say" or the claim, with the pieces and firings behind it.
QString lessonWords(const Lesson& lesson, Judged judged, const Preferences& preferences);
/// That the probes' offsets are off the temperatures, and how unsure what is left is; empty for other causes.
QString offsetsWords(const Lesson& lesson, const Preferences& preferences);
/// What went along with it, a sentence each; empty when nothing did.
QString confoundingWords(const Lesson& lesson, const Preferences& preferences);
/// "The next firing that would tell most: growth hold at 1090 °C for 4 h ..."
QString experimentWords(const NextExperiment& next, const Preferences& preferences);

} // namespace ringhold
