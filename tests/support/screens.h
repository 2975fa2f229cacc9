// Pictures for the developer: what a widget looks like in both themes and at two pixel densities.
#pragma once

#include "ui/theme/theme.h"
#include "ui/theme/theme_pictures.h"

#include <QString>

class QWidget;

namespace ringhold {

/// Saves NAME-paper.png, NAME-paper-2x.png, NAME-ember.png and NAME-ember-2x.png into the folder that the
/// environment variable RINGHOLD_SCREENS names; does nothing without it. The theme is worn by the application
/// meanwhile and is paper afterwards.
void keepScreens(QWidget& widget, Theme& theme, const QString& name);

} // namespace ringhold
