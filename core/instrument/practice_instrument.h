// The practice kiln behind the same interface as a real one.
#pragma once

#include "core/instrument/instrument.h"
#include "core/instrument/kiln_pace.h"
#include "core/kiln/practice_kiln.h"

#include <chrono>
#include <optional>
#include <string>

namespace ringhold {

/// Sends the channels "probe" (°C), "volts" and "amps" at each sample period of kiln time, the first with the
/// first advance(), which is when its firing begins. Ends when its plan is done.
class PracticeInstrument final : public Instrument {
  public:
    PracticeInstrument(PracticeSettings settings, double speed,
                       std::chrono::seconds samplePeriod = std::chrono::seconds(10));

    /// badInput for an empty plan, a speed that makes no sense or a period below 1 s. Opened
    /// again after close() it tells what was missed.
    Status open(InstrumentListener& listener) override;
    void close() override;
    /// Lives through all that is due, sample by sample, however much it is.
    std::optional<Instant> advance(Instant wall) override;
    Instant kilnTime(Instant wall) const override { return m_pace.kilnTime(wall); }
    std::string description() const override;

    /// For a practice potter, at the kiln time of the last sample.
    PracticeSpyhole& spyhole() { return m_kiln; }
    /// The truth, which no instrument tells.
    const PracticeKiln& kiln() const { return m_kiln; }

  private:
    void send(Instant at);

    PracticeKiln m_kiln;
    KilnPace m_pace;
    std::chrono::seconds m_period;
    InstrumentListener* m_listener = nullptr;
    Instant m_began; ///< kiln time and wall clock at once
    Instant m_next;  ///< kiln time of the next sample
};

} // namespace ringhold
