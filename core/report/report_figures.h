// Single figures of a record: peak, readings, supply, energy.
#pragma once

#include "core/firing/firing_record.h"
#include "core/report/report_content.h"

#include <optional>

namespace ringhold {

/// Spikes of a reading are no peak. Nothing for an empty curve.
std::optional<ReportedPeak> peakOf(const Curve& control);

ReportedReadings readingsOf(const FiringRecord& record, const Curve& control);

/// Nothing without readings of line volts.
std::optional<ReportedSupply> supplyOf(const FiringRecord& record);

/// From line amps and volts (the rated volts where none were read), or from the duty and the rated power,
/// corrected for the volts read. Channels of amps are added up. Between readings more than 10 min apart
/// nothing is counted. The error is an assumption: 5 % for volts and amps (the meter, the power factor), 8 %
/// with rated volts, 10 % for the duty (elements age). Nothing where neither was read.
std::optional<ReportedEnergy> energyOf(const FiringRecord& record);

/// By the meters' stands that are not struck: of each kind the last less the first, where there are two.
std::vector<ReportedMeter> metersOf(const FiringRecord& record);

} // namespace ringhold
