// Takes the samples of an instrument into a live firing.
#pragma once

#include "app/console.h"
#include "core/firing/live_firing.h"

namespace ringhold {

/// One that makes no sense is complained about.
class SampleIntake {
  public:
    /// Both must outlive it.
    SampleIntake(LiveFiring& firing, Console& console) : m_firing(firing), m_console(console) {}

    void take(const Sample& sample);

  private:
    LiveFiring& m_firing;
    Console& m_console;
};

/// The line that tells of a reading: time, channel, value and unit, parted by tabs.
std::string readingLine(const LiveFiring& firing, const Reading& reading);

} // namespace ringhold
