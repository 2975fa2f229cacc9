#include "core/plan/plan_check.h"

#include <fmt/format.h>

#include <algorithm>

namespace ringhold {

namespace {

/// A cone's number as potters write it: "9", "010", "5.5".
bool looksLikeACone(std::string_view text) {
    if (text.ends_with(".5"))
        text.remove_suffix(2);
    return !text.empty() && text.size() <= 3 &&
           std::ranges::all_of(text, [](char c) { return c >= '0' && c <= '9'; });
}

/// Goes through the steps and keeps in mind between which temperatures the kiln must be by then.
class FaultFinder {
  public:
    explicit FaultFinder(std::optional<Temperature> start)
        : m_atLeast(start.value_or(plan_limits::coldest)), m_atMost(start.value_or(plan_limits::hottest)) {}

    void look(std::size_t index, const Step& step) {
        m_step = index;
        std::visit(*this, step);
    }
    std::vector<PlanFault> faults() && { return std::move(m_faults); }

    void operator()(const Climb& climb) {
        rate(climb.rate);
        if (temperature("to_C", climb.to))
            mustNotBeBelowKiln("to_C", climb.to);
        kilnIsAt(climb.to);
    }

    void operator()(const Hold& hold) {
        temperature("at_C", hold.at);
        time("minutes", hold.length);
        if (!(hold.band > TemperatureDifference()))
            fault("band_C", "must be above 0");
        else if (hold.band > plan_limits::widestBand)
            fault("band_C", fmt::format("must be at most {}", plan_limits::widestBand.celsius()));
        kilnIsAt(hold.at);
    }

    void operator()(const ConeWait& wait) {
        if (!looksLikeACone(wait.cone))
            fault("cone", "must be a cone's number, such as \"9\", \"010\" or \"5.5\"");
        rate(wait.rate);
        if (temperature("set_C", wait.set))
            mustNotBeBelowKiln("set_C", wait.set);
        if (temperature("ceiling_C", wait.ceiling) && wait.ceiling < wait.set)
            fault("ceiling_C", "must be at least set_C");
        time("longest_soak_min", wait.longestSoak);
        m_atMost = std::max(m_atMost, wait.ceiling); // the cone may be down anywhere on the way
    }

    void operator()(const Drop& drop) { fall(drop.to, drop.rate); }
    void operator()(const Cool& cool) { fall(cool.to, cool.rate); }

    void operator()(const Rings& rings) {
        if (rings.count < 1 || rings.count > plan_limits::mostRings)
            fault("count", fmt::format("must be from 1 to {}", plan_limits::mostRings));
        if (temperature("low_C", rings.low))
            mustNotBeAboveKiln("low_C", rings.low);
        time("low_min", rings.lowDwell);
        if (temperature("high_C", rings.high) && !(rings.low < rings.high))
            fault("high_C", "must be above low_C");
        time("high_min", rings.highDwell);
        kilnIsAt(rings.high);
    }

  private:
    void fault(std::string_view key, std::string_view what) {
        m_faults.push_back({m_step, key, fmt::format("{} {}", key, what)});
    }

    bool temperature(std::string_view key, Temperature t) {
        const bool fine = t >= plan_limits::coldest && t <= plan_limits::hottest;
        if (!fine)
            fault(key, fmt::format("must be from {} to {}", plan_limits::coldest.celsius(),
                                   plan_limits::hottest.celsius()));
        return fine;
    }

    void rate(Rate r) {
        if (!(r > Rate()))
            fault("rate_C_per_h", "must be above 0");
        else if (r < plan_limits::slowest || r > plan_limits::fastest)
            fault("rate_C_per_h", fmt::format("must be from {} to {}", plan_limits::slowest.celsiusPerHour(),
                                              plan_limits::fastest.celsiusPerHour()));
    }

    void time(std::string_view key, Duration length) {
        if (length <= Duration::zero())
            fault(key, "must be above 0");
        else if (length > plan_limits::longestTime)
            fault(key, fmt::format("must be at most {}", inMinutes(plan_limits::longestTime)));
    }

    void fall(Temperature to, std::optional<Rate> r) {
        if (r)
            rate(*r);
        if (temperature("to_C", to))
            mustNotBeAboveKiln("to_C", to);
        kilnIsAt(to);
    }

    void mustNotBeBelowKiln(std::string_view key, Temperature t) {
        if (t < m_atLeast)
            fault(key, fmt::format("is {}, below the {} that the kiln has by then: this step goes up",
                                   t.celsius(), m_atLeast.celsius()));
    }

    void mustNotBeAboveKiln(std::string_view key, Temperature t) {
        if (t > m_atMost)
            fault(key, fmt::format("is {}, above the {} that the kiln has by then: this step goes down",
                                   t.celsius(), m_atMost.celsius()));
    }

    void kilnIsAt(Temperature t) { m_atLeast = m_atMost = t; }

    std::size_t m_step = 0;
    Temperature m_atLeast;
    Temperature m_atMost;
    std::vector<PlanFault> m_faults;
};

} // namespace

std::string PlanFault::text() const {
    return step ? fmt::format("step {}: {}", *step + 1, what) : what;
}

std::vector<PlanFault> faultsOf(const Plan& plan, std::optional<Temperature> start) {
    if (plan.steps.empty())
        return {{std::nullopt, "steps", "a plan needs at least one step"}};
    if (plan.steps.size() > plan_limits::mostSteps)
        return {{std::nullopt, "steps", fmt::format("a plan has at most {} steps", plan_limits::mostSteps)}};
    FaultFinder finder(start);
    for (std::size_t i = 0; i < plan.steps.size(); ++i)
        finder.look(i, plan.steps[i]);
    return std::move(finder).faults();
}

Status check(const Plan& plan, std::optional<Temperature> start) {
    const auto faults = faultsOf(plan, start);
    return faults.empty() ? Status() : Status(Error{ErrorKind::badInput, faults.front().text()});
}

} // namespace ringhold
