// An instrument that says what it is told to say, for tests and benches.
#pragma once

#include "core/instrument/instrument.h"

#include <string>

namespace ringhold::test {

/// Where the one that is open can be reached: it belongs to the session that listens to it.
class FedInstrument final : public Instrument {
  public:
    explicit FedInstrument(FedInstrument*& open) : m_open(open) {}
    ~FedInstrument() override { close(); }

    Status open(InstrumentListener& listener) override {
        m_listener = &listener;
        m_open = this;
        listener.onLink(LinkState::connected, {});
        return {};
    }
    void close() override {
        m_listener = nullptr;
        if (m_open == this)
            m_open = nullptr;
    }
    std::optional<Instant> advance(Instant) override { return std::nullopt; }
    std::string description() const override { return "fed"; }

    /// Nothing for an open probe.
    void say(Instant at, const std::string& label, Quantity quantity, std::optional<double> value) {
        m_listener->onSample({at, label, quantity, value});
    }

  private:
    FedInstrument*& m_open;
    InstrumentListener* m_listener = nullptr;
};

} // namespace ringhold::test
