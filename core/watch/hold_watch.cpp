#include "core/watch/hold_watch.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace ringhold {

namespace {

constexpr Duration minute = std::chrono::minutes(1);
constexpr Duration spikeNeighbours = std::chrono::minutes(2);
constexpr Duration trendWindow = std::chrono::minutes(30);
constexpr std::size_t leastTrend = 8;   ///< minutes
constexpr int longestStanding_min = 15; ///< that one reading counts for
constexpr double smoothing_s = 30;      ///< of the readings that tell a breach
constexpr double backInsideShare = 0.9; ///< of the band: a breach ends there
constexpr int nearMinutes = 5;          ///< in a row, to have settled
constexpr Duration settledAtLast = std::chrono::minutes(25);
constexpr double unlikely90 = 1.644854; ///< standard deviations, 5 % beyond
constexpr double farthestAhead_h = 6;
constexpr double usualNoiseOfBand = 1.0 / 6; ///< assumed before the readings tell

HoldSide sideOf(double off_C) {
    return off_C > 0 ? HoldSide::hot : HoldSide::cold;
}

double medianOf(double a, double b, double c) {
    return std::max(std::min(a, b), std::min(std::max(a, b), c));
}

} // namespace

HoldWatch::HoldWatch(const HoldBand& band, Instant from, const HoldWatchSettings& settings)
    : m_band(band), m_from(from), m_settings(settings), m_noise(band.halfWidth.celsius() * usualNoiseOfBand),
      m_minuteStart(from), m_ewma({0, 1, settings.ewmaWeight, settings.ewmaWidth}),
      m_cusum({0, slack_C(), std::numeric_limits<double>::max()}), m_upperSince(from), m_lowerSince(from) {}

double HoldWatch::slack_C() const {
    return m_band.halfWidth.celsius() * m_settings.slackOfBand;
}

/// A one-sided CUSUM of noise of intensity S per minute, drawn down by K, is above H at a rate of about
/// 2 K²/S exp(-2 K H / S) a minute (reflected Brownian motion with drift); H is what makes both sides
/// together as rare as wanted.
double HoldWatch::limit_Cmin() const {
    const double least = m_settings.leastLimit_min * m_band.halfWidth.celsius();
    const double K = slack_C();
    const double S = m_noise.intensity_C2min();
    const double rarely_per_min = m_settings.falseAlarmsPerHour / 60;
    if (K <= 0 || S <= 0)
        return least;
    return std::max(least, S / (2 * K) * std::log(std::max(1.0, 4 * K * K / S / rarely_per_min)));
}

double HoldWatch::ewmaLimit_C() const {
    const double sd_C =
        std::sqrt(m_noise.intensity_C2min() * m_settings.ewmaWeight / (2 - m_settings.ewmaWeight));
    return std::max(m_settings.leastEwmaOfBand * m_band.halfWidth.celsius(), m_settings.ewmaWidth * sd_C);
}

void HoldWatch::add(const CurvePoint& reading) {
    if (reading.at < m_from || (m_lastAt && reading.at <= *m_lastAt))
        return;
    m_noise.add(reading);
    watchBreach(reading);
    average(reading);
    m_lastAt = reading.at;
}

void HoldWatch::watchBreach(const CurvePoint& reading) {
    m_lastThree.push_back(reading);
    if (m_lastThree.size() > 3)
        m_lastThree.pop_front();
    double off_C = (reading.temperature - m_band.target).celsius();
    if (m_lastThree.size() == 3 && m_lastThree[2].at - m_lastThree[0].at <= 2 * spikeNeighbours) {
        const auto off = [&](std::size_t i) {
            return (m_lastThree[i].temperature - m_band.target).celsius();
        };
        off_C = medianOf(off(0), off(1), off(2));
    }
    const double share = m_smoothAt ? -std::expm1(-inSeconds(reading.at - *m_smoothAt) / smoothing_s) : 1.0;
    m_smooth_C = m_smooth_C.value_or(off_C) + share * (off_C - m_smooth_C.value_or(off_C));
    m_smoothAt = reading.at;
    const double away_C = std::abs(*m_smooth_C);
    const double edge_C = m_band.halfWidth.celsius();
    const Temperature level = m_band.target + TemperatureDifference::fromCelsius(*m_smooth_C);
    if (m_breach && (away_C < edge_C * backInsideShare || sideOf(*m_smooth_C) != m_breach->side))
        m_breach.reset();
    if (!m_breach && away_C > edge_C)
        m_breach = HoldBreach{sideOf(*m_smooth_C), reading.at, level, false};
    if (m_breach && away_C > std::abs((m_breach->farthest - m_band.target).celsius()))
        m_breach->farthest = level;
}

std::optional<HoldBreach> HoldWatch::breach(Instant now) const {
    auto breach = m_breach;
    if (breach)
        breach->confirmed = now - breach->since >= m_settings.confirm;
    return breach;
}

void HoldWatch::average(const CurvePoint& reading) {
    const double widest_C = 1.5 * m_band.halfWidth.celsius();
    const double off_C = std::clamp((reading.temperature - m_band.target).celsius(), -widest_C, widest_C);
    if (reading.at - m_minuteStart >= minute && m_minuteCount > 0) {
        const int minutes = std::clamp(static_cast<int>(std::lround(inMinutes(*m_lastAt - m_minuteStart))), 1,
                                       longestStanding_min);
        closeMinute(m_minuteStart + (*m_lastAt - m_minuteStart) / 2, m_minuteSum_C / m_minuteCount, minutes);
        m_minuteStart += minute;
        m_minuteSum_C = m_minuteCount = 0;
    }
    // far apart: each reading is a mean of its own
    if (m_lastAt && reading.at - *m_lastAt >= minute) {
        const int minutes = std::clamp(static_cast<int>(std::lround(inMinutes(reading.at - *m_lastAt))), 1,
                                       longestStanding_min);
        closeMinute(reading.at, off_C, minutes);
        m_minuteStart = reading.at;
        return;
    }
    if (m_minuteCount == 0)
        m_minuteStart = std::max(m_minuteStart, reading.at - minute / 2);
    m_minuteSum_C += off_C;
    ++m_minuteCount;
}

void HoldWatch::closeMinute(Instant middle, double off_C, int minutes) {
    m_minutes.push_back({middle, off_C});
    while (m_minutes.size() > leastTrend && middle - m_minutes.front().middle > trendWindow)
        m_minutes.pop_front();
    if (!m_chartsFrom && !settle(off_C, middle))
        return;
    chart(off_C, minutes, middle);
}

bool HoldWatch::settle(double off_C, Instant at) {
    m_near = std::abs(off_C) <= m_band.halfWidth.celsius() / 2 ? m_near + 1 : 0;
    if (m_near < nearMinutes && at - m_from < settledAtLast)
        return false;
    m_chartsFrom = m_upperSince = m_lowerSince = at;
    return true;
}

void HoldWatch::chart(double off_C, int minutes, Instant at) {
    for (int i = 0; i < minutes; ++i) {
        m_ewma.take(off_C);
        m_cusum.take(off_C);
    }
    if (m_cusum.upper() <= 0)
        m_upperSince = at;
    if (m_cusum.lower() <= 0)
        m_lowerSince = at;
    const double limit = limit_Cmin();
    const double average_C = m_ewma.average();
    const bool out =
        m_cusum.upper() > limit || m_cusum.lower() > limit || std::abs(average_C) > ewmaLimit_C();
    if (m_flag && std::abs(average_C) <= slack_C()) {
        m_flag.reset();
        m_cusum.reset();
    } else if (out && (!m_flag || m_flag->side != sideOf(average_C))) {
        m_flag = driftSince(average_C > 0 ? m_upperSince : m_lowerSince);
        m_flag->side = sideOf(average_C);
        m_flag->flagged = at;
    }
}

HoldDrift HoldWatch::driftSince(Instant since) const {
    std::size_t first = 0;
    while (first + leastTrend < m_minutes.size() && m_minutes[first].middle < since)
        ++first;
    double meanT = 0, meanX = 0, tt = 0, tx = 0;
    const auto n = static_cast<double>(m_minutes.size() - first);
    const Instant end = m_minutes.back().middle;
    for (std::size_t i = first; i < m_minutes.size(); ++i) {
        meanT += inHours(m_minutes[i].middle - end) / n;
        meanX += m_minutes[i].off_C / n;
    }
    for (std::size_t i = first; i < m_minutes.size(); ++i) {
        const double t = inHours(m_minutes[i].middle - end) - meanT;
        tt += t * t;
        tx += t * (m_minutes[i].off_C - meanX);
    }
    const double slope = tt > 0 ? tx / tt : 0;
    const double spacing_min = n > 1 ? inMinutes(end - m_minutes[first].middle) / (n - 1) : 1;
    const double sd = tt > 0 ? std::sqrt(m_noise.intensity_C2min() / std::max(spacing_min, 1.0) / tt) : 0;
    const auto rate = [](double value) { return Rate::fromCelsiusPerHour(value); };
    HoldDrift drift;
    drift.since = since;
    drift.off = TemperatureDifference::fromCelsius(meanX - slope * meanT);
    drift.rate = rate(slope);
    drift.rate90 = {rate(slope - unlikely90 * sd), rate(slope + unlikely90 * sd)};
    drift.side = sideOf(slope);
    // away from the target only: with the slope's ends, the edge that the likely slope goes to
    const double way_C = (slope > 0 ? 1 : -1) * m_band.halfWidth.celsius() - drift.off.celsius();
    const auto until = [&](double s) -> std::optional<Duration> {
        const double hours = way_C / s;
        return s * slope > 0 && hours >= 0 && hours < farthestAhead_h
                   ? std::optional(durationFromHours(hours))
                   : std::nullopt;
    };
    const double fast = slope > 0 ? slope + unlikely90 * sd : slope - unlikely90 * sd;
    const double slow = slope > 0 ? slope - unlikely90 * sd : slope + unlikely90 * sd;
    if (const auto likely = until(slope))
        drift.leaves = TimeToLeave{until(fast), likely, until(slow)};
    return drift;
}

std::optional<HoldDrift> HoldWatch::trend() const {
    if (m_minutes.size() < leastTrend)
        return std::nullopt;
    auto drift = driftSince(m_minutes.front().middle);
    drift.flagged = m_minutes.back().middle;
    return drift;
}

std::optional<HoldDrift> HoldWatch::drift() const {
    if (!m_flag)
        return std::nullopt;
    HoldDrift now = driftSince(m_flag->since);
    now.flagged = m_flag->flagged;
    now.side = m_flag->side;
    return now;
}

} // namespace ringhold
