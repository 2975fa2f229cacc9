#include "ui/kiln/offset_series.h"

#include "core/watch/firing_forecast.h"
#include "ui/session/preferences.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

constexpr double z90 = 1.645; ///< of a normal distribution, for 90 % in the middle

QString tr(const char* words) {
    return QCoreApplication::translate("OffsetSeries", words);
}

qint64 wholeDegrees(TemperatureDifference d, const Preferences& preferences) {
    return std::llround(preferences.shown(d));
}

OffsetSeries& seriesFor(std::vector<OffsetSeries>& all, const Probe& probe, const std::string& place) {
    const auto found = std::ranges::find_if(
        all, [&](const OffsetSeries& s) { return s.probe.id == probe.id && s.place == place; });
    return found != all.end() ? *found : all.emplace_back(OffsetSeries{probe, place, {}, {}, {}});
}

} // namespace

TemperatureDifference OffsetSeries::halfWidth() const {
    return now.sd * z90;
}

std::vector<OffsetSeries> offsetSeries(const std::vector<Probe>& probes,
                                       const std::vector<FiledOffset>& filed) {
    std::vector<OffsetSeries> all;
    for (const auto& probe : probes) {
        const std::size_t before = all.size();
        for (const auto& offset : filed)
            if (offset.probe == probe.id)
                seriesFor(all, probe, offset.place).told.push_back(offset);
        if (all.size() == before)
            seriesFor(all, probe, {});
    }
    for (auto& series : all) {
        std::ranges::sort(series.told, {}, &FiledOffset::at);
        std::vector<FiledOffset> before;
        for (const auto& told : series.told) {
            series.begun.push_back(offsetPriorFor(&series.probe, series.place, before));
            before.push_back(told);
        }
        series.now = offsetPriorFor(&series.probe, series.place, before);
    }
    return all;
}

QString seriesName(const OffsetSeries& series) {
    QString name = QString::fromStdString(series.probe.label);
    if (name.isEmpty())
        name = tr("probe");
    if (series.probe.retired)
        name += tr(", retired");
    return series.place.empty() ? name : name + QStringLiteral(" · ") + QString::fromStdString(series.place);
}

QString seriesWords(const OffsetSeries& series, const Preferences& preferences) {
    const auto firings = static_cast<int>(series.told.size());
    if (firings >= firingsToTell)
        return tr("reads %1, from %2 firings")
            .arg(offsetWords(series.now.mean, series.halfWidth(), preferences))
            .arg(firings);
    const QString until = tr("Until then it is taken to read %1.")
                              .arg(offsetWords(series.now.mean, series.halfWidth(), preferences));
    return tr("not enough firings yet: %1 of %2. ").arg(firings).arg(firingsToTell) + until;
}

QString startWords(const OffsetSeries& series, const Preferences& preferences) {
    if (series.probe.retired)
        return tr("Retired: nothing more is told of it.");
    const auto half = series.halfWidth();
    if (series.told.empty())
        return tr("A new probe: ± %1 until cones have told.").arg(preferences.difference(half, 0, false));
    const auto bare = [&](TemperatureDifference d) {
        return preferences.difference(d, 0).chopped(preferences.unitName().size()).trimmed();
    };
    const auto firings = static_cast<int>(series.told.size());
    return tr("The next firing starts from %1, 90 % between %2 and %3, from %4.")
        .arg(preferences.difference(series.now.mean, 0), bare(series.now.mean - half),
             bare(series.now.mean + half), firings == 1 ? tr("one firing") : tr("%1 firings").arg(firings));
}

QString offsetWords(TemperatureDifference mean, TemperatureDifference halfWidth,
                    const Preferences& preferences) {
    const qint64 middle = wholeDegrees(mean, preferences);
    const qint64 low = wholeDegrees(mean - halfWidth, preferences);
    const qint64 high = wholeDegrees(mean + halfWidth, preferences);
    const auto size = preferences.difference(middle < 0 ? -mean : mean, 0, false);
    const QString words = middle == 0  ? tr("right")
                          : middle > 0 ? tr("%1 high").arg(size)
                                       : tr("%1 low").arg(size);
    if (low < 0 && high > 0)
        return words + tr(" (%1 low to %2 high)").arg(-low).arg(high);
    return words + tr(" (%1 to %2)")
                       .arg(std::min(std::abs(low), std::abs(high)))
                       .arg(std::max(std::abs(low), std::abs(high)));
}

} // namespace ringhold
