// Every instrument that this program can listen to.
#pragma once

#include "core/base/clock.h"
#include "core/instrument/instrument_factory.h"

namespace ringhold {

class AppInstrumentFactory final : public InstrumentFactory {
  public:
    /// The clock must outlive the factory and what it makes.
    explicit AppInstrumentFactory(const Clock& clock) : m_clock(clock) {}

    std::vector<InstrumentKind> kinds() const override;
    std::vector<InstrumentFound> found() const override;
    Result<std::unique_ptr<Instrument>> make(const InstrumentSpec& spec) override;

  private:
    const Clock& m_clock;
};

} // namespace ringhold
