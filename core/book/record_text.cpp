#include "core/book/record_text.h"

#include <array>

namespace ringhold {

namespace {

template <class Enum>
struct Named {
    Enum value;
    std::string_view text;
};

constexpr std::array fuels{Named<Fuel>{Fuel::electric, "electric"}, Named<Fuel>{Fuel::gas, "gas"},
                           Named<Fuel>{Fuel::wood, "wood"}};
constexpr std::array quantities{Named<Quantity>{Quantity::temperature, "temperature"},
                                Named<Quantity>{Quantity::lineVolts, "line volts"},
                                Named<Quantity>{Quantity::lineAmps, "line amps"},
                                Named<Quantity>{Quantity::oxygenMillivolts, "oxygen millivolts"},
                                Named<Quantity>{Quantity::duty, "duty"}};
constexpr std::array crystalAmounts{
    Named<Crystals>{Crystals::none, "none"}, Named<Crystals>{Crystals::few, "few"},
    Named<Crystals>{Crystals::many, "many"}, Named<Crystals>{Crystals::covered, "covered"}};

template <class Enum, std::size_t n>
std::string_view textOf(const std::array<Named<Enum>, n>& names, Enum value) {
    for (const auto& named : names)
        if (named.value == value)
            return named.text;
    return {};
}

template <class Enum, std::size_t n>
std::optional<Enum> valueOf(const std::array<Named<Enum>, n>& names, std::string_view text) {
    for (const auto& named : names)
        if (named.text == text)
            return named.value;
    return std::nullopt;
}

} // namespace

std::string_view bookText(Fuel fuel) {
    return textOf(fuels, fuel);
}
std::string_view bookText(Quantity quantity) {
    return textOf(quantities, quantity);
}
std::string_view bookText(Crystals crystals) {
    return textOf(crystalAmounts, crystals);
}

std::optional<Fuel> fuelOf(std::string_view text) {
    return valueOf(fuels, text);
}
std::optional<Quantity> quantityOf(std::string_view text) {
    return valueOf(quantities, text);
}
std::optional<Crystals> crystalsOf(std::string_view text) {
    return valueOf(crystalAmounts, text);
}

} // namespace ringhold
