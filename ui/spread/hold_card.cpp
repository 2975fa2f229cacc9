#include "ui/spread/hold_card.h"

#include "core/report/hold_words.h"
#include "core/watch/carried_offset.h"
#include "ui/common/forecast_words.h"
#include "ui/common/word_style.h"
#include "ui/session/firing_session.h"

#include <QCoreApplication>

namespace ringhold {

namespace {

constexpr double z90 = 1.645; ///< of a normal distribution, for 90 % in the middle

struct HoldTalk {
    Q_DECLARE_TR_FUNCTIONS(HoldTalk)
};

/// The offset that the cones told, as it is at the hold.
QString carriedWords(const FiringSession& session, Temperature at, const Preferences& preferences) {
    if (!session.forecast() || session.forecast()->packs.empty())
        return {};
    const auto carried = carriedOffset(session.record().packs.front(), session.forecast()->packs.front(), at);
    if (!carried)
        return {};
    const auto half = carried->sd * z90;
    return HoldTalk::tr("The probe likely reads %1 here, carried from the cones.")
        .arg(offsetWords({carried->mean - half, carried->mean, carried->mean + half}, preferences));
}

QString excursionWords(const HoldStatistics& held, const Preferences& preferences) {
    if (held.excursions.empty())
        return HoldTalk::tr("The band was never left.");
    const QString times = held.excursions.size() == 1 ? HoldTalk::tr("once")
                                                      : HoldTalk::tr("%1 times").arg(held.excursions.size());
    return HoldTalk::tr("Out %1, longest %2.").arg(times, preferences.span(held.longestExcursion));
}

/// °C min or °F min beyond the band.
QString areaWords(const HoldStatistics& held, const Preferences& preferences) {
    const auto shown = [&](double degreeMinutes_C) {
        return QString::number(preferences.shown(TemperatureDifference::fromCelsius(degreeMinutes_C)), 'f',
                               0);
    };
    return HoldTalk::tr("%1 %2 min above the band, %3 below.")
        .arg(shown(held.degreeMinutesAbove), preferences.unitName(), shown(held.degreeMinutesBelow));
}

QString driftTold(const Drift& drift, const WordStyle& style) {
    std::optional<Rate> half;
    if (drift.interval90)
        half = Rate::fromCelsiusPerHour(
            (drift.interval90->high.celsiusPerHour() - drift.interval90->low.celsiusPerHour()) / 2);
    return HoldTalk::tr("Drift %1.").arg(QString::fromStdString(driftWords(drift.rate, half, style)));
}

std::optional<HoldStatistics> heldSoFar(const FiringSession& session, const HoldUnderWay& hold) {
    const auto& curve = session.firing().controlCurve();
    if (curve.empty() || curve.back().at <= hold.from)
        return std::nullopt;
    return judgeHold(curve, hold.band, {hold.from, curve.back().at});
}

} // namespace

QStringList holdFigures(const HoldStatistics& held, std::optional<Duration> planned,
                        const Preferences& preferences) {
    const WordStyle style = styleOf(preferences);
    QStringList lines;
    const QString length = preferences.span(held.end - held.start);
    lines << HoldTalk::tr("%1, in the band %2 % of the time. %3")
                 .arg(planned ? HoldTalk::tr("%1 of %2").arg(length, preferences.span(*planned)) : length,
                      QString::number(held.insideShare * 100, 'f', 1), excursionWords(held, preferences));
    lines << HoldTalk::tr("From %1 to %2. %3 %4")
                 .arg(preferences.temperature(held.min), preferences.temperature(held.max),
                      areaWords(held, preferences), driftTold(held.drift, style));
    QStringList furnace;
    if (held.arrival)
        furnace << QString::fromStdString(arrivalWords(*held.arrival, style));
    furnace << QString::fromStdString(uniformityWords(held, style));
    lines << furnace.join(QLatin1Char(' '));
    if (const auto few = fewReadingsWords(held); !few.empty())
        lines << QString::fromStdString(few);
    return lines;
}

CardWords holdCard(const FiringSession& session, const Preferences& preferences, const HoldUnderWay& hold) {
    CardWords words;
    words.title = HoldTalk::tr("Hold %1").arg(preferences.temperature(hold.band.target));
    const auto held = heldSoFar(session, hold);
    if (!held)
        return words;
    words.main = HoldTalk::tr("mean %1, sd %2")
                     .arg(preferences.temperature(held->mean, 1),
                          QString::number(preferences.shown(held->sd), 'f', 1));
    words.lines = holdFigures(*held, hold.planned, preferences);
    if (const QString offset = carriedWords(session, hold.band.target, preferences); !offset.isEmpty())
        words.lines << offset;
    if (hold.source == HoldSource::curve)
        words.lines << HoldTalk::tr("Nobody told this hold: alarms about it stay quiet until “hold: %1” is "
                                    "written, or chosen under Alarms.")
                           .arg(QString::fromStdString(toldHoldWords(hold.band, styleOf(preferences))));
    return words;
}

QString steadyLine(const FiringSession& session, const Preferences& preferences, const HoldUnderWay& hold) {
    const auto held = heldSoFar(session, hold);
    if (!held)
        return {};
    return HoldTalk::tr("Steady at %1 for %2. %3")
        .arg(preferences.temperature(held->mean), preferences.span(held->end - held->start),
             driftTold(held->drift, styleOf(preferences)));
}

} // namespace ringhold
