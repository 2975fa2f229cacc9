// How cones are told in words.
#pragma once

#include <QString>

namespace ringhold {

/// "9 at 4 o'clock", "10 just leaning", "11 standing": as the log says it.
QString coneInWords(const QString& cone, double hour);

/// Short, for a button: "1", "2½"; the words for standing, just leaning and down.
QString hourOnButton(double hour);

} // namespace ringhold
