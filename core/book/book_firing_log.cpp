#include "core/book/book_firing_log.h"

namespace ringhold {

namespace {

template <class Value>
Status statusOf(const Result<Value>& result) {
    return result ? Status() : Status(result.error());
}

} // namespace

Status BookFiringLog::add(const Reading& reading) {
    return statusOf(m_writer.add(std::span(&reading, 1)));
}

Status BookFiringLog::strike(ChannelId channel, Instant at, Instant when) {
    return statusOf(m_writer.strikeReadings(channel, at, at, when));
}

Status BookFiringLog::restore(ChannelId channel, Instant at, Instant when) {
    return statusOf(m_writer.restoreReadings(channel, at, at, when));
}

} // namespace ringhold
