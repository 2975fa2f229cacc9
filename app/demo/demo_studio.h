// The studio of the demo book: invented from end to end, its kilns practice kilns. What stands here is the
// truth that a potter would not know; the book gets only what a potter could read and write down.
#pragma once

#include "core/firing/kiln_records.h"
#include "core/glaze/glaze_card.h"
#include "core/growth/growth_rate.h"
#include "core/kiln/practice_kiln.h"

#include <cstdint>
#include <string>
#include <vector>

namespace ringhold {

/// The zone that the studio's clocks show.
inline constexpr const char* demoZone = "Europe/Lisbon";
/// Who acknowledges alarms there.
inline constexpr const char* demoPotter = "Ida";

struct DemoProbe {
    Probe probe;
    TemperatureDifference offset; ///< it reads so much above its place
};

struct DemoShelf {
    std::string name;
    TemperatureDifference difference; ///< hotter than the middle one
};

struct DemoKiln {
    Kiln kiln;
    std::vector<DemoProbe> probes;
    KilnConstants constants;
    TemperatureDifference place;    ///< the pack is so much hotter than the probe's place
    std::vector<DemoShelf> shelves; ///< the pack stands on the second
};

/// A glaze with what it does, of which its card tells the potter's guess.
struct DemoGlaze {
    GlazeCard card;
    GrowthRate growth;
    Temperature runsFrom;        ///< peak from which it runs
    Temperature clearFrom;       ///< peak below which seeds are left by the dozen
    TemperatureDifference shows; ///< an excursion of this depth is seen as often as not
    std::string crystalColour;
    std::string crystalPicked;
    std::string groundColour;
    std::string groundPicked;
};

/// What happens in one firing.
struct DemoFiring {
    std::size_t kiln = 0;
    std::size_t probe = 0;
    std::vector<std::size_t> glazes;
    std::string title;
    Plan plan;
    Instant lit;
    double wear = 1.0; ///< of the elements: their resistance as a share of the new ones'
    TimedFaults faults{};
    std::vector<std::string> notes{};     ///< the first at the beginning, then one at each step of the plan
    double oxygenShare = 0.08;            ///< in the flue of a kiln with a flame
    std::optional<TimedFault> reducing{}; ///< damper too far shut: the oxygen falls to `size`
};

struct DemoService {
    std::size_t kiln = 0;
    ServiceEntry entry;
    std::optional<std::size_t> probe{};
};

struct DemoStudio {
    std::vector<DemoKiln> kilns;
    std::vector<DemoGlaze> glazes;
    std::vector<DemoFiring> firings; ///< in time order
    std::vector<DemoService> services;
    std::vector<std::string> checklist;
};

/// Two kilns, three glazes, twelve firings. The seed draws offsets and small differences; names and dates are
/// always the same.
DemoStudio demoStudio(std::uint64_t seed);

} // namespace ringhold
