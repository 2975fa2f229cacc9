#include "core/learn/firing_cost.h"

#include <algorithm>
#include <numeric>

namespace ringhold {

namespace {

/// A price without an amount is no cost; an amount without a price is an unknown one.
double product(std::optional<double> amount, std::optional<double> price, bool& complete) {
    complete = complete && (!amount || price || *amount <= 0);
    return amount.value_or(0) * price.value_or(0);
}

} // namespace

std::optional<double> gasOf(const FiringRecord& record) {
    std::vector<MeterStand> stands;
    std::ranges::copy_if(record.meterStands, std::back_inserter(stands), [](const MeterStand& stand) {
        return !stand.struck && stand.unit == MeterUnit::cubicMetres;
    });
    if (stands.size() < 2)
        return std::nullopt;
    const auto [first, last] = std::ranges::minmax_element(stands, {}, &MeterStand::at);
    const double used = last->stand - first->stand;
    return used >= 0 ? std::optional(used) : std::nullopt;
}

FiringUse useOf(const FiringRecord& record) {
    FiringUse use;
    use.electricity = electricityOf(record);
    use.pricePerKilowattHour = record.kiln.pricePerKilowattHour;
    use.gas = gasOf(record);
    use.gasPrice = record.kiln.gasPrice;
    return use;
}

FiringCost costOf(const FiringUse& use) {
    FiringCost cost;
    const auto kWh = use.electricity ? std::optional(use.electricity->energy.kilowattHours()) : std::nullopt;
    cost.electricity = product(kWh, use.pricePerKilowattHour, cost.complete);
    cost.gas = product(use.gas, use.gasPrice, cost.complete);
    cost.other = use.other.value_or(0);
    return cost;
}

std::vector<double> sharesOf(double cost, const std::vector<double>& rooms) {
    std::vector<double> shares = rooms;
    for (double& share : shares)
        share = std::max(share, 0.0);
    if (std::accumulate(shares.begin(), shares.end(), 0.0) <= 0)
        std::ranges::fill(shares, 1.0);
    const double whole = std::accumulate(shares.begin(), shares.end(), 0.0);
    for (double& share : shares)
        share *= cost / whole;
    return shares;
}

} // namespace ringhold
