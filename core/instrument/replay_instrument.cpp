#include "core/instrument/replay_instrument.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace ringhold {

std::vector<Sample> samplesOf(const Curve& curve, const std::string& label) {
    std::vector<Sample> samples;
    samples.reserve(curve.size());
    for (const auto& point : curve)
        samples.push_back({point.at, label, Quantity::temperature, point.temperature.celsius()});
    return samples;
}

ReplayInstrument::ReplayInstrument(std::vector<Sample> samples, double speed, std::string title)
    : m_samples(std::move(samples)), m_pace(speed), m_title(std::move(title)) {
    std::stable_sort(m_samples.begin(), m_samples.end(),
                     [](const Sample& a, const Sample& b) { return a.at < b.at; });
}

Status ReplayInstrument::open(InstrumentListener& listener) {
    if (m_samples.empty())
        return Error{ErrorKind::badInput, m_title + " has no readings to replay"};
    if (auto status = m_pace.check(); !status)
        return status;
    m_listener = &listener;
    m_next = 0;
    m_pace.stop();
    m_listener->onLink(LinkState::waiting, {});
    return {};
}

void ReplayInstrument::close() {
    m_listener = nullptr;
}

std::optional<Instant> ReplayInstrument::advance(Instant wall) {
    if (m_listener && !m_pace.started()) {
        m_pace.start(wall, m_samples.front().at);
        m_listener->onLink(LinkState::connected, {});
    }
    // The listener may close the instrument at any sample.
    while (m_listener && m_next < m_samples.size() && m_samples[m_next].at <= m_pace.kilnTime(wall))
        m_listener->onSample(m_samples[m_next++]);
    if (!m_listener)
        return std::nullopt;
    if (m_next < m_samples.size())
        return m_pace.wallTime(m_samples[m_next].at);
    std::exchange(m_listener, nullptr)->onLink(LinkState::ended, {});
    return std::nullopt;
}

std::string ReplayInstrument::description() const {
    return fmt::format("{} replayed, {:g} times as fast", m_title, m_pace.speed());
}

} // namespace ringhold
