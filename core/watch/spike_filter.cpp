#include "core/watch/spike_filter.h"

#include <algorithm>
#include <chrono>
#include <vector>

namespace ringhold {
namespace {

constexpr Duration reach = std::chrono::seconds(45);
constexpr Duration widestGap = std::chrono::minutes(2);

Temperature medianOf(const Curve& readings, std::size_t first, std::size_t last) {
    std::vector<Temperature> values;
    values.reserve(last - first + 1);
    for (std::size_t i = first; i <= last; ++i)
        values.push_back(readings[i].temperature);
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    return *middle;
}

bool isClose(const Curve& readings, std::size_t i) { // to the next
    return readings[i + 1].at - readings[i].at <= widestGap;
}

/// How many neighbours on either side the median at i takes.
std::size_t neighbours(const Curve& readings, std::size_t i) {
    const std::size_t room = std::min(i, readings.size() - 1 - i);
    std::size_t count = room > 0 && isClose(readings, i - 1) && isClose(readings, i) ? 1 : 0;
    while (count > 0 && count < room && readings[i].at - readings[i - count - 1].at <= reach &&
           readings[i + count + 1].at - readings[i].at <= reach)
        ++count;
    return count;
}

} // namespace

Curve withoutSpikes(const Curve& readings) {
    Curve steady = readings;
    for (std::size_t i = 0; i < readings.size(); ++i)
        if (const std::size_t count = neighbours(readings, i); count > 0)
            steady[i].temperature = medianOf(readings, i - count, i + count);
    if (const std::size_t last = readings.size() - 1; readings.size() >= 3) {
        if (isClose(readings, 0) && isClose(readings, 1))
            steady[0].temperature = medianOf(readings, 0, 2);
        if (isClose(readings, last - 1) && isClose(readings, last - 2))
            steady[last].temperature = medianOf(readings, last - 2, last);
    }
    return steady;
}

} // namespace ringhold
