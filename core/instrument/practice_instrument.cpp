#include "core/instrument/practice_instrument.h"

#include <fmt/format.h>

#include <utility>

namespace ringhold {

PracticeInstrument::PracticeInstrument(PracticeSettings settings, double speed,
                                       std::chrono::seconds samplePeriod)
    : m_kiln(std::move(settings)), m_pace(speed), m_period(samplePeriod) {}

Status PracticeInstrument::open(InstrumentListener& listener) {
    if (m_kiln.finished())
        return Error{ErrorKind::badInput, "the practice kiln needs a plan with a step to follow"};
    if (m_period < std::chrono::seconds(1))
        return Error{ErrorKind::badInput, "the practice kiln's sample period must be at least 1 s"};
    if (auto status = m_pace.check(); !status)
        return status;
    m_listener = &listener;
    m_listener->onLink(LinkState::waiting, {});
    return {};
}

void PracticeInstrument::close() {
    m_listener = nullptr;
}

std::optional<Instant> PracticeInstrument::advance(Instant wall) {
    if (m_listener && !m_pace.started()) {
        m_pace.start(wall, wall);
        m_began = m_next = wall;
        m_listener->onLink(LinkState::connected, {});
    }
    // The listener may close the instrument, or end the firing by a look, at any sample.
    while (m_listener && !m_kiln.finished() && m_next <= m_pace.kilnTime(wall)) {
        const auto age = std::chrono::duration_cast<std::chrono::seconds>(m_next - m_began);
        m_kiln.advance(age - m_kiln.elapsed());
        send(m_next);
        m_next += m_period;
    }
    if (!m_listener)
        return std::nullopt;
    if (!m_kiln.finished())
        return m_pace.wallTime(m_next);
    std::exchange(m_listener, nullptr)->onLink(LinkState::ended, "the plan is done");
    return std::nullopt;
}

void PracticeInstrument::send(Instant at) {
    const auto reading = m_kiln.reading();
    if (reading.silent)
        return;
    const auto probe = reading.probe ? std::optional(reading.probe->celsius()) : std::nullopt;
    for (const Sample& sample : {Sample{at, "probe", Quantity::temperature, probe},
                                 Sample{at, "volts", Quantity::lineVolts, reading.line.volts},
                                 Sample{at, "amps", Quantity::lineAmps, reading.amps.amps}})
        if (m_listener)
            m_listener->onSample(sample);
}

std::string PracticeInstrument::description() const {
    return fmt::format("practice kiln, seed {}, {:g} times as fast", m_kiln.settings().seed, m_pace.speed());
}

} // namespace ringhold
