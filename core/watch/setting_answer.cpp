#include "core/watch/setting_answer.h"

#include "core/watch/curve_parts.h"
#include "core/watch/told_hold.h"

#include <algorithm>

namespace ringhold {

namespace {

constexpr Duration window = std::chrono::minutes(20);
constexpr Duration least = std::chrono::minutes(5);
constexpr Duration oneDeed = std::chrono::minutes(2);
constexpr std::ptrdiff_t fewestReadings = 3;

std::optional<Drift> climbIn(const Curve& curve, Stretch when) {
    const auto first = std::ranges::lower_bound(curve, when.start, {}, &CurvePoint::at);
    const auto last = std::ranges::upper_bound(curve, when.end, {}, &CurvePoint::at);
    if (last - first < fewestReadings)
        return std::nullopt;
    const Curve part(first, last);
    return part.back().at - part.front().at < least ? std::nullopt : std::optional(driftOf(part));
}

std::string climbWords(const Drift& drift, const WordStyle& style) {
    std::optional<Rate> half;
    if (drift.interval90)
        half = Rate::fromCelsiusPerHour(
            (drift.interval90->high.celsiusPerHour() - drift.interval90->low.celsiusPerHour()) / 2);
    return driftWords(drift.rate, half, style);
}

} // namespace

std::vector<SettingAnswer> settingAnswers(const std::vector<Setting>& settings, const Curve& curve) {
    std::vector<Setting> counted;
    std::ranges::copy_if(settings, std::back_inserter(counted),
                         [](const Setting& s) { return !s.struck && s.what != holdSetting; });
    std::vector<SettingAnswer> answers;
    for (const auto& setting : counted) {
        Stretch before{setting.at - window, setting.at};
        Stretch after{setting.at, setting.at + window};
        for (const auto& other : counted) {
            if (other.at < setting.at - oneDeed)
                before.start = std::max(before.start, other.at);
            if (other.at > setting.at + oneDeed)
                after.end = std::min(after.end, other.at);
        }
        if (!curve.empty())
            after.end = std::min(after.end, curve.back().at);
        answers.push_back({setting, climbIn(curve, before), climbIn(curve, after),
                           std::max(Duration(0), after.end - after.start)});
    }
    return answers;
}

std::string answerWords(const SettingAnswer& answer, const WordStyle& style) {
    if (!answer.before && !answer.after)
        return {};
    std::string words = "Climb ";
    if (answer.before)
        words += climbWords(*answer.before, style) + " before";
    if (answer.after)
        words += (answer.before ? ", " : "") + climbWords(*answer.after, style) + " in the " +
                 durationWords(answer.afterOver) + " after";
    return words + ".";
}

std::string shortAnswerWords(const SettingAnswer& answer, const WordStyle& style) {
    if (!answer.before && !answer.after)
        return {};
    const auto words = [&](const std::optional<Drift>& drift) {
        return drift ? rateWords(drift->rate, style) : std::string("–");
    };
    return words(answer.before) + " → " + words(answer.after);
}

} // namespace ringhold
