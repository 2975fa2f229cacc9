// How the figures of a plan stand in a cell, and how they are understood when typed.
#pragma once

#include "core/units/temperature.h"
#include "core/units/time.h"

#include <QString>
#include <QStringView>

#include <optional>

namespace ringhold {

class Preferences;

/// Figures in the chosen unit, with one decimal where there is need of it: "1262", "2303.6".
QString typedForm(Temperature t, const Preferences& preferences);
QString typedForm(TemperatureDifference d, const Preferences& preferences);
QString typedForm(Rate r, const Preferences& preferences);
/// "40 min", "4 h 00", "12.5 min".
QString typedForm(Duration d);

/// Reads such a figure: decimal point or comma, blanks between thousands. A unit written behind it ("2300 F",
/// "150 °C/h") counts more than the chosen one. Nothing when it is no figure, or when a comma may part
/// thousands as well as decimals ("1,262").
std::optional<Temperature> typedTemperature(QStringView text, const Preferences& preferences);
std::optional<TemperatureDifference> typedDifference(QStringView text, const Preferences& preferences);
std::optional<Rate> typedRate(QStringView text, const Preferences& preferences);
/// Minutes unless it says otherwise: "90", "1.5 h", "1 h 30", "1:30", "45 s". Up to 70 days.
std::optional<Duration> typedTime(QStringView text);
std::optional<int> typedCount(QStringView text);

/// A figure for reading: "1262" as "1 262", with a thin space and a true minus sign. Other text stays.
QString grouped(const QString& figure);

} // namespace ringhold
