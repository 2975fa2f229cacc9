#include "ui/plot/time_ticks.h"

#include <QDate>
#include <QLocale>
#include <QTime>
#include <date/tz.h>

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

using namespace std::chrono_literals;
using std::chrono::seconds;
using LocalSeconds = date::local_time<seconds>;

constexpr seconds day = 24h;
constexpr seconds steps[] = {1s,    5s, 10s, 15s, 30s, 1min, 2min, 5min, 10min,   15min,
                             30min, 1h, 2h,  3h,  4h,  6h,   12h,  day,  2 * day, 7 * day};

/// One tick's place in civil time; `name` where the clock shows that time twice.
struct Place {
    Instant at;
    LocalSeconds civil;
    QString name;
};

class Zone {
  public:
    explicit Zone(const std::string& name) {
        try {
            m_zone = date::locate_zone(name);
        } catch (const std::exception&) {
            m_zone = nullptr; // as UTC
        }
    }

    LocalSeconds civil(Instant at) const {
        const auto whole = date::floor<seconds>(at);
        return m_zone ? m_zone->to_local(whole) : LocalSeconds(whole.time_since_epoch());
    }
    /// None where the clocks jump over it, two where they show it twice.
    std::vector<Place> instantsOf(LocalSeconds civil) const {
        if (!m_zone)
            return {{Instant(civil.time_since_epoch()), civil, {}}};
        const auto info = m_zone->get_info(civil);
        const auto place = [&](const date::sys_info& side, bool twice) {
            return Place{Instant(civil.time_since_epoch() - side.offset), civil,
                         twice ? QString::fromStdString(side.abbrev) : QString()};
        };
        if (info.result == date::local_info::unique)
            return {place(info.first, false)};
        if (info.result == date::local_info::ambiguous)
            return {place(info.first, true), place(info.second, true)};
        return {};
    }

  private:
    const date::time_zone* m_zone = nullptr;
};

seconds stepFor(seconds length, int most) {
    for (const seconds step : steps)
        if (length / step < std::max(most, 2))
            return step;
    return (length / std::max(most, 2) / day + 1) * day;
}

/// Civil times of the zone at whole steps since midnight; the window is wider than asked by what a zone's
/// change may shift.
std::vector<Place> places(Instant from, Instant to, const Zone& zone, seconds step) {
    std::vector<Place> found;
    const LocalSeconds first = zone.civil(from) - 3h;
    const LocalSeconds last = zone.civil(to) + 3h;
    const seconds unit = std::max(step, day); // steps shorter than a day begin anew each midnight
    auto midnight = LocalSeconds(first.time_since_epoch() / unit * unit);
    for (; midnight <= last; midnight += unit)
        for (seconds t = std::max(0s, (first - midnight) / step * step); t < unit && midnight + t <= last;
             t += step) {
            auto instants = zone.instantsOf(midnight + t);
            if (step > 1h && instants.size() > 1)
                instants.pop_back();
            for (auto& place : instants)
                if (place.at >= from && place.at <= to)
                    found.push_back(std::move(place));
        }
    std::ranges::sort(found, {}, &Place::at);
    return found;
}

QDate dateOf(LocalSeconds civil) {
    constexpr qint64 julianDayOf1970 = 2440588;
    return QDate::fromJulianDay(julianDayOf1970 + date::floor<date::days>(civil).time_since_epoch().count());
}

QString labelOf(const Place& place, seconds step) {
    const QLocale english(QLocale::English);
    if (step >= day)
        return english.toString(dateOf(place.civil), QStringLiteral("d MMM"));
    const seconds sinceMidnight = place.civil - date::floor<date::days>(place.civil);
    const QString time = QTime(0, 0)
                             .addSecs(static_cast<int>(sinceMidnight.count()))
                             .toString(step < 1min ? QStringLiteral("HH:mm:ss") : QStringLiteral("HH:mm"));
    return place.name.isEmpty() ? time : time + QLatin1Char(' ') + place.name;
}

QString hoursLabel(qint64 minutes) {
    const QString sign = minutes < 0 ? QString(QChar(0x2212)) : QString();
    const qint64 size = std::abs(minutes);
    if (size % 60 == 0)
        return sign + QStringLiteral("%1 h").arg(size / 60);
    return sign + QStringLiteral("%1:%2 h").arg(size / 60).arg(size % 60, 2, 10, QLatin1Char('0'));
}

} // namespace

std::vector<TimeTick> timeTicks(Instant from, Instant to, const std::string& zoneName, int most) {
    const Zone zone(zoneName);
    const seconds step = stepFor(date::ceil<seconds>(to - from), most);
    std::vector<TimeTick> ticks;
    QDate before;
    for (const Place& place : places(from, to, zone, step)) {
        const QDate date = dateOf(place.civil);
        const bool tell = date != before && step < day;
        const QLocale english(QLocale::English);
        ticks.push_back({place.at, labelOf(place, step),
                         tell ? english.toString(date, QStringLiteral("ddd d MMM")) : QString()});
        before = date;
    }
    return ticks;
}

std::vector<HourTick> hourTicks(double from, double to, int most) {
    const seconds length(static_cast<qint64>(std::ceil((to - from) * 3600)));
    const auto step = std::max<seconds>(stepFor(length, most), 1min) / 1min;
    std::vector<HourTick> ticks;
    for (auto i = std::llround(std::ceil(from * 60 / static_cast<double>(step) - 1e-9));
         static_cast<double>(i * step) <= to * 60 + 1e-9; ++i)
        ticks.push_back({static_cast<double>(i * step) / 60, hoursLabel(i * step)});
    return ticks;
}

} // namespace ringhold
