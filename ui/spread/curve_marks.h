// What was seen and set, as marks on the curve.
#pragma once

#include "core/units/time.h"

#include <QString>

class QCustomPlot;

namespace ringhold {

class FiringSession;
class Preferences;
class Theme;

/// Whether the marks of settings have room for their words.
enum class MarkWords { none, beside };

/// Takes the marks of looks and settings off the plot and draws them anew; standing cones would crowd the
/// curve and are left out, as are struck lines. The theme outlives the plot.
void drawMarks(QCustomPlot& plot, const FiringSession& session, const Preferences& preferences,
               const Theme& theme, MarkWords words);

/// "damper half open: climb 58.2 °C/h before, 41.0 °C/h in the 20 min after.": of the setting that is nearest
/// to the instant and within that reach; empty without one.
QString settingNear(const FiringSession& session, const Preferences& preferences, Instant at, Duration reach);

} // namespace ringhold
