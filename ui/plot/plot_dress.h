// A plot in the theme's colours.
#pragma once

class QCustomPlot;

namespace ringhold {

class Theme;

/// Background, axes, grid and fonts; what is drawn in it is the caller's. To be called again when the theme
/// changed.
void dressPlot(QCustomPlot& plot, const Theme& theme);

} // namespace ringhold
