#include "core/cones/hour_belief.h"

#include "core/cones/bending.h"

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

constexpr double negligible = 1e-5;

} // namespace

void HourBelief::add(const OffsetPosterior& posterior, std::size_t pack, std::size_t cone,
                     const ShiftGrid& shifts, std::span<const double> lnWork, double weight) {
    for (std::size_t e = 0; e < posterior.exponents.size(); ++e) {
        const BendingLaw bending(posterior.exponents[e].exponent);
        const auto& shift = posterior.packs[pack].shiftByExponent[cone][e];
        for (std::size_t i = 0; i < shift.size(); ++i) {
            const double belief = shift[i] * posterior.exponents[e].weight * weight;
            if (belief < negligible)
                continue;
            const double lnW = shifts.interpolated(lnWork, shift.at_C(i));
            m_hours.emplace_back(bending.hourAt(std::exp(std::min(lnW, 1.0))), belief);
            m_total += belief;
            if (lnW >= 0)
                m_down += belief;
        }
    }
}

Interval<double> HourBelief::interval() const {
    auto sorted = m_hours;
    std::ranges::sort(sorted);
    const auto at = [&](double share) {
        double below = 0;
        for (const auto& [hour, weight] : sorted)
            if ((below += weight) >= share * m_total)
                return hour;
        return sorted.back().first;
    };
    return {at(0.05), at(0.5), at(0.95)};
}

} // namespace ringhold
