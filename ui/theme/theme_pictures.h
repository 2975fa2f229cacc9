// Pictures of widgets in both themes.
#pragma once

#include "core/base/result.h"

#include <QImage>
#include <QString>

#include <vector>

class QWidget;

namespace ringhold {

class Theme;

/// The widget as painted at that many pixels a point.
QImage pictureOf(QWidget& widget, double pixelRatio);

/// Saves NAME-paper.png, or NAME-ember.png, by the theme that is worn; for another pixel ratio than 1
/// NAME-paper-2x.png. The folder is made if need be.
Status keepPicture(QWidget& widget, const Theme& theme, const QString& folder, const QString& name,
                   const std::vector<int>& pixelRatios = {1});

/// Saves NAME-paper.png and NAME-ember.png into the folder, which is made if need be; for another pixel ratio
/// than 1 NAME-paper-2x.png. The theme is that of the running application, and is paper afterwards.
Status keepPictures(QWidget& widget, Theme& theme, const QString& folder, const QString& name,
                    const std::vector<int>& pixelRatios = {1});

} // namespace ringhold
