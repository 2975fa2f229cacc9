#include "ui/common/forecast_words.h"

#include "core/cones/bending.h"
#include "ui/cones/cone_words.h"
#include "ui/session/firing_session.h"
#include "ui/session/preferences.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

struct ForecastWords {
    Q_DECLARE_TR_FUNCTIONS(ForecastWords)
};

/// In the first pack, which the forecast's words are about.
bool seenDown(const ConeForecast& cone, const FiringSession& session) {
    const auto& packs = session.record().packs;
    return std::ranges::any_of(session.record().looks, [&](const Look& look) {
        return !look.struck && look.cone == cone.cone && look.hour >= hourDown &&
               look.pack == packs.front().id;
    });
}

QString betweenWords(const TimeInterval& down, const Preferences& preferences) {
    if (!down.p05)
        return {};
    const QString from = preferences.clockTime(*down.p05);
    return down.p95 ? ForecastWords::tr("%1 to %2").arg(from, preferences.clockTime(*down.p95))
                    : ForecastWords::tr("%1 or later").arg(from);
}

QString downTimes(const TimeInterval& down, const Preferences& preferences) {
    return down.median ? QStringLiteral("%1 (%2)").arg(preferences.clockTime(*down.median),
                                                       betweenWords(down, preferences))
                       : ForecastWords::tr("not at this rate");
}

QString sideWords(TemperatureDifference offset, const Preferences& preferences) {
    const long degrees = std::lround(preferences.shown(offset));
    const auto size = preferences.difference(offset.celsius() < 0 ? -offset : offset, 0, false);
    return degrees == 0  ? ForecastWords::tr("right")
           : degrees > 0 ? ForecastWords::tr("%1 high").arg(size)
                         : ForecastWords::tr("%1 low").arg(size);
}

QString meaningWords(const LookDoubt& doubt, const Preferences& preferences) {
    return ForecastWords::tr("for it the probe would have to read %1; by the rest it reads %2")
        .arg(sideWords(doubt.meant, preferences), offsetWords(doubt.byTheRest.offset, preferences));
}

} // namespace

ConeDownWords coneDownWords(const ConeForecast& cone, const FiringSession& session,
                            const Preferences& preferences) {
    if (seenDown(cone, session))
        return {ForecastWords::tr("down"), {}};
    const QString between = betweenWords(cone.down, preferences);
    if (cone.isDown)
        return {ForecastWords::tr("should be down"), between};
    if (cone.down.median)
        return {preferences.clockTime(*cone.down.median), between};
    const auto& levelsOff = session.forecast() ? session.forecast()->levelsOff : std::nullopt;
    const QString why =
        levelsOff ? ForecastWords::tr("it %1").arg(levelsOffWords(*levelsOff, preferences)) : QString();
    if (cone.down.p05)
        return {ForecastWords::tr("hardly at this rate"),
                why.isEmpty() ? ForecastWords::tr("not before %1").arg(preferences.clockTime(*cone.down.p05))
                              : why};
    return {ForecastWords::tr("not at this rate"), why};
}

QString levelsOffWords(const Interval<Temperature>& ceiling, const Preferences& preferences) {
    const auto bare = [&](Temperature t) { return QString::number(std::lround(preferences.shown(t))); };
    return ForecastWords::tr("levels off near %1 (%2 to %3)")
        .arg(preferences.temperature(ceiling.median), bare(ceiling.p05), bare(ceiling.p95));
}

QString coneDownSentence(const ConeForecast& cone, const FiringSession& session,
                         const Preferences& preferences) {
    const auto words = coneDownWords(cone, session, preferences);
    const QString name = QString::fromStdString(cone.cone);
    const bool levels = !cone.down.median && session.forecast() && session.forecast()->levelsOff;
    const QString between = words.between.isEmpty() ? QString()
                            : levels                ? QStringLiteral(": %1").arg(words.between)
                                                    : QStringLiteral(" (%1)").arg(words.between);
    if (seenDown(cone, session))
        return ForecastWords::tr("Cone %1 is down.").arg(name);
    if (cone.isDown)
        return ForecastWords::tr("Cone %1 should be down%2: look.").arg(name, between);
    if (!cone.down.median)
        return ForecastWords::tr("Cone %1: %2%3.").arg(name, words.when, between);
    return ForecastWords::tr("Cone %1 down %2%3.").arg(name, words.when, between);
}

QString offsetWords(const Interval<TemperatureDifference>& offset, const Preferences& preferences) {
    const auto degrees = [&](TemperatureDifference d) { return std::lround(preferences.shown(d)); };
    const long low = degrees(offset.p05), high = degrees(offset.p95);
    const QString words = sideWords(offset.median, preferences);
    if (low < 0 && high > 0)
        return words + ForecastWords::tr(" (%1 low to %2 high)").arg(-low).arg(high);
    return words + ForecastWords::tr(" (%1 to %2)")
                       .arg(std::min(std::abs(low), std::abs(high)))
                       .arg(std::max(std::abs(low), std::abs(high)));
}

QString doubtHeading(const LookDoubt& doubt, const Preferences& preferences) {
    return ForecastWords::tr("Look %1, %2, does not fit the rest.")
        .arg(preferences.clockTime(doubt.look.at),
             coneInWords(QString::fromStdString(doubt.look.cone), doubt.look.hour));
}

QString doubtInShort(const LookDoubt& doubt, const Preferences& preferences) {
    return ForecastWords::tr("Does not fit the rest: %1.").arg(meaningWords(doubt, preferences));
}

QString doubtInFull(const LookDoubt& doubt, const ConeForecast* now, const Preferences& preferences) {
    QString meaning = meaningWords(doubt, preferences);
    meaning[0] = meaning[0].toUpper();
    QString words = doubtHeading(doubt, preferences) + QLatin1Char(' ') + meaning + QStringLiteral(". ");
    const auto& rest = doubt.byTheRest.cones;
    const auto same = now ? std::ranges::find(rest, now->cone, &ConeForecast::cone) : rest.end();
    if (same != rest.end())
        words += ForecastWords::tr("With it cone %1 is down %2, without it %3. ")
                     .arg(QString::fromStdString(now->cone), downTimes(now->down, preferences),
                          downTimes(same->down, preferences));
    return words + ForecastWords::tr("Was it this cone, this hour?");
}

} // namespace ringhold
