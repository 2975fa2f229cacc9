// The readings of one channel, taken out of the book in bulk, for core/book alone. A firing has tens of
// thousands of them, so each is decoded straight from SQLite's row. All throw SQLite::Exception.
#pragma once

#include "core/book/sql.h"
#include "core/firing/records.h"
#include "core/units/curve.h"

#include <vector>

namespace ringhold {

/// With the struck ones, in time order; lines of one instant in the order of writing.
std::vector<Reading> readingsOf(SQLite::Database& database, ChannelId channel);

/// Of all channels in time order; lines of one instant in the order of the channels, then of writing.
std::vector<Reading> readingsOf(SQLite::Database& database, const std::vector<Channel>& channels);

struct DrawnChannel {
    Curve curve; ///< without the struck ones; of several lines of one instant the last written
    std::vector<Reading> byHand; ///< those that a person typed, struck ones too
};

/// For a channel of temperatures.
DrawnChannel drawnChannel(SQLite::Database& database, ChannelId channel);

} // namespace ringhold
