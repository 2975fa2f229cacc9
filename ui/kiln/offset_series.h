// What firings have told of a kiln's probes: one series for each probe and place of the cones.
#pragma once

#include "core/cones/offset_prior.h"
#include "core/firing/records.h"

#include <QString>

#include <vector>

namespace ringhold {

class Preferences;

struct OffsetSeries {
    Probe probe;
    std::string place;              ///< of the cones; empty where no firing has told anything yet
    std::vector<FiledOffset> told;  ///< in time order
    OffsetPrior now;                ///< what the next firing begins with
    std::vector<OffsetPrior> begun; ///< what each firing of `told` would begin with by those before it

    /// Half width of the 90 % interval.
    TemperatureDifference halfWidth() const;
};

/// Firings that a series needs before it is told as a figure.
inline constexpr int firingsToTell = 3;

/// In the order of the probes, then of the places' first telling. A probe of which nothing is told has one
/// series with no place: it starts afresh.
std::vector<OffsetSeries> offsetSeries(const std::vector<Probe>& probes,
                                       const std::vector<FiledOffset>& filed);

/// "T1 · middle shelf", "T1, retired · middle shelf".
QString seriesName(const OffsetSeries& series);
/// "reads 7 °C high (3 to 11), from 5 firings"; "not enough firings yet: 2 of 3".
QString seriesWords(const OffsetSeries& series, const Preferences& preferences);

/// "The next firing starts from + 6 °C, 90 % between + 2 and + 10, from 5 firings."; "A new probe: ± 16 °C
/// until cones have told."; of a retired one that its series is closed.
QString startWords(const OffsetSeries& series, const Preferences& preferences);

/// "7 °C high (3 to 11)", "2 °C high (1 low to 5 high)", "right (3 low to 3 high)".
QString offsetWords(TemperatureDifference mean, TemperatureDifference halfWidth,
                    const Preferences& preferences);

} // namespace ringhold
