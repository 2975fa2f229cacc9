#include "app/practice/practice_story.h"

#include "app/practice/cone_watch.h"
#include "app/practice/step_text.h"
#include "app/verbs/forecast_output.h"
#include "app/verbs/judgement_output.h"
#include "core/plan/plan_energy.h"

#include <fmt/format.h>

#include <algorithm>

namespace ringhold {

void PracticeStory::opening(const std::string& kiln, Instant begin) {
    const PlanContext context{.start = begin, .kiln = {}, .line = {}, .soFar = {}, .coneDown = {}};
    const auto planned = planCurve(m_plan, context);
    const auto energy = planEnergy(planned, context);
    m_out << fmt::format("{}. {}\n", kiln, m_plan.name)
          << fmt::format("By the plan about {}, about {:.0f} kWh in a typical kiln of its power\n",
                         spokenDuration(planned.length()), energy.total.kilowattHours())
          << dateAndTime(begin) << " begins\n";
}

void PracticeStory::step(std::size_t step, Instant at) {
    for (; m_stepBegan.size() <= step && m_stepBegan.size() < m_plan.steps.size();)
        m_stepBegan.push_back(at);
    if (step < m_plan.steps.size())
        m_out << fmt::format("{} step {}: {}\n", clockTime(at), step + 1, spokenStep(m_plan.steps[step]));
}

void PracticeStory::looks(const std::vector<PracticeLook>& looks) {
    std::string all;
    for (const auto& look : looks)
        all += fmt::format("{}{} {}", all.empty() ? "" : ", ", look.cone, spokenHour(look.hour));
    m_out << fmt::format("{}   looked: {}\n", clockTime(looks.front().at), all);
}

void PracticeStory::forecast(const Forecast& forecast, const ConeForecast& firingCone) {
    const auto& offset = forecast.packs.front().offset;
    const auto when = firingCone.isDown ? std::string("down") : "down " + shownClock(firingCone.down);
    m_out << fmt::format("{}     cone {} {}; offset {:+.0f} °C (90 %: {:+.0f} to {:+.0f})\n",
                         clockTime(forecast.asOf), firingCone.cone, when, offset.median.celsius(),
                         offset.p05.celsius(), offset.p95.celsius());
}

void PracticeStory::coneDown(const std::string& cone, Instant at) {
    m_out << fmt::format("{}   cone {} is down: the plan goes on\n", clockTime(at), cone);
}

void PracticeStory::kept(std::size_t readings, Duration length) {
    m_out << fmt::format("The firing took {}; {} readings are in the book\n", spokenDuration(length),
                         readings);
}

std::optional<Stretch> PracticeStory::spanOf(std::size_t step, const Curve& curve) const {
    if (step >= m_stepBegan.size())
        return std::nullopt;
    const auto end = step + 1 < m_stepBegan.size() ? m_stepBegan[step + 1] : curve.back().at;
    return end > m_stepBegan[step] ? std::optional(Stretch{m_stepBegan[step], end}) : std::nullopt;
}

void PracticeStory::judge(const Hold& hold, const Curve& curve, std::optional<Stretch> span) {
    if (!span)
        return;
    const HoldBand band{hold.at, hold.band};
    describe(m_out, {judgeHold(curve, band, *span)}, band, true);
}

void PracticeStory::judge(const Curve& curve) {
    for (std::size_t i = 0; i < m_plan.steps.size(); ++i) {
        if (const auto* hold = std::get_if<Hold>(&m_plan.steps[i]))
            judge(*hold, curve, spanOf(i, curve));
        if (const auto* rings = std::get_if<Rings>(&m_plan.steps[i])) {
            const auto counted = countRings(curve, {rings->high, rings->low});
            m_out << fmt::format("Rings planned {}, counted {}\n", rings->count, counted.size());
            describe(m_out, counted, true);
        }
    }
}

void PracticeStory::foretold(const ConeWatch& watch, Instant down) {
    const auto holds = [down](const ToldForecast& told) {
        return told.down.p05 && *told.down.p05 <= down && (!told.down.p95 || down <= *told.down.p95);
    };
    const auto& told = watch.told();
    const auto before = std::count_if(told.begin(), told.end(), [&](const auto& t) { return t.at < down; });
    const auto within =
        std::count_if(told.begin(), told.end(), [&](const auto& t) { return t.at < down && holds(t); });
    m_out << fmt::format("Cone {} was in truth down at {}; {} of {} forecasts had that within their 90 %\n",
                         watch.firingCone(), clockTime(down), within, before);
}

void PracticeStory::offset(const PackForecast& found, TemperatureDifference truth) {
    m_out << fmt::format(
        "Offset found {:+.1f} °C (90 %: {:+.1f} to {:+.1f}), filed with the kiln; in truth {:+.1f}\n",
        found.offset.median.celsius(), found.offset.p05.celsius(), found.offset.p95.celsius(),
        truth.celsius());
}

} // namespace ringhold
