#include "app/instruments/spec_reader.h"

#include <fmt/format.h>

#include <charconv>

namespace ringhold {

std::optional<std::string> SpecReader::takeText(const std::string& name) {
    const auto taken = m_left.extract(name);
    return taken ? std::optional(taken.mapped()) : std::nullopt;
}

template <class Number>
Number SpecReader::take(const std::string& name, Number otherwise, Number low, Number high) {
    const auto given = takeText(name);
    if (!given)
        return otherwise;
    Number value{};
    const auto* last = given->data() + given->size();
    const auto [end, error] = std::from_chars(given->data(), last, value);
    if (error == std::errc{} && end == last && value >= low && value <= high)
        return value;
    blame(fmt::format("{}={} is no number from {} to {}", name, *given, low, high));
    return otherwise;
}

double SpecReader::takeNumber(const std::string& name, double otherwise, double low, double high) {
    return take(name, otherwise, low, high);
}

long SpecReader::takeWhole(const std::string& name, long otherwise, long low, long high) {
    return take(name, otherwise, low, high);
}

void SpecReader::blame(const std::string& what) {
    if (m_fault.empty())
        m_fault = what;
}

Status SpecReader::fault() const {
    if (m_fault.empty() && m_left.empty())
        return {};
    const auto what = !m_fault.empty() ? m_fault : "there is no parameter \"" + m_left.begin()->first + "\"";
    return Error{ErrorKind::badInput, m_scheme + ": " + what};
}

} // namespace ringhold
