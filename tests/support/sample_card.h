// A glaze card with something in every field, for tests of whatever keeps or hands on cards.
#pragma once

#include "core/glaze/glaze_card.h"

namespace ringhold::test {

/// "Ice 3": its figures have no short form in binary, so that a card that comes back rounded is found out.
inline GlazeCard sampleCard() {
    const auto C = Temperature::fromCelsius;
    GlazeCard card;
    card.name = "Ice 3";
    card.cone = "9";
    card.top = C(1271.3);
    card.running = "fast above 1260";
    card.growLow = C(1010);
    card.growHigh = C(1115.7);
    card.colourTemperatures = "blue below 1050";
    card.habits = {{C(1085.3), C(1115), "bars"}, {C(1030), C(1060), "fans"}};
    card.application = "thick";
    card.recipe = {{"frit", 48.5, false, 485, "", {{"SiO2", 60.1}, {"Na2O", 14}}},
                   {"zinc oxide", 26.3, false, std::nullopt, "ZnO", {}},
                   {"cobalt", 0.5, true, 5, "CoCO3", {}}};
    card.notes = "sieve twice";
    return card;
}

} // namespace ringhold::test
