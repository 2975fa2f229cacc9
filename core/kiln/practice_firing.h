// A practice firing ready made: a plan for a crystalline glaze, and a kiln drawn by chance.
#pragma once

#include "core/kiln/practice_kiln.h"

#include <cstdint>
#include <span>
#include <string>

namespace ringhold {

/// Climb, wait for cone 9, drop, growth hold, five growth rings, cool to 600 °C: about 17 h.
Plan practicePlan();

/// The nature of cones of the built-in table, in the order named, without any deviation. Names that the table
/// does not have are left out.
std::vector<PracticeConeNature> practiceCones(std::span<const std::string> names);

/// A sound kiln whose secrets are drawn from the seed: probe offset (standard deviation 8 °C, at most 20),
/// place of the pack (3 °C), each cone's own deviation (2 °C) and bending exponent (about 1.35). The pack is
/// cones 8, 9, 10.
PracticeSettings drawnPracticeSettings(Plan plan, std::uint64_t seed);

} // namespace ringhold
