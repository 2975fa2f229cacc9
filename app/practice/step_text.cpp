#include "app/practice/step_text.h"

#include "app/verbs/output.h"

#include <fmt/format.h>

namespace ringhold {

namespace {

std::string spokenRate(const std::optional<Rate>& rate) {
    return rate ? fmt::format("at {:.0f} °C/h", rate->celsiusPerHour()) : "as the kiln cools";
}

struct Spoken {
    std::string operator()(const Climb& climb) const {
        return fmt::format("climb to {:.0f} °C {}", climb.to.celsius(), spokenRate(climb.rate));
    }
    std::string operator()(const Hold& hold) const {
        return fmt::format("hold {:.0f} °C for {}", hold.at.celsius(), spokenDuration(hold.length));
    }
    std::string operator()(const ConeWait& wait) const {
        return fmt::format("climb {} towards {:.0f} °C and wait for cone {}", spokenRate(wait.rate),
                           wait.set.celsius(), wait.cone);
    }
    std::string operator()(const Drop& drop) const {
        return fmt::format("drop to {:.0f} °C {}", drop.to.celsius(), spokenRate(drop.rate));
    }
    std::string operator()(const Rings& rings) const {
        return fmt::format("{} rings: {:.0f} °C for {}, {:.0f} °C for {}", rings.count, rings.low.celsius(),
                           spokenDuration(rings.lowDwell), rings.high.celsius(),
                           spokenDuration(rings.highDwell));
    }
    std::string operator()(const Cool& cool) const {
        return fmt::format("cool to {:.0f} °C {}", cool.to.celsius(), spokenRate(cool.rate));
    }
};

} // namespace

std::string spokenStep(const Step& step) {
    return std::visit(Spoken{}, step);
}

} // namespace ringhold
