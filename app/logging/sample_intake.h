// Takes the samples of an instrument into a live firing without losing any.
#pragma once

#include "app/console.h"
#include "core/firing/live_firing.h"

#include <deque>

namespace ringhold {

/// A sample that cannot be taken yet, since its channel cannot be made on a full disk, waits in memory and is
/// tried again with the next; one that makes no sense is complained about.
class SampleIntake {
  public:
    /// Both must outlive it.
    SampleIntake(LiveFiring& firing, Console& console) : m_firing(firing), m_console(console) {}

    void take(const Sample& sample);
    /// Tries again; why samples still wait, or success.
    Status tryWaiting();

  private:
    LiveFiring& m_firing;
    Console& m_console;
    std::deque<Sample> m_waiting;
};

/// The line that tells of a reading: time, channel, value and unit, parted by tabs.
std::string readingLine(const LiveFiring& firing, const Reading& reading);

} // namespace ringhold
