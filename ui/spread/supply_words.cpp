#include "ui/spread/supply_words.h"

#include "core/kiln/atmosphere.h"
#include "core/report/words.h"
#include "core/watch/power_evidence.h"
#include "ui/session/firing_session.h"
#include "ui/session/preferences.h"

#include <QCoreApplication>
#include <QStringList>

#include <algorithm>

namespace ringhold {

namespace {

constexpr std::size_t intervalsLooked = 9;
constexpr Duration shortestPeriod = std::chrono::seconds(1);
constexpr double toldFrom = 0.01; ///< share that the volts are down

const QString dot = QStringLiteral(" · ");

struct SupplyTalk {
    Q_DECLARE_TR_FUNCTIONS(SupplyTalk)
};

/// Median of the last intervals; a minute before there are two values.
Duration periodOf(const Curve& curve) {
    std::vector<Duration> intervals;
    for (std::size_t i = curve.size(); i-- > 1 && intervals.size() < intervalsLooked;)
        intervals.push_back(curve[i].at - curve[i - 1].at);
    if (intervals.empty())
        return std::chrono::minutes(1);
    std::ranges::sort(intervals);
    return std::max(shortestPeriod, intervals[intervals.size() / 2]);
}

QString nameOf(Quantity quantity) {
    switch (quantity) {
    case Quantity::lineVolts:
        return SupplyTalk::tr("volts");
    case Quantity::lineAmps:
        return SupplyTalk::tr("amps");
    case Quantity::oxygenMillivolts:
        return SupplyTalk::tr("oxygen probe");
    case Quantity::duty:
        return SupplyTalk::tr("power on");
    case Quantity::temperature:
        break;
    }
    return {};
}

/// With the share of oxygen where the probe is hot enough to tell it.
QString oxygenWords(double millivolts, const FiringSession& session) {
    const auto last = session.firing().lastReading();
    QString words = QString::number(millivolts, 'f', 0) + QStringLiteral("\u202fmV");
    if (last && oxygenProbeIsHot(last->temperature))
        words += SupplyTalk::tr(", about %1 oxygen")
                     .arg(QString::fromStdString(
                         percentWords(oxygenShareFrom(Millivolts{millivolts}, last->temperature), 1)));
    return words;
}

QString valueOf(Quantity quantity, double value, const FiringSession& session) {
    switch (quantity) {
    case Quantity::lineVolts:
        return QString::number(value, 'f', 0) + QStringLiteral("\u202fV");
    case Quantity::lineAmps:
        return QString::number(value, 'f', 1) + QStringLiteral("\u202fA");
    case Quantity::oxygenMillivolts:
        return oxygenWords(value, session);
    case Quantity::duty:
        return QString::fromStdString(percentWords(value, 0));
    case Quantity::temperature:
        break;
    }
    return {};
}

SupplyField fieldOf(const Channel& channel, const Curve& curve, const FiringSession& session,
                    const Preferences& preferences) {
    const auto& channels = session.record().channels;
    const bool several = std::ranges::count(channels, channel.quantity, &Channel::quantity) > 1;
    const Duration age = std::max(Duration(0), session.now() - curve.back().at);
    SupplyField field;
    field.name = nameOf(channel.quantity);
    if (several)
        field.name += QLatin1Char(' ') + QString::fromStdString(channel.label);
    field.value = valueOf(channel.quantity, curve.back().temperature.celsius(), session);
    field.age = SupplyTalk::tr("%1 ago").arg(preferences.span(age));
    field.live = age <= 2 * periodOf(curve);
    return field;
}

/// "3.2 % less volts than the usual 239 V is 6.3 % less power."
QString evidenceOf(const FiringSession& session) {
    const auto& power = session.watch().causes().power();
    const auto now = power.volts(session.now());
    const auto usual = power.usualVolts();
    if (!now || !usual || usual->volts <= 0 || 1 - now->volts / usual->volts < toldFrom)
        return {};
    return SupplyTalk::tr("%1 less volts than the usual %2 is %3 less power.")
        .arg(QString::fromStdString(percentWords(1 - now->volts / usual->volts)),
             QString::fromStdString(voltsWords(*usual)),
             QString::fromStdString(percentWords(1 - powerShareAt(*now, *usual), 2)));
}

QString kilowattHours(const Energy& energy) {
    return QString::number(energy.kilowattHours(), 'f', 1) + QStringLiteral("\u202fkWh");
}

QString costInBrackets(const std::optional<double>& cost) {
    return cost ? QStringLiteral(" (%1)").arg(*cost, 0, 'f', 2) : QString();
}

QString energyTold(const FiringEnergy& energy) {
    QStringList parts;
    if (energy.byMeter)
        parts << SupplyTalk::tr("%1 so far by the meter").arg(kilowattHours(*energy.byMeter)) +
                     costInBrackets(energy.costSoFar());
    else if (energy.soFar)
        parts << SupplyTalk::tr("%1 so far").arg(kilowattHours(*energy.soFar)) +
                     costInBrackets(energy.costSoFar());
    if (energy.toCome)
        parts << SupplyTalk::tr("about %1 to come by the model kiln")
                     .arg(QString::number(energy.toCome->kilowattHours(), 'f', 0) +
                          QStringLiteral("\u202fkWh"));
    if (const auto all = energy.costInAll())
        parts << SupplyTalk::tr("cost in all about %1").arg(*all, 0, 'f', 2);
    return parts.join(dot);
}

} // namespace

SupplyWords supplyWords(const FiringSession& session, const Preferences& preferences,
                        const FiringEnergy& energy) {
    SupplyWords words;
    for (const auto& channel : session.record().channels) {
        const auto& curve = session.firing().curve(channel.id);
        if (channel.quantity != Quantity::temperature && !curve.empty())
            words.fields.push_back(fieldOf(channel, curve, session, preferences));
    }
    words.evidence = evidenceOf(session);
    words.energy = energyTold(energy);
    return words;
}

QString spokenWords(const SupplyWords& words) {
    QStringList parts;
    for (const auto& field : words.fields)
        parts << QStringLiteral("%1 %2, %3").arg(field.name, field.value, field.age) +
                     (field.live ? QString() : SupplyTalk::tr(", no longer live"));
    parts << words.evidence << words.energy;
    parts.removeAll(QString());
    return parts.join(dot);
}

} // namespace ringhold
