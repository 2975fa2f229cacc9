// How cones are told in words, and how a look is typed.
#pragma once

#include "core/base/result.h"

#include <QString>
#include <QStringView>

#include <vector>

namespace ringhold {

/// "9 at 4 o'clock", "10 just leaning", "11 standing": as the log says it.
QString coneInWords(const QString& cone, double hour);

/// Short, for a button: "1", "2½"; the words for standing, just leaning and down.
QString hourOnButton(double hour);

/// A look as typed.
struct TypedLook {
    std::string cone;
    double hour = 0; ///< in halves, 0 to 6
};

/// Takes "10 3.5" apart: cone, space, hour. The hour is a figure in halves with a point, a comma or ½ (12 is
/// standing too), or the words standing, leaning, just leaning, down; "o'clock" may follow. Several looks are
/// parted by a semicolon, or by a comma and a space. badInput tells in words what is not understood.
Result<std::vector<TypedLook>> parseLooks(QStringView text);

} // namespace ringhold
