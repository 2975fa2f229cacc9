#include "ui/instrument/instrument_listening.h"

#include "core/base/clock.h"

#include <algorithm>

namespace ringhold {

namespace {

constexpr std::int64_t longestWait_ms = 200;

} // namespace

InstrumentListening::InstrumentListening(const Clock& clock, QObject* parent)
    : QObject(parent), m_clock(clock) {
    m_timer.setSingleShot(true);
    connect(&m_timer, &QTimer::timeout, this, &InstrumentListening::advance);
}

InstrumentListening::~InstrumentListening() {
    stop();
}

Status InstrumentListening::start(std::unique_ptr<Instrument> instrument) {
    stop();
    m_instrument = std::move(instrument);
    if (const auto opened = m_instrument->open(*this); !opened) {
        m_instrument.reset();
        return opened;
    }
    advance();
    return {};
}

void InstrumentListening::stop() {
    m_timer.stop();
    if (m_instrument)
        m_instrument->close();
    m_instrument.reset();
}

void InstrumentListening::advance() {
    if (!m_instrument)
        return;
    const Instant wall = m_clock.now();
    const auto next = m_instrument->advance(wall);
    if (!next)
        return;
    const auto wait = std::chrono::ceil<std::chrono::milliseconds>(*next - wall);
    m_timer.start(static_cast<int>(std::clamp<std::int64_t>(wait.count(), 1, longestWait_ms)));
}

void InstrumentListening::onSample(const Sample& heard) {
    Q_EMIT sample(heard);
}

void InstrumentListening::onLine(const std::string& text, bool understood) {
    Q_EMIT line(QString::fromStdString(text), understood);
}

void InstrumentListening::onLink(LinkState state, const std::string& detail) {
    Q_EMIT linkChanged(state, QString::fromStdString(detail));
}

} // namespace ringhold
