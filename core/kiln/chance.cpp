#include "core/kiln/chance.h"

#include <cmath>
#include <numbers>
#include <utility>

namespace ringhold {

namespace {

/// Spreads the bits of seed and stream, so that neighbours give unlike engines.
std::uint64_t mixed(std::uint64_t seed, std::uint64_t stream) {
    std::seed_seq sequence{seed & 0xffffffffU, seed >> 32, stream & 0xffffffffU, stream >> 32};
    std::uint32_t word[2] = {};
    sequence.generate(word, word + 2);
    return (std::uint64_t{word[0]} << 32) | word[1];
}

} // namespace

Chance::Chance(std::uint64_t seed, std::uint64_t stream) : m_engine(mixed(seed, stream)) {}

double Chance::uniform() {
    return std::ldexp(static_cast<double>(m_engine() >> 11), -53);
}

double Chance::normal() {
    if (const auto spare = std::exchange(m_spare, std::nullopt))
        return *spare;
    const double radius = std::sqrt(-2.0 * std::log1p(-uniform()));
    const double angle = 2.0 * std::numbers::pi * uniform();
    m_spare = radius * std::sin(angle);
    return radius * std::cos(angle);
}

Wander::Wander(double sd, Duration correlation) : m_sd(sd), m_correlation(correlation) {}

double Wander::next(Chance& chance, Duration step) {
    const double likeness =
        m_value && m_correlation > Duration(0) ? std::exp(-inSeconds(step) / inSeconds(m_correlation)) : 0.0;
    m_value =
        likeness * m_value.value_or(0.0) + m_sd * std::sqrt(1.0 - likeness * likeness) * chance.normal();
    return *m_value;
}

} // namespace ringhold
