#include "core/kiln/practice_potter.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace ringhold {

namespace {

double inHalves(double hour) {
    return std::round(std::clamp(hour, 0.0, 6.0) * 2.0) / 2.0;
}

} // namespace

std::optional<PotterHabits> habitsFor(const Plan& plan) {
    for (const auto& step : plan.steps) {
        const auto* wait = std::get_if<ConeWait>(&step);
        if (!wait)
            continue;
        PotterHabits habits;
        habits.firingCone = wait->cone;
        habits.looksFrom = wait->set - TemperatureDifference::fromCelsius(60);
        return habits;
    }
    return std::nullopt;
}

PracticePotter::PracticePotter(PotterHabits habits, std::uint64_t seed)
    : m_habits(std::move(habits)), m_chance(seed, 4) {}

std::vector<PracticeLook> PracticePotter::watch(Instant now, PracticeSpyhole& spyhole) {
    const auto display = spyhole.display();
    const bool idle = m_down || (m_next && now < *m_next) || (!m_next && display < m_habits.looksFrom);
    if (idle)
        return {};
    auto looks = lookNow(now, spyhole);
    std::erase_if(looks, [this](const PracticeLook& look) { return m_lying.contains(look.cone); });
    for (const auto& look : looks)
        if (look.hour >= 6.0)
            m_lying.insert(look.cone);
    m_next = now + pauseAfter(looks);
    m_down = m_lying.contains(m_habits.firingCone);
    if (m_down)
        spyhole.coneDown(m_habits.firingCone);
    return looks;
}

std::vector<PracticeLook> PracticePotter::lookNow(Instant now, const PracticeSpyhole& spyhole) {
    std::vector<PracticeLook> looks;
    for (const auto& seen : spyhole.pack()) {
        const double read = seen.hour + m_habits.hourSd * m_chance.normal();
        looks.push_back({now, seen.cone, inHalves(read)});
    }
    return looks;
}

Duration PracticePotter::pauseAfter(const std::vector<PracticeLook>& looks) const {
    Duration pause = m_habits.whileStanding;
    for (const auto& look : looks) {
        if (look.cone == m_habits.firingCone && look.hour >= 1.0)
            pause = std::min<Duration>(pause, m_habits.nearDown);
        else if (look.hour >= 1.0)
            pause = std::min<Duration>(pause, m_habits.onceMoving);
    }
    return pause;
}

} // namespace ringhold
