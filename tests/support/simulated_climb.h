// A climb whose truth is drawn at random, for studies of the cone forecast: offset, each cone's deviation,
// activation energy, bending exponent, rate, sags and stalls, reading noise, looks read with error and
// rounded. The truth is integrated here, second by second, apart from the program's own code.
#pragma once

#include "core/cones/forecast.h"

#include <cstdint>
#include <random>
#include <string>
#include <vector>

namespace ringhold::test {

/// Repeatable on every machine: the standard's distributions are not.
class StudyRandom {
  public:
    explicit StudyRandom(std::uint64_t seed) : m_engine(seed) {}
    double unit() { return static_cast<double>(m_engine() >> 11) * 0x1p-53; }
    double uniform(double low, double high) { return low + (high - low) * unit(); }
    double normal(double sd);

  private:
    std::mt19937_64 m_engine;
};

/// What makes a forecast err; a study switches one off to see what it does.
struct ErrorCauses {
    double deviation_C = 2;        ///< sd of each cone's own deviation
    double activationShare = 0.06; ///< sd of E about the table's
    bool exponents = true;         ///< 1.15 to 1.6, else the forecast's own mean
    bool slowdowns = true;         ///< sags and stalls
    double noise_C = 0.7;          ///< of a reading
    double lookSd_h = 0.3;
    bool looksOnHour = true; ///< at the very moment of 1, 2 and 3 o'clock; else every eight minutes (at
                             ///< 60 °C/h) by the clock
};

class SimulatedClimb {
  public:
    static constexpr int coneCount = 2;
    static constexpr const char* coneNames[coneCount] = {"8", "9"}; ///< guide and firing cone

    SimulatedClimb(double offset_C, const ErrorCauses& causes, StudyRandom& random);

    double rate_C_per_h() const { return m_rate_C_per_h; }
    static Instant at(double second);
    /// Seconds at which a cone's tip reaches that hour (6: down).
    double reaches_s(int cone, double hour) const;
    double down_s(int cone) const { return reaches_s(cone, 6); }

    /// As an instrument reads it up to that second: every 10 s or every minute.
    Curve readings(double until_s, StudyRandom& random) const;
    /// A look at that second.
    WatchedLook look(int cone, double second, StudyRandom& random) const;

  private:
    struct Cone {
        double theta_K;
        double lnA;
        double deviation_C;
        std::vector<double> work; ///< second by second
    };
    struct Slowdown {
        double from_s;
        double to_s;
        double factor;
    };
    double hourAt(int cone, double second) const;
    double rateAt(double second) const;

    ErrorCauses m_causes;
    double m_rate_C_per_h;
    double m_exponent;
    bool m_lively;
    std::vector<Slowdown> m_slowdowns;
    Cone m_cones[coneCount];
    std::vector<double> m_probe_C; ///< second by second, without noise
};

} // namespace ringhold::test
