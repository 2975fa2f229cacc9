// The enumerations of the records as the book writes them.
#pragma once

#include "core/firing/records.h"

#include <optional>
#include <string_view>

namespace ringhold {

std::string_view bookText(Fuel fuel);
std::string_view bookText(Quantity quantity);
std::string_view bookText(Crystals crystals);

/// Back again; nothing for a text that stands for none.
std::optional<Fuel> fuelOf(std::string_view text);
std::optional<Quantity> quantityOf(std::string_view text);
std::optional<Crystals> crystalsOf(std::string_view text);

} // namespace ringhold
