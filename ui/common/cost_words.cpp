#include "ui/common/cost_words.h"

#include <QCoreApplication>
#include <QStringList>

namespace ringhold {

namespace {

QString tr(const char* words) {
    return QCoreApplication::translate("CostWords", words);
}

QString money(double sum) {
    return QString::number(sum, 'f', 2);
}

} // namespace

QString costText(const FiringUse& use) {
    const FiringCost cost = costOf(use);
    if (cost.total() <= 0)
        return {};
    return money(cost.total()) + (cost.complete ? QString() : QStringLiteral(" +"));
}

QString sourceWords(EnergySource source) {
    switch (source) {
    case EnergySource::meterStands:
        return tr("by the meter");
    case EnergySource::voltsAndAmps:
        return tr("by volts and amps");
    case EnergySource::ratedVoltsAndAmps:
        return tr("by amps at the plate’s volts");
    case EnergySource::dutyAndRatedPower:
        return tr("by the duty");
    }
    return {};
}

QString useText(const FiringUse& use) {
    QStringList parts;
    if (use.electricity)
        parts << tr("%1 kWh %2")
                     .arg(use.electricity->energy.kilowattHours(), 0, 'f', 0)
                     .arg(sourceWords(use.electricity->source));
    if (use.gas)
        parts << tr("%1 m³ of gas").arg(*use.gas, 0, 'f', 1);
    return parts.join(QStringLiteral(", "));
}

QString costWords(const FiringUse& use, int pieces) {
    QStringList parts{useText(use)};
    if (const QString cost = costText(use); !cost.isEmpty()) {
        parts << tr("cost %1").arg(cost);
        const auto shares =
            sharesOf(costOf(use).total(), std::vector<double>(static_cast<std::size_t>(pieces)));
        if (pieces > 1)
            parts << tr("%1 a piece").arg(money(shares.front()));
    }
    parts.removeAll(QString());
    return parts.join(QStringLiteral(", "));
}

} // namespace ringhold
