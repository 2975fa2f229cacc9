#include "core/watch/recent_values.h"

#include <functional>

namespace ringhold {

void RecentValues::add(Instant at, double value) {
    if (!m_bins.empty() && at <= m_bins.back().last)
        return;
    if (m_bins.empty() || at - m_bins.back().begin >= m_bin)
        m_bins.push_back({at, at, 0, 0, 0, 0});
    auto& bin = m_bins.back();
    bin.last = at;
    bin.sum += value;
    bin.seconds += inSeconds(at - bin.begin);
    bin.newest = value;
    ++bin.count;
    while (m_bins.size() > 8 && at - m_bins.front().begin > m_keep)
        m_bins.pop_front();
}

std::optional<double> RecentValues::meanOver(Instant from, Instant to) const {
    double sum = 0;
    int count = 0;
    for (auto bin = m_bins.rbegin(); bin != m_bins.rend() && bin->middle() > from; ++bin)
        if (bin->middle() <= to) {
            sum += bin->sum;
            count += bin->count;
        }
    return count > 0 ? std::optional(sum / count) : std::nullopt;
}

template <class Better>
std::optional<double> RecentValues::extreme(Instant from, Instant to, Better better) const {
    std::optional<double> best;
    for (auto bin = m_bins.rbegin(); bin != m_bins.rend() && bin->middle() > from; ++bin)
        if (bin->middle() <= to && (!best || better(bin->mean(), *best)))
            best = bin->mean();
    return best;
}

std::optional<double> RecentValues::greatestOver(Instant from, Instant to) const {
    return extreme(from, to, std::greater<>());
}

std::optional<double> RecentValues::leastOver(Instant from, Instant to) const {
    return extreme(from, to, std::less<>());
}

std::optional<double> RecentValues::slopePerHour(Instant to, Duration window) const {
    double n = 0, t = 0, y = 0, tt = 0, ty = 0;
    Instant oldest = to, newest = to - window;
    for (auto bin = m_bins.rbegin(); bin != m_bins.rend() && bin->middle() > to - window; ++bin) {
        if (bin->middle() > to)
            continue;
        const double hours = inHours(bin->middle() - to);
        ++n;
        t += hours;
        y += bin->mean();
        tt += hours * hours;
        ty += hours * bin->mean();
        oldest = bin->middle();
        newest = std::max(newest, bin->middle());
    }
    if (n < 3 || newest - oldest < window * 2 / 3 - m_bin)
        return std::nullopt;
    return (n * ty - t * y) / (n * tt - t * t);
}

} // namespace ringhold
