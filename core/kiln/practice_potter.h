// A potter for practice firings: goes to the spyhole at sensible times, reads the pack as well as a person
// can, and says when the firing cone is down.
#pragma once

#include "core/kiln/chance.h"
#include "core/kiln/practice_spyhole.h"
#include "core/plan/plan.h"
#include "core/units/time.h"

#include <cstdint>
#include <optional>
#include <set>
#include <string>
#include <vector>

namespace ringhold {

/// A look as it would be written down; a Look of the book once it belongs to a pack.
struct PracticeLook {
    Instant at;
    std::string cone;
    double hour = 0; ///< in halves, 0 standing to 6 down
};

struct PotterHabits {
    std::string firingCone; ///< "9"
    /// Does not go to the spyhole below this display.
    Temperature looksFrom = Temperature::fromCelsius(1200);
    std::chrono::minutes whileStanding{20}; ///< between looks while all cones stand
    std::chrono::minutes onceMoving{8};     ///< once any cone was seen moving
    std::chrono::minutes nearDown{3};       ///< once the firing cone was seen past 1 o'clock
    double hourSd = 0.3;                    ///< reading error, before rounding to halves
};

/// Habits that suit a plan's first cone wait: looks from 60 °C below its set point. Nothing for a plan that
/// waits for no cone.
std::optional<PotterHabits> habitsFor(const Plan& plan);

class PracticePotter {
  public:
    PracticePotter(PotterHabits habits, std::uint64_t seed);

    /// Call as often as there are readings: when it is time for a look, looks at every cone that was not
    /// yet seen down, and tells the controller when the firing cone is. Then the spyhole is left alone.
    std::vector<PracticeLook> watch(Instant now, PracticeSpyhole& spyhole);

    /// One look at the whole pack, whenever asked: also for the cold pack after the firing.
    std::vector<PracticeLook> lookNow(Instant now, const PracticeSpyhole& spyhole);

    bool sawFiringConeDown() const { return m_down; }

  private:
    Duration pauseAfter(const std::vector<PracticeLook>& looks) const;

    PotterHabits m_habits;
    Chance m_chance;
    std::optional<Instant> m_next;
    std::set<std::string> m_lying; ///< cones seen down
    bool m_down = false;
};

} // namespace ringhold
