// Shows the theme that the potter chose, or the one that goes with the desktop.
#pragma once

#include "ui/session/preferences.h"

#include <QObject>
#include <QPalette>

#include <functional>

class QApplication;

namespace ringhold {

class Theme;

/// Theme and application outlive it.
class ThemeFollower : public QObject {
    Q_OBJECT

  public:
    using SystemPalette = std::function<QPalette()>;

    /// Follows the system until something else is chosen. The palette to follow is read at once and whenever
    /// the desktop tells that its theme has changed.
    ThemeFollower(Theme& theme, QApplication& application, SystemPalette system = systemPalette);

    void choose(ThemeChoice choice);

    /// The desktop's own palette, whatever the application wears.
    static QPalette systemPalette();

    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    void follow();

    Theme& m_theme;
    SystemPalette m_system;
    ThemeChoice m_choice = ThemeChoice::system;
};

} // namespace ringhold
