#include "core/thermocouple/tolerance.h"

#include "core/thermocouple/thermocouple.h"

#include <algorithm>
#include <cmath>
#include <string_view>

namespace ringhold {

namespace {

/// The greater of floor_C and base_C + share |t|.
struct Limit {
    std::string_view types;
    ToleranceClass toleranceClass;
    double from_C;
    double to_C;
    double floor_C;
    double share;
    double base_C = 0;
};

using enum ToleranceClass;

// R and S class 1 is 1 + 0.003 (t - 1100) above 1100 °C, hence its base.
constexpr Limit limits[] = {
    {"KN", iec1, -40, 1000, 1.5, 0.004},
    {"E", iec1, -40, 800, 1.5, 0.004},
    {"J", iec1, -40, 750, 1.5, 0.004},
    {"T", iec1, -40, 350, 0.5, 0.004},
    {"RS", iec1, 0, 1600, 1.0, 0.003, 1 - 0.003 * 1100},
    {"KN", iec2, -40, 1200, 2.5, 0.0075},
    {"E", iec2, -40, 900, 2.5, 0.0075},
    {"J", iec2, -40, 750, 2.5, 0.0075},
    {"T", iec2, -40, 350, 1.0, 0.0075},
    {"RS", iec2, 0, 1600, 1.5, 0.0025},
    {"B", iec2, 600, 1700, 0, 0.0025},
    {"EKN", iec3, -200, 40, 2.5, 0.015},
    {"T", iec3, -200, 40, 1.0, 0.015},
    {"B", iec3, 600, 1700, 4.0, 0.005},
    {"KN", astmStandard, 0, 1260, 2.2, 0.0075},
    {"E", astmStandard, 0, 870, 1.7, 0.005},
    {"J", astmStandard, 0, 760, 2.2, 0.0075},
    {"T", astmStandard, 0, 370, 1.0, 0.0075},
    {"RS", astmStandard, 0, 1480, 1.5, 0.0025},
    {"B", astmStandard, 870, 1700, 0, 0.005},
    {"KN", astmSpecial, 0, 1260, 1.1, 0.004},
    {"E", astmSpecial, 0, 870, 1.0, 0.004},
    {"J", astmSpecial, 0, 760, 1.1, 0.004},
    {"T", astmSpecial, 0, 370, 0.5, 0.004},
    {"RS", astmSpecial, 0, 1480, 0.6, 0.001},
    {"B", astmSpecial, 870, 1700, 0, 0.0025},
};

bool isForCold(const Limit& limit) {
    return limit.to_C < 100;
}

} // namespace

std::optional<Tolerance> tolerance(ThermocoupleType type, ToleranceClass toleranceClass, Temperature at) {
    const auto limit = std::find_if(std::begin(limits), std::end(limits), [&](const Limit& l) {
        return l.toleranceClass == toleranceClass && l.types.find(name(type)) != l.types.npos;
    });
    if (limit == std::end(limits))
        return std::nullopt;
    const double t_C = at.celsius();
    const double top_C = isForCold(*limit) ? limit->to_C : definedRange(type).high.celsius();
    if (!(t_C >= limit->from_C && t_C <= top_C))
        return std::nullopt;
    const double size_C = std::max(limit->floor_C, limit->base_C + limit->share * std::abs(t_C));
    return Tolerance{TemperatureDifference::fromCelsius(size_C), t_C > limit->to_C};
}

} // namespace ringhold
