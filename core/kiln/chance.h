// Seeded chance that comes out the same on every platform, for practice firings.
#pragma once

#include "core/units/time.h"

#include <cstdint>
#include <optional>
#include <random>

namespace ringhold {

/// A stream of random numbers. Equal seed and stream give equal numbers; streams of one seed are independent.
/// The standard library's own distributions are not used, since each library makes them in its own way.
class Chance {
  public:
    explicit Chance(std::uint64_t seed, std::uint64_t stream = 0);

    /// In [0, 1), evenly.
    double uniform();
    /// Normal with mean 0 and standard deviation 1, by the transform of Box and Muller (Ann. Math. Stat. 29,
    /// 1958, 610).
    double normal();

  private:
    std::mt19937_64 m_engine;
    std::optional<double> m_spare; ///< the transform gives two at a time
};

/// A value that wanders about 0: AR(1), so that its standard deviation is `sd` at any step.
class Wander {
  public:
    /// `correlation` is the time in which the likeness to the past falls to 1/e; 0 makes it white noise.
    Wander(double sd, Duration correlation);
    /// The next value, `step` after the last.
    double next(Chance& chance, Duration step);

  private:
    double m_sd;
    Duration m_correlation;
    std::optional<double> m_value;
};

} // namespace ringhold
