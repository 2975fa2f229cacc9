// Reads the parameters of an instrument's specification, and tells what is wrong with them.
#pragma once

#include "core/instrument/instrument_spec.h"

#include <map>
#include <optional>
#include <string>

namespace ringhold {

/// Take every parameter that the scheme knows, then look at fault(): the first value that could not be read,
/// or a parameter that nobody took.
class SpecReader {
  public:
    explicit SpecReader(const InstrumentSpec& spec) : m_scheme(spec.scheme), m_left(spec.parameters) {}

    std::optional<std::string> takeText(const std::string& name);
    double takeNumber(const std::string& name, double otherwise, double low, double high);
    long takeWhole(const std::string& name, long otherwise, long low, long high);
    /// For those who take from the map themselves.
    std::map<std::string, std::string>& left() { return m_left; }
    void blame(const std::string& what);
    Status fault() const;

  private:
    template <class Number>
    Number take(const std::string& name, Number otherwise, Number low, Number high);

    std::string m_scheme;
    std::map<std::string, std::string> m_left;
    std::string m_fault;
};

} // namespace ringhold
