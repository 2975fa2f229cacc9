#include "core/book/kept_plans.h"

#include "core/book/reader.h"
#include "core/book/writer.h"
#include "core/plan/plan_file.h"

#include <nlohmann/json.hpp>

namespace ringhold {

namespace {

constexpr const char* preferenceName = "plans";

Error unreadable(const std::string& what) {
    return {ErrorKind::unreadable, "the plans in the book cannot be read: " + what};
}

} // namespace

Result<std::vector<Plan>> keptPlans(const BookReader& reader) {
    const auto kept = reader.preference(preferenceName);
    if (!kept)
        return kept.error();
    if (!*kept)
        return std::vector<Plan>();
    const auto list = nlohmann::json::parse(**kept, nullptr, false);
    if (!list.is_array())
        return unreadable("they are no list");
    std::vector<Plan> plans;
    for (const auto& entry : list) {
        auto plan = parsePlanDraft(entry.dump(), "plan " + std::to_string(plans.size() + 1));
        if (!plan)
            return unreadable(plan.error().text());
        plans.push_back(std::move(*plan));
    }
    return plans;
}

Status keepPlans(BookWriter& writer, std::span<const Plan> plans) {
    std::string list;
    for (const auto& plan : plans) {
        const std::string text = formatPlan(plan);
        if (const auto comesBack = parsePlanDraft(text, plan.name); !comesBack)
            return comesBack.error();
        list += (list.empty() ? "" : ",") + text;
    }
    return writer.setPreference(preferenceName, "[" + list + "]");
}

} // namespace ringhold
