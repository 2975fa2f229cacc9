#include "core/learn/firing_energy.h"

#include "core/watch/energy_meter.h"

#include <algorithm>

namespace ringhold {

namespace {

const Channel* channelOf(const FiringRecord& record, ChannelId id) {
    const auto channel = std::ranges::find(record.channels, id, &Channel::id);
    return channel == record.channels.end() ? nullptr : &*channel;
}

bool hasReadings(const FiringRecord& record, Quantity quantity) {
    return std::ranges::any_of(record.readings, [&](const Reading& reading) {
        const Channel* channel = channelOf(record, reading.channel);
        return !reading.struck && channel && channel->quantity == quantity;
    });
}

struct Told {
    const Channel* channel;
    const Reading* reading;
};

/// The readings of volts and of that quantity, those of volts first where both are of one instant.
std::vector<Told> readingsOf(const FiringRecord& record, Quantity quantity) {
    std::vector<Told> told;
    for (const auto& reading : record.readings) {
        const Channel* channel = channelOf(record, reading.channel);
        if (channel && !reading.struck &&
            (channel->quantity == quantity || channel->quantity == Quantity::lineVolts))
            told.push_back({channel, &reading});
    }
    std::ranges::stable_sort(told, {}, [](const Told& next) {
        return std::pair(next.reading->at, next.channel->quantity != Quantity::lineVolts);
    });
    return told;
}

std::optional<Energy> addedUp(const FiringRecord& record, Quantity quantity) {
    EnergyMeter meter(record.kiln.ratedPower, record.kiln.ratedVolts);
    for (const auto& [channel, reading] : readingsOf(record, quantity))
        meter.add(*channel, reading->at, reading->value);
    return meter.soFar();
}

} // namespace

double KnownEnergy::relativeError() const {
    switch (source) {
    case EnergySource::meterStands:
        return 0.02;
    case EnergySource::voltsAndAmps:
        return 0.05;
    case EnergySource::ratedVoltsAndAmps:
        return 0.08;
    case EnergySource::dutyAndRatedPower:
        return 0.10;
    }
    return 1;
}

std::vector<KnownEnergy> energiesKnown(const FiringRecord& record) {
    std::vector<KnownEnergy> known;
    const auto tell = [&](std::optional<Energy> energy, EnergySource source) {
        if (energy && energy->joules > 0)
            known.push_back({*energy, source});
    };
    tell(energyByMeter(record.meterStands), EnergySource::meterStands);
    tell(addedUp(record, Quantity::lineAmps), hasReadings(record, Quantity::lineVolts)
                                                  ? EnergySource::voltsAndAmps
                                                  : EnergySource::ratedVoltsAndAmps);
    tell(addedUp(record, Quantity::duty), EnergySource::dutyAndRatedPower);
    return known;
}

std::optional<KnownEnergy> electricityOf(const FiringRecord& record) {
    const auto known = energiesKnown(record);
    return known.empty() ? std::nullopt : std::optional(known.front());
}

} // namespace ringhold
