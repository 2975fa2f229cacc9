#include "ui/past/difference_words.h"

#include "ui/common/cost_words.h"
#include "ui/cones/cone_words.h"
#include "ui/session/preferences.h"

#include <QCoreApplication>

namespace ringhold {

namespace {

constexpr double z90 = 1.645;

QString tr(const char* words) {
    return QCoreApplication::translate("DifferenceWords", words);
}

QString degrees(double value_C, const Preferences& preferences, int decimals) {
    return preferences.difference(TemperatureDifference::fromCelsius(value_C), decimals, false);
}

QString temperatureText(const FigureValue& value, const Preferences& preferences, int decimals) {
    const QString words = preferences.temperature(Temperature::fromCelsius(value.value), decimals);
    if (!value.sd)
        return words;
    const double half = preferences.shown(TemperatureDifference::fromCelsius(*value.sd * z90));
    return tr("%1 ± %2").arg(words).arg(half, 0, 'f', 0);
}

QString energyText(const FigureValue& value) {
    const QString amount = tr("%1 kWh").arg(value.value, 0, 'f', value.value < 10 ? 1 : 0);
    return value.source ? amount + QLatin1Char(' ') + sourceWords(*value.source) : amount;
}

} // namespace

QString figureName(Figure figure) {
    switch (figure) {
    case Figure::peak_C:
        return tr("Peak");
    case Figure::nearPeak_min:
        return tr("At the top");
    case Figure::lastClimb_C_per_h:
        return tr("Last climb");
    case Figure::growthHold_C:
        return tr("Growth hold");
    case Figure::growthHoldSd_C:
        return tr("Its unrest (sd)");
    case Figure::growthHold_h:
        return tr("Its length");
    case Figure::rings:
        return tr("Rings");
    case Figure::coneHour:
        return tr("Firing cone");
    case Figure::energy_kWh:
        return tr("Energy");
    case Figure::largest_mm:
        return tr("Largest crystal");
    case Figure::typical_mm:
        return tr("Pieces’ largest, mean");
    case Figure::pieces:
        return tr("Pieces");
    }
    return {};
}

QString figureMeaning(Figure figure, const Preferences& preferences) {
    const QString ten = degrees(10, preferences, 0);
    switch (figure) {
    case Figure::peak_C:
        return tr("The hottest of the control probe");
    case Figure::nearPeak_min:
        return tr("Time within %1 of the peak").arg(ten);
    case Figure::lastClimb_C_per_h:
        return tr("Over the last %1 before the peak, the last %2 left out")
            .arg(degrees(100, preferences, 0), ten);
    case Figure::growthHold_C:
        return tr("Mean of the growth hold");
    case Figure::growthHoldSd_C:
        return tr("Standard deviation of the growth hold");
    case Figure::growthHold_h:
        return tr("From the first to the last time inside its band");
    case Figure::rings:
        return tr("Counted from the curve, by the plan’s levels");
    case Figure::coneHour:
        return tr("Where its tip points, by the cold pack, else by the last look");
    case Figure::energy_kWh:
        return tr("By the meter’s stands, else by volts and amps, else by the duty");
    case Figure::largest_mm:
        return tr("Diameter of the largest crystal of the firing");
    case Figure::typical_mm:
        return tr("Mean over the pieces of their largest crystal");
    case Figure::pieces:
        return tr("In the load");
    }
    return {};
}

QString figureText(Figure figure, const FigureValue& value, const Preferences& preferences) {
    switch (figure) {
    case Figure::peak_C:
        return temperatureText(value, preferences, 0);
    case Figure::growthHold_C:
        return temperatureText(value, preferences, 1);
    case Figure::nearPeak_min:
        return preferences.span(durationFromMinutes(value.value));
    case Figure::growthHold_h:
        return preferences.span(durationFromHours(value.value));
    case Figure::lastClimb_C_per_h:
        return preferences.rate(Rate::fromCelsiusPerHour(value.value));
    case Figure::growthHoldSd_C:
        return degrees(value.value, preferences, 1);
    case Figure::coneHour:
        return hourOnButton(value.value);
    case Figure::energy_kWh:
        return energyText(value);
    case Figure::largest_mm:
    case Figure::typical_mm:
        return tr("%1 mm").arg(value.value, 0, 'f', value.value < 10 ? 1 : 0);
    case Figure::rings:
    case Figure::pieces:
        break;
    }
    return QString::number(value.value, 'f', 0);
}

} // namespace ringhold
