// The notebook's own small drawings, in the ink of the theme that is on.
#pragma once

#include <QIcon>
#include <QStringList>

namespace ringhold {

class Theme;

/// One of iconNames(). It follows the theme by itself; the theme must outlive it. An unknown name gives an
/// empty icon.
QIcon icon(const Theme& theme, const QString& name);

/// Every drawing in resources/icons.
QStringList iconNames();

} // namespace ringhold
