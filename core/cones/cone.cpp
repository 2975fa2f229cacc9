#include "core/cones/cone.h"

#include <array>

namespace ringhold {

namespace {

struct Named {
    ConeType type;
    std::string_view name;
};

constexpr std::array types{Named{ConeType::selfSupporting, "self-supporting"},
                           Named{ConeType::large, "large"}, Named{ConeType::small, "small"},
                           Named{ConeType::selfSupportingIronFree, "self-supporting iron-free"},
                           Named{ConeType::largeIronFree, "large iron-free"}};

} // namespace

std::string_view name(ConeType type) {
    for (const auto& named : types)
        if (named.type == type)
            return named.name;
    return {};
}

std::optional<ConeType> coneTypeNamed(std::string_view text) {
    for (const auto& named : types)
        if (named.name == text)
            return named.type;
    return std::nullopt;
}

} // namespace ringhold
