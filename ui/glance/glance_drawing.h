// Draws what the glance view says of one firing.
#pragma once

#include "ui/glance/glance_words.h"

#include <QRectF>

class QPainter;

namespace ringhold {

class Theme;

/// Fills the rectangle: lines are as large as its height allows, and smaller where the width does not. The
/// figure takes about a third of the height. A value that is not live is pale and struck out.
void drawGlance(QPainter& painter, const QRectF& in, const GlanceWords& words, const Theme& theme);

} // namespace ringhold
