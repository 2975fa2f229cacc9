#include "core/plan/plan_file.h"

#include <nlohmann/json.hpp>

#include <cmath>

namespace ringhold {

namespace {

using nlohmann::ordered_json;

/// Whole numbers without ".0". Not finite becomes null, which no plan file may hold.
ordered_json number(double value) {
    constexpr double exactlyWhole = 9e15;
    if (std::abs(value) < exactlyWhole && value == std::trunc(value))
        return static_cast<std::int64_t>(value);
    return value;
}

ordered_json degrees(Temperature t) {
    return number(t.celsius());
}

ordered_json minutes(Duration d) {
    return number(inMinutes(d));
}

ordered_json rate(std::optional<Rate> r) {
    return r ? number(r->celsiusPerHour()) : ordered_json(nullptr);
}

struct StepWriter {
    ordered_json operator()(const Climb& s) const {
        return {{"climb", {{"to_C", degrees(s.to)}, {"rate_C_per_h", rate(s.rate)}}}};
    }
    ordered_json operator()(const Hold& s) const {
        return {{"hold",
                 {{"at_C", degrees(s.at)},
                  {"minutes", minutes(s.length)},
                  {"band_C", number(s.band.celsius())}}}};
    }
    ordered_json operator()(const ConeWait& s) const {
        return {{"cone_wait",
                 {{"cone", s.cone},
                  {"rate_C_per_h", rate(s.rate)},
                  {"set_C", degrees(s.set)},
                  {"ceiling_C", degrees(s.ceiling)},
                  {"longest_soak_min", minutes(s.longestSoak)}}}};
    }
    ordered_json operator()(const Drop& s) const {
        return {{"drop", {{"to_C", degrees(s.to)}, {"rate_C_per_h", rate(s.rate)}}}};
    }
    ordered_json operator()(const Rings& s) const {
        return {{"rings",
                 {{"count", s.count},
                  {"low_C", degrees(s.low)},
                  {"low_min", minutes(s.lowDwell)},
                  {"high_C", degrees(s.high)},
                  {"high_min", minutes(s.highDwell)}}}};
    }
    ordered_json operator()(const Cool& s) const {
        return {{"cool", {{"to_C", degrees(s.to)}, {"rate_C_per_h", rate(s.rate)}}}};
    }
};

std::string dumped(const ordered_json& value) {
    return value.dump(-1, ' ', false, ordered_json::error_handler_t::replace);
}

} // namespace

std::string formatPlan(const Plan& plan) {
    std::string text = "{\n  \"name\": " + dumped(plan.name) + ",\n  \"steps\": [";
    for (std::size_t i = 0; i < plan.steps.size(); ++i)
        text += (i == 0 ? "\n    " : ",\n    ") + dumped(std::visit(StepWriter(), plan.steps[i]));
    return text + "\n  ]\n}\n";
}

} // namespace ringhold
