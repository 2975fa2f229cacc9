#include "app/logging/sample_intake.h"

#include <fmt/format.h>

#include <algorithm>

namespace ringhold {

namespace {

struct Words {
    const char* name; ///< of a channel that has no label
    const char* unit;
};

Words wordsFor(Quantity quantity) {
    switch (quantity) {
    case Quantity::temperature:
        return {"probe", "°C"};
    case Quantity::lineVolts:
        return {"volts", "V"};
    case Quantity::lineAmps:
        return {"amps", "A"};
    case Quantity::oxygenMillivolts:
        return {"oxygen", "mV"};
    case Quantity::duty:
        return {"duty", "of full power"};
    }
    return {"", ""};
}

} // namespace

void SampleIntake::take(const Sample& sample) {
    if (const auto taken = m_firing.take(sample); !taken)
        m_console.complain(taken.error());
}

std::string readingLine(const LiveFiring& firing, const Reading& reading) {
    const auto& channels = firing.record().channels;
    const auto channel = std::ranges::find(channels, reading.channel, &Channel::id);
    if (channel == channels.end())
        return {};
    const auto words = wordsFor(channel->quantity);
    return fmt::format("{}\t{}\t{}\t{}", formatIso8601(reading.at),
                       channel->label.empty() ? words.name : channel->label, reading.value, words.unit);
}

} // namespace ringhold
