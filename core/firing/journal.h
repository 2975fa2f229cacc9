// The durable path of readings, as the live firing sees it. Between append() and onDurable() a reading is in
// memory only: it is drawn hollow and counts as unacknowledged.
#pragma once

#include "core/base/result.h"
#include "core/firing/records.h"

#include <cstdint>

namespace ringhold {

/// Number of a reading handed to a journal. They count up from 1 without a gap, in the order of append().
using Ticket = std::uint64_t;

/// Hears what becomes of the readings. Called in the journal's own thread: return soon, and call neither
/// flush() nor close() from here. Must outlive the journal.
class JournalListener {
  public:
    virtual ~JournalListener() = default;
    /// Every reading up to and including this ticket is on disk, but for those told by onRefused() before.
    virtual void onDurable(Ticket upTo) = 0;
    /// This reading can never be kept: its channel is not in the book, its value is not finite.
    virtual void onRefused(Ticket ticket, const Reading& reading, const Error& why) = 0;
    /// Writing fails: disk full, book gone or held by another program. All readings wait in memory and are
    /// tried again. Told when it begins and again when the cause changes.
    virtual void onFailing(const Error& why) = 0;
    /// Writing works again; onDurable() for what waited follows.
    virtual void onRecovered() = 0;
    /// A channel that keep() took under an id of its own is in the book, under that one. Before onDurable()
    /// of its first reading.
    virtual void onChannel(ChannelId /*given*/, ChannelId /*kept*/) {}
};

class Journal {
  public:
    virtual ~Journal() = default;
    /// Takes a reading. Never waits for the disk, never drops one; safe to call from any thread.
    virtual Ticket append(const Reading& reading) = 0;
    /// Takes a channel: a new one with an id below 0, which the readings of this journal name it by for
    /// ever, or one of the book that was altered. It is written before every reading appended later. Never
    /// waits for the disk either; safe to call from any thread.
    virtual void keep(const Channel& channel) = 0;
};

} // namespace ringhold
