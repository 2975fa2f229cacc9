// A firing in its growth rings, live in a book.
#pragma once

#include "tests/support/live_climb.h"

namespace ringhold::test {

/// Up to 1280 °C by 15:00, down to 1076 °C, half an hour there, then rings of 8 min at 1040 °C and 15 min at
/// 1076 °C from 15:45 on: the first is drawn, the second has come to its low at 16:18. Cone 9 was seen down.
inline Plan ringPlan(int count = 3) {
    Plan plan = LiveClimb::plan();
    plan.steps.back() =
        Hold{Temperature::fromCelsius(1076), std::chrono::minutes(30), TemperatureDifference::fromCelsius(3)};
    plan.steps.push_back(Rings{count, Temperature::fromCelsius(1040), std::chrono::minutes(8),
                               Temperature::fromCelsius(1076), std::chrono::minutes(15)});
    return plan;
}

class LiveRings : public LiveClimb {
  public:
    /// As it stands `minutes` after 12:00, from 258 to 266: in the second low.
    explicit LiveRings(int minutes = 262)
        : LiveClimb({{0, 1100},
                     {180, 1280},
                     {195, 1076},
                     {225, 1076},
                     {228, 1040},
                     {236, 1040},
                     {240, 1076},
                     {255, 1076},
                     {258, 1040},
                     {minutes, 1040}},
                    ringPlan()) {
        look(160, "8", 6);
        look(180, "9", 6);
    }
};

} // namespace ringhold::test
