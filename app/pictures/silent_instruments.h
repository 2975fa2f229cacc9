// A factory for where nothing is to be listened to.
#pragma once

#include "core/instrument/instrument_factory.h"

namespace ringhold {

/// Tells the kinds there are, and makes none.
class SilentInstruments final : public InstrumentFactory {
  public:
    explicit SilentInstruments(std::vector<InstrumentKind> kinds) : m_kinds(std::move(kinds)) {}
    std::vector<InstrumentKind> kinds() const override { return m_kinds; }
    Result<std::unique_ptr<Instrument>> make(const InstrumentSpec&) override {
        return Error{ErrorKind::notFound, "pictures listen to nothing"};
    }

  private:
    std::vector<InstrumentKind> m_kinds;
};

} // namespace ringhold
