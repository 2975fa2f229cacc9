#include "core/kiln/practice_kiln.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace ringhold {

namespace {

constexpr std::chrono::seconds tick{1};
constexpr std::chrono::seconds lineCorrelation{60};

Rate fullPowerClimb(const KilnConstants& kiln) {
    return Rate::fromCelsiusPerHour(kiln.fullPower.watts / kiln.chamber_J_per_K * 3600.0);
}

std::vector<PracticeCone> standing(const std::vector<PracticeConeNature>& natures) {
    return {natures.begin(), natures.end()};
}

} // namespace

PracticeKiln::PracticeKiln(PracticeSettings settings)
    : m_settings(std::move(settings)),
      m_controller(m_settings.plan, fullPowerClimb(m_settings.kiln), m_settings.probeLag),
      m_cones(standing(m_settings.cones)), m_probeChance(m_settings.seed, 1),
      m_lineChance(m_settings.seed, 2),
      m_probeNoise(m_settings.noiseSd.celsius(), m_settings.noiseCorrelation),
      m_lineNoise(m_settings.lineSd.volts, lineCorrelation), m_state{m_settings.kiln.surroundings,
                                                                     m_settings.kiln.surroundings},
      m_line(m_settings.line), m_probe(m_settings.kiln.surroundings),
      m_shown(m_probe + m_settings.probeOffset), m_frozen(m_shown) {}

void PracticeKiln::advance(std::chrono::seconds seconds) {
    for (; seconds > std::chrono::seconds(0); seconds -= tick)
        liveOneSecond();
}

void PracticeKiln::liveOneSecond() {
    supply();
    heat();
    m_elapsed += tick;
    feel();
}

void PracticeKiln::supply() {
    const double sag_V = fault(FaultKind::sag).value_or(0.0);
    m_line.volts = std::max(0.0, m_settings.line.volts + m_lineNoise.next(m_lineChance, tick) - sag_V);
    double share = m_controller.demand(display(), tick);
    if (fault(FaultKind::stuckRelay))
        share = 1.0;
    const double resistance = fault(FaultKind::wornElements).value_or(1.0);
    m_power = {m_settings.kiln.powerAt(m_line).watts * share / resistance};
}

void PracticeKiln::heat() {
    KilnConstants kiln = m_settings.kiln;
    kiln.chamberLoss_W_per_K += fault(FaultKind::openDoor).value_or(0.0);
    m_state = advanced(kiln, m_state, m_power, tick);
}

void PracticeKiln::feel() {
    const double approach = -std::expm1(-inSeconds(tick) / inSeconds(m_settings.probeLag));
    m_probe = m_probe + (m_state.chamber - m_probe) * approach;
    const double noise_C =
        m_probeNoise.next(m_probeChance, tick) * fault(FaultKind::noisyProbe).value_or(1.0);
    const double aged_C = fault(FaultKind::ageingProbe).value_or(0.0) *
                          activeHours(m_settings.faults, FaultKind::ageingProbe, m_elapsed).value_or(0.0);
    m_shown = m_probe + m_settings.probeOffset + TemperatureDifference::fromCelsius(noise_C - aged_C);
    if (fault(FaultKind::reversedProbe))
        m_shown = m_settings.kiln.surroundings - (m_shown - m_settings.kiln.surroundings);
    if (!fault(FaultKind::frozenValue))
        m_frozen = m_shown;
    for (auto& cone : m_cones)
        cone.advance(m_state.chamber + m_settings.place, tick);
}

PracticeReading PracticeKiln::reading() const {
    PracticeReading reading;
    reading.silent = fault(FaultKind::silence).has_value();
    if (!fault(FaultKind::openProbe))
        reading.probe = m_frozen;
    reading.line = m_line;
    reading.amps = {m_line.volts > 0 ? m_power.watts / m_line.volts : 0.0};
    return reading;
}

std::vector<ConeSeen> PracticeKiln::pack() const {
    std::vector<ConeSeen> seen;
    for (const auto& cone : m_cones)
        seen.push_back({cone.name(), cone.hour()});
    return seen;
}

std::optional<Temperature> PracticeKiln::display() const {
    return fault(FaultKind::openProbe) ? std::nullopt : std::optional(m_shown);
}

} // namespace ringhold
