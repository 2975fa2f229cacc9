// Single figures of a record: peak, readings, supply, energy.
#pragma once

#include "core/firing/firing_record.h"
#include "core/report/report_content.h"

#include <optional>
#include <vector>

namespace ringhold {

/// Spikes of a reading are no peak. Nothing for an empty curve.
std::optional<ReportedPeak> peakOf(const Curve& control);

ReportedReadings readingsOf(const FiringRecord& record, const Curve& control);

/// Nothing without readings of line volts.
std::optional<ReportedSupply> supplyOf(const FiringRecord& record);

/// As energiesKnown() says, with the cost at the kiln's price.
std::vector<ReportedEnergy> energiesOf(const FiringRecord& record);

/// Nothing without two stands of the gas meter.
std::optional<ReportedGas> gasReported(const FiringRecord& record);

} // namespace ringhold
