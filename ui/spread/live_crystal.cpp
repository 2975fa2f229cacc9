#include "ui/spread/live_crystal.h"

#include "core/growth/ring_times.h"
#include "core/watch/carried_offset.h"
#include "ui/common/word_style.h"
#include "ui/session/firing_session.h"

namespace ringhold {

namespace {

constexpr int refresh_ms = 4000;
constexpr double smallestShown_mm = 0.5; ///< across

/// What the probe reads above what the glaze feels, where crystals grow.
TemperatureDifference offsetOf(const FiringSession& session, Temperature at) {
    if (!session.forecast() || session.forecast()->packs.empty())
        return {};
    const auto carried = carriedOffset(session.record().packs.front(), session.forecast()->packs.front(), at);
    return carried ? carried->mean : TemperatureDifference();
}

Curve lessOffset(Curve curve, TemperatureDifference offset) {
    for (auto& point : curve)
        point.temperature = point.temperature - offset;
    return curve;
}

/// The curve so far, and the plan's from there.
Curve goneOn(Curve curve, const StepFollower* follower) {
    if (follower && follower->position())
        for (const auto& point : follower->ahead().curve)
            if (point.at > curve.back().at)
                curve.push_back(point);
    return curve;
}

QString millimetres(double mm) {
    return QString::number(mm, 'f', 1);
}

QString dwellWords(const Dwell& dwell, const Preferences& preferences) {
    return LiveCrystalModel::tr("%1 min at %2")
        .arg(QString::number(inMinutes(dwell.length), 'f', 1), preferences.temperature(dwell.mean));
}

} // namespace

std::optional<LiveCrystal> liveCrystal(const FiringSession& session, const GrowthRate& rate) {
    const auto& control = session.firing().controlCurve();
    const auto offset = offsetOf(session, rate.window.best);
    if (CrystalGrowth(lessOffset(control, offset), rate).radius().likely_mm * 2 < smallestShown_mm)
        return std::nullopt;
    std::vector<ReportedHold> holds;
    std::vector<ReportedRings> rings;
    const auto coneDown = [&session](const Curve& whole, const std::string& cone) {
        return session.forecaster() ? session.forecaster()->coneDownOn(whole, cone) : std::nullopt;
    };
    if (const auto followed = followPlan(session.record(), control, coneDown)) {
        holds = holdsOf(*session.record().firing.plan, *followed, control);
        rings = ringsOf(*session.record().firing.plan, *followed, control);
    }
    const auto drawn = drawCrystal(control, rate, offset, holds, rings);
    if (!drawn)
        return std::nullopt;
    return LiveCrystal{{drawn->radius, drawn->rings, rate},
                       std::move(rings),
                       std::move(holds),
                       CrystalGrowth(lessOffset(goneOn(control, session.follower()), offset), rate),
                       drawn->began};
}

QStringList ringLines(const LiveCrystal& crystal, const Preferences& preferences) {
    const auto& rate = crystal.drawn.rate;
    const double least = rate.low_um_per_min / rate.best_um_per_min;
    const double most = rate.high_um_per_min / rate.best_um_per_min;
    QStringList lines;
    for (const auto& step : crystal.rings)
        for (const auto& ring : step.rings)
            lines << LiveCrystalModel::tr(
                         "Ring %1: about %2\u202fmm out (%3 to %4), %5\u202fmm wide; %6, then %7.")
                         .arg(lines.size() + 1)
                         .arg(millimetres(ring.drawn.turn_mm), millimetres(ring.drawn.turn_mm * least),
                              millimetres(ring.drawn.turn_mm * most), millimetres(ring.drawn.width_mm()),
                              dwellWords(ring.ring.low, preferences),
                              dwellWords(ring.ring.high, preferences));
    return lines;
}

QStringList excursionLines(const LiveCrystal& crystal, const Preferences& preferences) {
    QStringList lines;
    for (const auto& hold : crystal.holds) {
        if (!hold.found || !hold.excursionRadius)
            continue;
        const auto& all = hold.found->excursions;
        const auto longest =
            std::ranges::max_element(all, {}, [](const Excursion& e) { return e.end - e.start; });
        const Instant middle = longest->start + (longest->end - longest->start) / 2;
        const QString what =
            LiveCrystalModel::tr("The excursion to %1").arg(preferences.temperature(longest->peak));
        lines << QString::fromStdString(
            momentWords(what.toStdString(), middle, *hold.excursionRadius, styleOf(preferences)));
    }
    return lines;
}

QString markerLine(const LiveCrystal& crystal, Instant now, const Preferences& preferences) {
    const auto dip = crystal.ahead.ends() ? markerDip(crystal.ahead, *crystal.ahead.ends()) : std::nullopt;
    return dip && dip->at > now ? QString::fromStdString(markerDipWords(*dip, styleOf(preferences)))
                                : QString();
}

QString dipLine(const LiveCrystal& crystal, double radius_mm, Instant now, const Preferences& preferences) {
    const auto time = timeOfRadius(crystal.ahead, radius_mm);
    if (time.likely && *time.likely <= now)
        return LiveCrystalModel::tr("Likely passed already, at %1.").arg(preferences.clockTime(*time.likely));
    return QString::fromStdString(radiusTimeWords(time, crystal.began, styleOf(preferences)));
}

LiveCrystalModel::LiveCrystalModel(const FiringSession& session, QObject* parent)
    : QObject(parent), m_session(session) {
    m_later.setSingleShot(true);
    connect(&m_later, &QTimer::timeout, this, &LiveCrystalModel::refresh);
    connect(&session, &FiringSession::readingTaken, this, [this] {
        if (!m_later.isActive())
            m_later.start(refresh_ms);
    });
    connect(&session, &FiringSession::linesChanged, this, [this] { m_later.start(0); });
    refresh();
}

void LiveCrystalModel::setRate(const GrowthRate& rate) {
    m_rate = rate;
    refresh();
}

void LiveCrystalModel::refresh() {
    const bool before = m_crystal.has_value();
    m_crystal = liveCrystal(m_session, m_rate);
    if (before || m_crystal)
        Q_EMIT changed();
}

} // namespace ringhold
