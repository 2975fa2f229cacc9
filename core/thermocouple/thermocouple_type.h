#pragma once

#include <optional>
#include <string_view>

namespace ringhold {

/// Letter-designated thermocouples of IEC 60584-1.
enum class ThermocoupleType { B, E, J, K, N, R, S, T };

/// "K" for K and so on.
std::string_view name(ThermocoupleType type);
/// From one letter, either case; nothing for any other text.
std::optional<ThermocoupleType> thermocoupleTypeNamed(std::string_view text);

} // namespace ringhold
