// The last while of a train of values, thinned so that it costs little however often it is read.
#pragma once

#include "core/units/time.h"

#include <deque>
#include <optional>

namespace ringhold {

/// Means over short bins, for a limited time back. Adding is O(1); asking goes over the bins of the window.
class RecentValues {
  public:
    explicit RecentValues(Duration bin = std::chrono::seconds(15), Duration keep = std::chrono::minutes(90))
        : m_bin(bin), m_keep(keep) {}

    /// Instants rise; one that does not is left out.
    void add(Instant at, double value);
    void clear() { m_bins.clear(); }

    bool empty() const { return m_bins.empty(); }
    Instant lastAt() const { return m_bins.back().last; }
    double last() const { return m_bins.back().newest; }
    Instant firstAt() const { return m_bins.front().last; }
    /// Of the bins after `from` up to `to`; nothing when there are none.
    std::optional<double> meanOver(Instant from, Instant to) const;
    std::optional<double> greatestOver(Instant from, Instant to) const;
    std::optional<double> leastOver(Instant from, Instant to) const;
    /// Least-squares slope over the window that ends there; nothing unless three bins span two thirds of it.
    std::optional<double> slopePerHour(Instant to, Duration window) const;

  private:
    struct Bin {
        Instant begin;
        Instant last;
        double sum = 0;
        double seconds = 0; ///< sum of the instants since begin
        double newest = 0;
        int count = 0;

        double mean() const { return sum / count; }
        Instant middle() const { return begin + durationFromSeconds(seconds / count); }
    };
    template <class Better>
    std::optional<double> extreme(Instant from, Instant to, Better better) const;

    Duration m_bin;
    Duration m_keep;
    std::deque<Bin> m_bins;
};

} // namespace ringhold
