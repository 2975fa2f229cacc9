// Firings with growth rings, made up at random but known: what the counter ought to find in them.
#pragma once

#include "core/watch/ring_count.h"
#include "tests/core/watch/curve_maker.h"

#include <algorithm>
#include <random>
#include <vector>

namespace ringhold::test {

/// A ring as it was made, in minutes and °C.
struct MadeRing {
    double lowStart, lowMinutes, low_C;
    double highStart, highMinutes, high_C;
};

struct MadeFiring {
    RingLevels levels;
    Curve corners;
    std::vector<MadeRing> rings;
};

/// Builds a firing corner by corner.
class FiringMaker {
  public:
    /// No dwell of a ring is shorter than `shortest_min`.
    FiringMaker(std::mt19937& random, double shortest_min) : m_random(random), m_shortest_min(shortest_min) {}

    double between(double low, double high) {
        return std::uniform_real_distribution<double>(low, high)(m_random);
    }
    bool chance(double share) { return between(0, 1) < share; }

    MadeFiring make() {
        m_high = between(1040, 1110);
        m_move = between(25, 70);
        m_firing = {{celsius(m_high), celsius(m_high - m_move)}, {{atMinute(0), celsius(20)}}, {}};
        climbAndDrop();
        growthHold();
        const int rings = static_cast<int>(between(0, 8.99));
        for (int i = 0; i < rings; ++i)
            ring();
        end();
        return m_firing;
    }

  private:
    void moveTo(double degrees, double rate_C_per_min) {
        m_minute += std::max(0.2, std::abs(degrees - m_degrees) / rate_C_per_min);
        m_degrees = degrees;
        corner();
    }
    void stay(double minutes) {
        m_minute += minutes;
        corner();
    }
    void corner() { m_firing.corners.push_back({atMinute(m_minute), celsius(m_degrees)}); }

    void climbAndDrop() {
        if (chance(0.3)) { // some hold on the way up, at what will be the low
            moveTo(m_high - m_move, 10);
            stay(between(5, 40));
        }
        moveTo(between(m_high + 100, 1300), between(1.5, 10));
        stay(between(0, 10));
        if (chance(0.5)) { // arrives with an overshoot downwards, up to two fifths of the way to the low
            moveTo(m_high - between(0.1, 0.4) * m_move, between(4, 15));
            stay(between(0, 8));
        }
        moveTo(m_high + between(-3, 3), between(4, 15));
    }

    void sag() {
        moveTo(m_high - m_move / 3, between(1, 10));
        stay(between(0, 20));
        moveTo(m_high + between(-3, 3), between(1, 10));
    }

    /// The door opened for a moment.
    void draught() {
        moveTo(m_high - between(0.3, 1.2) * m_move, between(100, 200));
        moveTo(m_high + between(-3, 3), between(30, 50));
    }

    void growthHold() {
        stay(between(15, 120));
        for (int i = static_cast<int>(between(0, 2.5)); i > 0; --i) {
            if (chance(0.7))
                sag();
            else
                draught();
            stay(between(10, 40));
        }
    }

    /// Mostly near the level named, at times off by up to four tenths of the move.
    double off() { return between(-1, 1) * m_move * (chance(0.2) ? 0.4 : 0.15); }

    void ring() {
        MadeRing ring{};
        ring.low_C = m_high - m_move + off();
        moveTo(ring.low_C, between(3, 15));
        ring.lowStart = m_minute;
        ring.lowMinutes = between(m_shortest_min, 15);
        stay(ring.lowMinutes);
        ring.high_C = m_high + between(-0.1, 0.1) * m_move;
        moveTo(ring.high_C, between(2.5, 10));
        ring.highStart = m_minute;
        ring.highMinutes = between(m_shortest_min, 15);
        stay(ring.highMinutes);
        m_firing.rings.push_back(ring);
    }

    void end() {
        if (chance(0.2))
            return;        // the log ends within the last high
        if (chance(0.3)) { // a low without a return
            moveTo(m_high - m_move, between(3, 15));
            stay(between(3, 60));
        }
        if (chance(0.8))
            moveTo(between(100, 900), between(1, 8));
    }

    std::mt19937& m_random;
    double m_shortest_min;
    MadeFiring m_firing{{celsius(0), celsius(0)}, {}, {}};
    double m_high = 0, m_move = 0, m_minute = 0, m_degrees = 20;
};

/// Follows the curve with a probe's lag.
inline Curve lagged(const Curve& readings, double lag_s) {
    Curve slow = readings;
    for (std::size_t i = 1; i < slow.size(); ++i) {
        const double keep = lag_s > 0 ? std::exp(-inSeconds(slow[i].at - slow[i - 1].at) / lag_s) : 0;
        slow[i].temperature =
            readings[i].temperature + (slow[i - 1].temperature - readings[i].temperature) * keep;
    }
    return slow;
}

/// Single wild readings, far enough apart not to touch.
inline Curve spiky(Curve readings, FiringMaker& maker) {
    const double wild[] = {0, 20, 1372, 900};
    for (std::size_t i = 5; i + 5 < readings.size(); i += 5)
        if (maker.chance(0.03))
            readings[i].temperature = maker.chance(0.5)
                                          ? celsius(wild[static_cast<int>(maker.between(0, 3.99))])
                                          : readings[i].temperature + degreesC(maker.between(-80, 80));
    return readings;
}

} // namespace ringhold::test
