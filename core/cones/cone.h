// Cones by name and series.
#pragma once

#include <optional>
#include <string_view>

namespace ringhold {

/// The series that the published chart keeps apart. Their end points are never mixed.
enum class ConeType { selfSupporting, large, small, selfSupportingIronFree, largeIronFree };

/// As the table writes it: "self-supporting", "large iron-free" ...
std::string_view name(ConeType type);
std::optional<ConeType> coneTypeNamed(std::string_view text);

} // namespace ringhold
