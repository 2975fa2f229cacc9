#include "ui/alarm/window_flash.h"

#include "ui/theme/theme.h"

#include <QApplication>
#include <QPainter>

namespace ringhold {

namespace {

constexpr int half_ms = 300;
constexpr double opacity = 0.55;

} // namespace

WindowFlash::WindowFlash(const Theme& theme, QWidget& window) : QWidget(&window), m_theme(theme) {
    setAttribute(Qt::WA_TransparentForMouseEvents);
    setFocusPolicy(Qt::NoFocus);
    hide();
    connect(&m_timer, &QTimer::timeout, this, &WindowFlash::step);
}

void WindowFlash::flash(int times) {
    m_left = times * 2;
    QApplication::alert(window());
    if (!m_timer.isActive())
        m_timer.start(half_ms);
    step();
}

void WindowFlash::step() {
    if (m_left <= 0) {
        m_timer.stop();
        hide();
        return;
    }
    setGeometry(parentWidget()->rect());
    setVisible(m_left % 2 == 0);
    raise();
    --m_left;
}

void WindowFlash::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setOpacity(opacity);
    painter.fillRect(rect(), m_theme.palette().warning);
}

} // namespace ringhold
