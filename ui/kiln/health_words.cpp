#include "ui/kiln/health_words.h"

#include "ui/common/cost_words.h"
#include "ui/session/preferences.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

constexpr double z90 = 1.645;
constexpr int fewest = 5; ///< firings, from which on a trend may be told

QString tr(const char* words) {
    return QCoreApplication::translate("HealthWords", words);
}

QString ago(int firings) {
    static const QStringList small{QString(),           tr("one firing"),    tr("two firings"),
                                   tr("three firings"), tr("four firings"),  tr("five firings"),
                                   tr("six firings"),   tr("seven firings"), tr("eight firings"),
                                   tr("nine firings"),  tr("ten firings")};
    return tr("%1 ago").arg(firings < small.size() ? small[firings] : tr("%1 firings").arg(firings));
}

QString percent(double share) {
    return QString::number(std::abs(share), 'f', 0);
}

/// "(9 to 19)": the 90 % interval of a change as shares of what it was; with signs where it goes both ways.
QString within(const HealthTrend& trend) {
    const double then = trend.now.value - trend.change.value_or(0);
    const double low = trend.change90->low / then * 100;
    const double high = trend.change90->high / then * 100;
    if (low < 0 && high > 0)
        return tr("(%1 % less to %2 % more)").arg(percent(low), percent(high));
    return QStringLiteral("(%1 to %2)")
        .arg(percent(std::min(std::abs(low), std::abs(high))),
             percent(std::max(std::abs(low), std::abs(high))));
}

QString degrees(double celsius, const Preferences& preferences, bool sign = false) {
    return preferences.difference(TemperatureDifference::fromCelsius(celsius), 0, sign);
}

QString halfWidth(double sd_C, const Preferences& preferences) {
    return QString::number(preferences.shown(TemperatureDifference::fromCelsius(sd_C * z90)), 'f', 0);
}

QString notEnough(int firings) {
    return firings < fewest ? tr("not enough firings yet, %1 of %2").arg(firings).arg(fewest)
                            : tr("%1 firings are not enough yet to tell a change from chance").arg(firings);
}

QString climbRange(const Preferences& preferences) {
    return tr("The climb over %1 to %2")
        .arg(preferences.temperatureFigure(Temperature::fromCelsius(1000)),
             preferences.temperature(Temperature::fromCelsius(1200)));
}

QString leftOutWords(int leftOut) {
    if (leftOut == 0)
        return {};
    return QLatin1Char(' ') +
           (leftOut == 1 ? tr("One climb was left out: at other volts, or not at full power.")
                         : tr("%1 climbs were left out: at other volts, or not at full power.").arg(leftOut));
}

} // namespace

QString climbWords(const KilnHealth& health, const Preferences& preferences) {
    const auto& trend = health.climb_min;
    const QString range = climbRange(preferences), left = leftOutWords(health.leftOut);
    const QString volts = health.sameVolts ? tr(", at the same volts") : tr("; volts were not read");
    const QString now = preferences.span(durationFromMinutes(trend.now.value));
    switch (trend.word) {
    case TrendWord::notEnough:
        return range + tr(": ") + notEnough(trend.firings) + QLatin1Char('.') + left;
    case TrendWord::steady:
        return tr("%1 takes as long as %2%3: %4, give or take 5 %.")
                   .arg(range, ago(trend.firingsAgo), volts, now) +
               left;
    case TrendWord::rising:
    case TrendWord::falling:
        break;
    }
    return tr("%1 took %2 % %3 %4 than %5%6: %7 now.")
               .arg(range, percent(trend.changePercent.value_or(0)),
                    trend.word == TrendWord::rising ? tr("longer") : tr("less"), within(trend),
                    ago(trend.firingsAgo), volts, now) +
           left;
}

QString elementWords(const KilnHealth& health) {
    const auto& trend = health.resistance_ohm;
    if (trend.firings == 0)
        return {};
    const QString now = tr("%1 Ω").arg(trend.now.value, 0, 'f', 1);
    switch (health.elements) {
    case ElementState::notEnough:
        return tr("The elements’ resistance, from volts and amps: %1; %2.")
            .arg(now, notEnough(trend.firings));
    case ElementState::sound:
        return tr("The elements’ resistance is %1, %2 % above that of the first firing counted: sound.")
            .arg(now, percent(std::max(0.0, health.rise_percent.value_or(0))));
    case ElementState::worn:
    case ElementState::replace:
        break;
    }
    const QString rise = tr("The elements’ resistance is %1, %2 % above that of the first firing counted")
                             .arg(now, percent(health.rise_percent.value_or(0)));
    return health.elements == ElementState::worn
               ? tr("%1: worn, have new ones at hand (warned at 6 %; trade limits run from 5 to 18 %, common "
                    "practice).")
                     .arg(rise)
               : tr("%1: time for new ones (advised at 10 %; trade limits run from 5 to 18 %, common "
                    "practice). "
                    "Mains work is for licensed trades.")
                     .arg(rise);
}

QString energyWords(const KilnHealth& health) {
    const auto& trend = health.energy_kWh;
    if (trend.firings == 0)
        return {};
    QString now = tr("A firing takes about %1 kWh").arg(trend.now.value, 0, 'f', 0);
    if (health.energySource)
        now += QLatin1Char(' ') + sourceWords(*health.energySource);
    if (trend.word == TrendWord::notEnough)
        return tr("%1; whether that changes: %2.").arg(now, notEnough(trend.firings));
    if (trend.word == TrendWord::steady)
        return tr("%1, as much as %2, give or take 5 %.").arg(now, ago(trend.firingsAgo));
    return tr("%1, %2 % %3 %4 than %5.")
        .arg(now, percent(trend.changePercent.value_or(0)),
             trend.word == TrendWord::rising ? tr("more") : tr("less"), within(trend), ago(trend.firingsAgo));
}

QString probeWords(const QString& probe, const ProbeHealth& health, const Preferences& preferences) {
    const QString age =
        tr("%1: %2, %3 h above %4.")
            .arg(probe, health.firings == 1 ? tr("1 firing") : tr("%1 firings").arg(health.firings))
            .arg(health.hoursAbove1200, 0, 'f', health.hoursAbove1200 < 10 ? 1 : 0)
            .arg(preferences.temperature(Temperature::fromCelsius(1200)));
    const auto& trend = health.offset_C;
    if (trend.word == TrendWord::notEnough || !trend.change || !trend.change90)
        return age + QLatin1Char(' ') + tr("Whether its offset drifts: %1.").arg(notEnough(trend.firings));
    if (trend.word == TrendWord::steady)
        return age + QLatin1Char(' ') +
               tr("Its offset is steady within %1 over %2 firings.")
                   .arg(degrees(3, preferences))
                   .arg(trend.firings);
    const double low = std::min(std::abs(trend.change90->low), std::abs(trend.change90->high));
    const double high = std::max(std::abs(trend.change90->low), std::abs(trend.change90->high));
    const auto bare = [&](double celsius) {
        return QString::number(preferences.shown(TemperatureDifference::fromCelsius(celsius)), 'f', 0);
    };
    const bool falls = trend.word == TrendWord::falling;
    return age + QLatin1Char(' ') +
           tr("It reads %1 %2 than %3 (%4 to %5)%6.")
               .arg(degrees(std::abs(*trend.change), preferences), falls ? tr("lower") : tr("higher"),
                    ago(trend.firingsAgo), bare(low), bare(high), falls ? tr(": it ages") : QString());
}

QString placesWords(const Evenness& evenness, const Preferences& preferences) {
    QStringList places;
    for (const auto& place : evenness.places) {
        const QString name = place.place.empty() ? tr("a pack") : QString::fromStdString(place.place);
        places << (place.told ? tr("%1 %2 ± %3")
                                    .arg(name, degrees(place.relative_C.value, preferences, true),
                                         halfWidth(place.relative_C.sd, preferences))
                              : tr("%1 not told: its cones all stood or all were down").arg(name));
    }
    return places.join(QStringLiteral(", "));
}

QString spreadWords(const Evenness& evenness, const Preferences& preferences) {
    if (!evenness.spread_C)
        return QStringLiteral("–");
    return tr("%1 ± %2").arg(degrees(evenness.spread_C->value, preferences),
                             halfWidth(evenness.spread_C->sd, preferences));
}

} // namespace ringhold
