#include "ui/cones/cone_words.h"

#include "core/report/words.h"

#include <cmath>

namespace ringhold {

QString coneInWords(const QString& cone, double hour) {
    return QString::fromStdString(lookWords({{cone.toStdString(), hour}}));
}

QString hourOnButton(double hour) {
    const double halves = std::round(2 * hour) / 2;
    const QString words = QString::fromStdString(hourWords(halves));
    return words.startsWith(QLatin1String("at ")) ? words.section(u' ', 1, 1) : words;
}

} // namespace ringhold
