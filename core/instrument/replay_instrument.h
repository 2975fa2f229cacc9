// A past curve played again, as if its kiln were firing now.
#pragma once

#include "core/instrument/instrument.h"
#include "core/instrument/kiln_pace.h"
#include "core/units/curve.h"

#include <cstddef>
#include <string>
#include <vector>

namespace ringhold {

/// The points of a curve as temperature samples of one channel.
std::vector<Sample> samplesOf(const Curve& curve, const std::string& label = {});

/// Gives samples at their own past instants, the first of them with the first advance(); the kiln's time is
/// that of the past. Ends after the last.
class ReplayInstrument final : public Instrument {
  public:
    /// In any order; those of one instant stay in the order given. `title` names them: a file, say.
    ReplayInstrument(std::vector<Sample> samples, double speed, std::string title);

    /// badInput when there is nothing to play or the speed makes no sense. Plays from the beginning each
    /// time.
    Status open(InstrumentListener& listener) override;
    void close() override;
    std::optional<Instant> advance(Instant wall) override;
    Instant kilnTime(Instant wall) const override { return m_pace.kilnTime(wall); }
    std::string description() const override;

  private:
    std::vector<Sample> m_samples;
    KilnPace m_pace;
    std::string m_title;
    InstrumentListener* m_listener = nullptr;
    std::size_t m_next = 0;
};

} // namespace ringhold
