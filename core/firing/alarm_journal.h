// The path of alarm events to the disk, as whoever watches a firing sees it.
#pragma once

#include "core/firing/alarm_event.h"

namespace ringhold {

class AlarmJournal {
  public:
    virtual ~AlarmJournal() = default;
    /// Takes an event. Never waits for the disk, never drops one.
    virtual void append(const AlarmEvent& event) = 0;
};

} // namespace ringhold
