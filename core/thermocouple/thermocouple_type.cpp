#include "core/thermocouple/thermocouple_type.h"

#include <array>

namespace ringhold {

namespace {

struct Named {
    ThermocoupleType type;
    std::string_view upper;
    std::string_view lower;
};

constexpr std::array types{Named{ThermocoupleType::B, "B", "b"}, Named{ThermocoupleType::E, "E", "e"},
                           Named{ThermocoupleType::J, "J", "j"}, Named{ThermocoupleType::K, "K", "k"},
                           Named{ThermocoupleType::N, "N", "n"}, Named{ThermocoupleType::R, "R", "r"},
                           Named{ThermocoupleType::S, "S", "s"}, Named{ThermocoupleType::T, "T", "t"}};

} // namespace

std::string_view name(ThermocoupleType type) {
    for (const auto& named : types)
        if (named.type == type)
            return named.upper;
    return {};
}

std::optional<ThermocoupleType> thermocoupleTypeNamed(std::string_view text) {
    for (const auto& named : types)
        if (text == named.upper || text == named.lower)
            return named.type;
    return std::nullopt;
}

} // namespace ringhold
