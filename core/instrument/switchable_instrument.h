// An instrument that can be exchanged for another while a firing listens to it.
#pragma once

#include "core/instrument/instrument.h"

#include <memory>

namespace ringhold {

/// Whatever it holds just now, or nothing: readings by hand, with an empty description.
class SwitchableInstrument final : public Instrument {
  public:
    explicit SwitchableInstrument(std::unique_ptr<Instrument> inner) : m_inner(std::move(inner)) {}
    ~SwitchableInstrument() override { close(); }

    /// Lets go of what it held and listens to this one, if it is open; null for readings by hand. When that
    /// cannot be opened it goes on as it was.
    Status use(std::unique_ptr<Instrument> inner);

    Status open(InstrumentListener& listener) override;
    void close() override;
    /// Looks every second whether there is something to do, where what it holds wakes itself or is not there:
    /// it may be another by then.
    std::optional<Instant> advance(Instant wall) override;
    Instant kilnTime(Instant wall) const override { return m_inner ? m_inner->kilnTime(wall) : wall; }
    std::string description() const override { return m_inner ? m_inner->description() : std::string(); }

  private:
    std::unique_ptr<Instrument> m_inner;
    InstrumentListener* m_listener = nullptr;
};

} // namespace ringhold
