// What the curve answered to a setting of damper, gas or switches: the climb before and after it.
#pragma once

#include "core/firing/records.h"
#include "core/report/words.h"
#include "core/units/curve.h"
#include "core/watch/drift.h"

#include <optional>
#include <string>
#include <vector>

namespace ringhold {

struct SettingAnswer {
    Setting setting;
    std::optional<Drift> before; ///< over the 20 min before it, back to the last setting at most
    std::optional<Drift> after;  ///< over the 20 min from it on, to the next setting or the last reading
    Duration afterOver{0};
};

/// One a setting that counts, in time order; what was set within 2 min counts as one deed, and its answers
/// are the same. The setting "hold" moves nothing and is left out. Nothing is told from less than 5 min or
/// three readings.
std::vector<SettingAnswer> settingAnswers(const std::vector<Setting>& settings, const Curve& curve);

/// "Climb 58.2 ± 3.0 °C/h before, 41.0 ± 5.1 °C/h in the 20 min after."; empty when nothing is told. What
/// else was done meanwhile is in it.
std::string answerWords(const SettingAnswer& answer, const WordStyle& style);
/// "58 °C/h → 41 °C/h", with "–" for what is not told; empty when nothing is.
std::string shortAnswerWords(const SettingAnswer& answer, const WordStyle& style);

} // namespace ringhold
