// The figures by which firings are compared, in words.
#pragma once

#include "core/learn/comparison.h"

#include <QString>

namespace ringhold {

class Preferences;

/// "Peak", "Growth hold, mean".
QString figureName(Figure figure);
/// How it is come by.
QString figureMeaning(Figure figure, const Preferences& preferences);
/// "1 254 °C", "3 h 05", "2 o’clock"; a temperature whose offset was taken off with its 90 % half width:
/// "1 254 °C ± 6".
QString figureText(Figure figure, const FigureValue& value, const Preferences& preferences);

} // namespace ringhold
