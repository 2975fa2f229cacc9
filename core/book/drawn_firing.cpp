#include "core/book/drawn_firing.h"

#include "core/book/channel_rows.h"
#include "core/book/read_sql.h"
#include "core/book/reader.h"
#include "core/book/whole_firing.h"
#include "core/firing/live_firing.h"

#include <algorithm>
#include <map>

namespace ringhold {

namespace {

bool ofTemperature(const Channel& channel) {
    return channel.quantity == Quantity::temperature;
}

/// In the order in which they are asked to be the control channel: instruments before readings by hand.
std::vector<Channel> temperaturesOf(const std::vector<Channel>& channels) {
    std::vector<Channel> temperatures;
    std::ranges::copy_if(channels, std::back_inserter(temperatures), ofTemperature);
    std::ranges::stable_partition(temperatures,
                                  [](const Channel& channel) { return channel.label != byHandLabel; });
    return temperatures;
}

/// In time order.
void addReadings(FiringRecord& record, const std::vector<Reading>& readings) {
    const auto before = static_cast<std::ptrdiff_t>(record.readings.size());
    record.readings.insert(record.readings.end(), readings.begin(), readings.end());
    std::ranges::inplace_merge(record.readings, record.readings.begin() + before, {}, &Reading::at);
}

/// The control curve, and those of the others where they are asked for.
void drawTemperatures(SQLite::Database& database, DrawnFiring& drawn, bool others) {
    std::map<ChannelId, Curve> beside; // in the order of the record's channels
    for (const auto& channel : temperaturesOf(drawn.record.channels)) {
        if (drawn.controlChannel && !others)
            return;
        auto [curve, byHand] = drawnChannel(database, channel.id);
        addReadings(drawn.record, byHand);
        if (curve.empty())
            continue;
        if (drawn.controlChannel) {
            beside[channel.id] = std::move(curve);
            continue;
        }
        drawn.controlChannel = channel.id;
        drawn.control = std::move(curve);
    }
    for (auto& [channel, curve] : beside)
        drawn.others.push_back(std::move(curve));
}

std::optional<Probe> probeOf(const FiringRecord& record, std::optional<ChannelId> named) {
    for (const auto& channel : record.channels)
        for (const auto& probe : record.probes)
            if (channel.id == named && channel.probe == probe.id)
                return probe;
    return std::nullopt;
}

} // namespace

Result<DrawnFiring> drawnFiring(const Book& book, FiringId id, const DrawnParts& parts) {
    const auto firing = BookReader(book).firing(id);
    if (!firing)
        return firing.error();
    return sql::read(book, [&](SQLite::Database& database) {
        DrawnFiring drawn;
        drawn.record = firingWithoutReadings(database, *firing, Pictures::without);
        drawTemperatures(database, drawn, parts.others);
        drawn.probe = probeOf(drawn.record, drawn.controlChannel);
        if (parts.power)
            for (const auto& channel : drawn.record.channels)
                if (!ofTemperature(channel))
                    addReadings(drawn.record, readingsOf(database, channel.id));
        return drawn;
    });
}

} // namespace ringhold
