// The practice kiln: a whole kiln with its controller, supply, probe and cones, in which a firing can be
// practised and everything else be tried. Seeded: the same settings give the same firing.
#pragma once

#include "core/kiln/chance.h"
#include "core/kiln/practice_cone.h"
#include "core/kiln/practice_controller.h"
#include "core/kiln/practice_fault.h"
#include "core/kiln/practice_spyhole.h"
#include "core/kiln/two_node_kiln.h"
#include "core/plan/plan.h"

#include <cstdint>
#include <optional>
#include <vector>

namespace ringhold {

struct PracticeSettings {
    Plan plan;
    std::uint64_t seed = 1; ///< of the noise

    KilnConstants kiln;
    Volts line{240.0};
    Volts lineSd{0.5}; ///< of its slow wandering

    std::chrono::seconds probeLag{45}; ///< first order
    TemperatureDifference probeOffset; ///< the probe reads so much above its place
    TemperatureDifference noiseSd = TemperatureDifference::fromCelsius(0.3);
    std::chrono::seconds noiseCorrelation{0}; ///< 0: each reading's noise is its own

    TemperatureDifference place; ///< the pack is so much hotter than the probe's place
    std::vector<PracticeConeNature> cones;
    TimedFaults faults;

    /// What a forecast should find: probe minus what the cones feel, each cone's own deviation aside.
    TemperatureDifference trueOffset() const { return probeOffset - place; }
};

/// What comes out of the kiln's instrument at one time.
struct PracticeReading {
    bool silent = false;              ///< nothing at all comes
    std::optional<Temperature> probe; ///< nothing when the probe is open
    Volts line;
    Amps amps; ///< mean over the switching cycle: volts times amps is the power
};

class PracticeKiln final : public PracticeSpyhole {
  public:
    explicit PracticeKiln(PracticeSettings settings);

    /// Lives through the next `seconds`.
    void advance(std::chrono::seconds seconds);

    std::chrono::seconds elapsed() const { return m_elapsed; }
    /// Repeats the frozen value while there is such a fault, otherwise what the probe shows now.
    PracticeReading reading() const;
    /// The plan is done.
    bool finished() const { return m_controller.finished(); }
    /// The plan's step that the controller follows.
    std::size_t step() const { return m_controller.step(); }

    std::vector<ConeSeen> pack() const override;
    std::optional<Temperature> display() const override;
    bool coneDown(std::string_view cone) override { return m_controller.coneDown(cone); }

    /// The truth, which no instrument tells.
    KilnState state() const { return m_state; }
    Power power() const { return m_power; }
    const PracticeSettings& settings() const { return m_settings; }

  private:
    void liveOneSecond();
    void supply();
    void heat();
    void feel();
    std::optional<double> fault(FaultKind kind) const {
        return activeSize(m_settings.faults, kind, m_elapsed);
    }

    PracticeSettings m_settings;
    PracticeController m_controller;
    std::vector<PracticeCone> m_cones;
    Chance m_probeChance;
    Chance m_lineChance;
    Wander m_probeNoise;
    Wander m_lineNoise;

    std::chrono::seconds m_elapsed{0};
    KilnState m_state;
    Volts m_line;
    Power m_power;
    Temperature m_probe;  ///< its junction, offset and noise aside
    Temperature m_shown;  ///< what the probe shows
    Temperature m_frozen; ///< what it showed last before it froze
};

} // namespace ringhold
