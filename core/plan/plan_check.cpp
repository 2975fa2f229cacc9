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
            mustBeAboveZero("band_C");
        else if (hold.band > plan_limits::widestBand)
            mustBeAtMost("band_C", plan_limits::widestBand.celsius());
        kilnIsAt(hold.at);
    }

    void operator()(const ConeWait& wait) {
        if (!looksLikeACone(wait.cone))
            fault("cone", FaultReason::notACone,
                  "must be a cone's number, such as \"9\", \"010\" or \"5.5\"");
        rate(wait.rate);
        if (temperature("set_C", wait.set))
            mustNotBeBelowKiln("set_C", wait.set);
        if (temperature("ceiling_C", wait.ceiling) && wait.ceiling < wait.set)
            fault("ceiling_C", FaultReason::ceilingBelowSet, "must be at least set_C");
        time("longest_soak_min", wait.longestSoak);
        m_atMost = std::max(m_atMost, wait.ceiling); // the cone may be down anywhere on the way
    }

    void operator()(const Drop& drop) { fall(drop.to, drop.rate); }
    void operator()(const Cool& cool) { fall(cool.to, cool.rate); }

    void operator()(const Rings& rings) {
        if (rings.count < 1 || rings.count > plan_limits::mostRings)
            mustBeWithin("count", 1, plan_limits::mostRings);
        if (temperature("low_C", rings.low))
            mustNotBeAboveKiln("low_C", rings.low);
        time("low_min", rings.lowDwell);
        if (temperature("high_C", rings.high) && !(rings.low < rings.high))
            fault("high_C", FaultReason::highNotAboveLow, "must be above low_C");
        time("high_min", rings.highDwell);
        kilnIsAt(rings.high);
    }

  private:
    void fault(std::string_view key, FaultReason reason, std::string_view what, double low = 0,
               double high = 0) {
        m_faults.push_back({m_step, key, fmt::format("{} {}", key, what), reason, low, high});
    }

    void mustBeAboveZero(std::string_view key) { fault(key, FaultReason::notAboveZero, "must be above 0"); }

    void mustBeAtMost(std::string_view key, double high) {
        fault(key, FaultReason::tooMuch, fmt::format("must be at most {}", high), 0, high);
    }

    void mustBeWithin(std::string_view key, double low, double high) {
        fault(key, FaultReason::outOfRange, fmt::format("must be from {} to {}", low, high), low, high);
    }

    bool temperature(std::string_view key, Temperature t) {
        const bool fine = t >= plan_limits::coldest && t <= plan_limits::hottest;
        if (!fine)
            mustBeWithin(key, plan_limits::coldest.celsius(), plan_limits::hottest.celsius());
        return fine;
    }

    void rate(Rate r) {
        constexpr auto key = "rate_C_per_h";
        if (!(r > Rate()))
            mustBeAboveZero(key);
        else if (r < plan_limits::slowest || r > plan_limits::fastest)
            mustBeWithin(key, plan_limits::slowest.celsiusPerHour(), plan_limits::fastest.celsiusPerHour());
    }

    void time(std::string_view key, Duration length) {
        if (length <= Duration::zero())
            mustBeAboveZero(key);
        else if (length > plan_limits::longestTime)
            mustBeAtMost(key, inMinutes(plan_limits::longestTime));
    }

    void fall(Temperature to, std::optional<Rate> r) {
        if (r)
            rate(*r);
        if (temperature("to_C", to))
            mustNotBeAboveKiln("to_C", to);
        kilnIsAt(to);
    }

    void mustNotBeBelowKiln(std::string_view key, Temperature t) {
        const double kiln_C = m_atLeast.celsius();
        if (t < m_atLeast)
            fault(key, FaultReason::belowKiln,
                  fmt::format("is {}, below the {} that the kiln has by then: this step goes up", t.celsius(),
                              kiln_C),
                  kiln_C);
    }

    void mustNotBeAboveKiln(std::string_view key, Temperature t) {
        const double kiln_C = m_atMost.celsius();
        if (t > m_atMost)
            fault(key, FaultReason::aboveKiln,
                  fmt::format("is {}, above the {} that the kiln has by then: this step goes down",
                              t.celsius(), kiln_C),
                  0, kiln_C);
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
        return {{std::nullopt, "steps", "a plan needs at least one step", FaultReason::noSteps}};
    if (plan.steps.size() > plan_limits::mostSteps)
        return {{std::nullopt, "steps", fmt::format("a plan has at most {} steps", plan_limits::mostSteps),
                 FaultReason::tooManySteps, 0, static_cast<double>(plan_limits::mostSteps)}};
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
