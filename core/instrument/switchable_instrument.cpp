#include "core/instrument/switchable_instrument.h"

#include <utility>

namespace ringhold {

Status SwitchableInstrument::open(InstrumentListener& listener) {
    m_listener = &listener;
    return m_inner ? m_inner->open(listener) : Status();
}

void SwitchableInstrument::close() {
    m_listener = nullptr;
    if (m_inner)
        m_inner->close();
}

Status SwitchableInstrument::use(std::unique_ptr<Instrument> inner) {
    if (m_inner)
        m_inner->close(); // first: both may be on one port
    auto former = std::exchange(m_inner, std::move(inner));
    if (!m_listener)
        return {};
    m_listener->onLink(LinkState::waiting, {});
    Status opened = m_inner ? m_inner->open(*m_listener) : Status();
    if (!opened) {
        m_inner = std::move(former);
        if (m_inner)
            (void)m_inner->open(*m_listener); // as it could be before
    }
    return opened;
}

std::optional<Instant> SwitchableInstrument::advance(Instant wall) {
    if (!m_listener)
        return std::nullopt;
    const auto next = m_inner ? m_inner->advance(wall) : std::nullopt;
    return m_listener ? std::optional(next.value_or(wall + std::chrono::seconds(1))) : std::nullopt;
}

} // namespace ringhold
