// Watches a hold while it goes on: whether the band is left, and whether it is going to be.
#pragma once

#include "core/watch/control_chart.h"
#include "core/watch/drift.h"
#include "core/watch/hold_noise.h"
#include "core/watch/hold_statistics.h"

#include <deque>
#include <optional>

namespace ringhold {

/// Tuned by tests/study/hold_study.cpp, whose table tells what they come to.
struct HoldWatchSettings {
    Duration confirm = std::chrono::minutes(1); ///< out of the band for so long before it counts
    double slackOfBand = 1.0 / 8;               ///< the CUSUM's reference value K, share of the half width
    double leastLimit_min = 1.8;     ///< its limit H is at least the half width for so many minutes
    double falseAlarmsPerHour = .14; ///< that H allows, by the noise the readings show
    double ewmaWeight = 0.2;         ///< of the newest minute
    double ewmaWidth = 4;            ///< limits in standard deviations of the average
    double leastEwmaOfBand = 0.3;    ///< and at least this share of the half width
};

enum class HoldSide { cold, hot };

struct HoldBreach {
    HoldSide side = HoldSide::cold;
    Instant since;          ///< when the band was left
    Temperature farthest;   ///< from the target, noise taken off
    bool confirmed = false; ///< lasts longer than the confirm time
};

/// How long until the edge is reached at this drift: the 5 %, 50 % and 95 % points. Nothing for "not within 6
/// h".
struct TimeToLeave {
    std::optional<Duration> earliest;
    std::optional<Duration> likely;
    std::optional<Duration> latest;
};

struct HoldDrift {
    HoldSide side = HoldSide::cold;
    Instant since;             ///< where the charts think it began
    Instant flagged;           ///< when it was first out of the charts' limits
    TemperatureDifference off; ///< the level now, minus the target
    Rate rate;
    RateInterval rate90;
    /// Nothing when it stands still off the middle.
    std::optional<TimeToLeave> leaves;
};

/// Takes the readings of one hold, from the kiln's arrival on, O(1) each. Breaches are told from readings
/// freed of spikes, drift from minute means by EWMA and CUSUM (core/watch/control_chart.h) about the target;
/// their limits follow the noise that the readings show, likeness of neighbours allowed for. A value that
/// stands for several minutes counts for each of them, at most 15. The charts begin when the arrival has
/// settled. One thread at a time.
class HoldWatch {
  public:
    HoldWatch(const HoldBand& band, Instant from, const HoldWatchSettings& settings = {});

    /// In time order; readings before `from` are left out.
    void add(const CurvePoint& reading);

    const HoldBand& band() const { return m_band; }
    Instant from() const { return m_from; }
    /// The present breach as it stands at that instant, not before the last reading.
    std::optional<HoldBreach> breach(Instant now) const;
    /// The drift or offset that the charts show now. Stays until the level is back.
    std::optional<HoldDrift> drift() const;
    /// The drift now, flagged or not; nothing before there are 8 minutes.
    std::optional<HoldDrift> trend() const;
    bool settled() const { return m_chartsFrom.has_value(); }
    const HoldNoise& noise() const { return m_noise; }
    /// H of the CUSUM now, °C min.
    double limit_Cmin() const;
    /// Either way from the target, °C.
    double ewmaLimit_C() const;

  private:
    struct MinuteMean {
        Instant middle;
        double off_C; ///< from the target
    };
    void watchBreach(const CurvePoint& reading);
    void average(const CurvePoint& reading);
    void closeMinute(Instant middle, double off_C, int minutes);
    void chart(double off_C, int minutes, Instant at);
    bool settle(double off_C, Instant at);
    HoldDrift driftSince(Instant since) const;
    double slack_C() const;

    HoldBand m_band;
    Instant m_from;
    HoldWatchSettings m_settings;
    HoldNoise m_noise;

    std::deque<CurvePoint> m_lastThree;
    std::optional<double> m_smooth_C; ///< off the target
    std::optional<Instant> m_smoothAt;
    std::optional<HoldBreach> m_breach;

    Instant m_minuteStart;
    double m_minuteSum_C = 0;
    int m_minuteCount = 0;
    std::optional<Instant> m_lastAt;
    std::deque<MinuteMean> m_minutes; ///< the last half hour

    int m_near = 0; ///< minutes in a row that arrival was near the target
    std::optional<Instant> m_chartsFrom;
    EwmaChart m_ewma;
    CusumChart m_cusum;
    Instant m_upperSince, m_lowerSince; ///< when the sums last were 0
    std::optional<HoldDrift> m_flag;
};

} // namespace ringhold
