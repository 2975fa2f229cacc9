#include "ui/theme/theme_follower.h"

#include "ui/theme/theme.h"

#include <QApplication>
#include <QEvent>

namespace ringhold {

ThemeFollower::ThemeFollower(Theme& theme, QApplication& application, SystemPalette system)
    : QObject(&theme), m_theme(theme), m_system(std::move(system)) {
    application.installEventFilter(this);
    follow();
}

void ThemeFollower::choose(ThemeChoice choice) {
    m_choice = choice;
    follow();
}

bool ThemeFollower::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::ThemeChange && m_choice == ThemeChoice::system)
        follow();
    return QObject::eventFilter(watched, event);
}

void ThemeFollower::follow() {
    const bool ember = m_choice == ThemeChoice::system ? isDark(m_system()) : m_choice == ThemeChoice::ember;
    m_theme.show(ember ? ThemeName::ember : ThemeName::paper);
}

QPalette ThemeFollower::systemPalette() {
    const QPalette worn = QApplication::palette();
    QApplication::setPalette(QPalette()); // which makes it the desktop's
    const QPalette system = QApplication::palette();
    QApplication::setPalette(worn);
    return system;
}

} // namespace ringhold
