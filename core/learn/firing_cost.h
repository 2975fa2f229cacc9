// What a firing cost, and each piece's share.
#pragma once

#include "core/firing/firing_record.h"
#include "core/learn/firing_energy.h"

#include <optional>
#include <vector>

namespace ringhold {

/// All in the potter's own currency. What was not used or is not known is absent.
struct FiringUse {
    std::optional<KnownEnergy> electricity;
    std::optional<double> pricePerKilowattHour;
    std::optional<double> gas; ///< in the unit that the price is for: kg, m³, a bottle
    std::optional<double> gasPrice;
    std::optional<double> other; ///< shelves, kiln wash, wear of the elements: whatever the potter counts
};

/// In m³, by the stands of the gas meter: the newest less the oldest, struck ones left out. Nothing for fewer
/// than two, or where the newest is less.
std::optional<double> gasOf(const FiringRecord& record);
/// What the record knows of, at its kiln's prices.
FiringUse useOf(const FiringRecord& record);

struct FiringCost {
    double electricity = 0;
    double gas = 0;
    double other = 0;
    bool complete = true; ///< false where something was used whose price is not known
    double total() const { return electricity + gas + other; }
};

FiringCost costOf(const FiringUse& use);

/// The cost shared out by the room that pieces take (any measure of it); by head where none has a room above
/// 0. As many shares as pieces; they sum to the cost.
std::vector<double> sharesOf(double cost, const std::vector<double>& rooms);

} // namespace ringhold
