#include "ui/glance/glance_view.h"

#include "ui/alarm/live_alarms.h"
#include "ui/glance/glance_drawing.h"
#include "ui/session/notebook.h"
#include "ui/theme/theme.h"

#include <QKeyEvent>
#include <QPainter>

#include <cmath>

namespace ringhold {

GlanceView::GlanceView(Notebook& notebook, LiveAlarms& alarms, const Theme& theme, QWidget* parent)
    : QWidget(parent, Qt::Window), m_notebook(notebook), m_alarms(alarms), m_theme(theme) {
    setWindowTitle(tr("Ringhold · at a glance"));
    setFocusPolicy(Qt::StrongFocus);
    connect(&m_tick, &QTimer::timeout, this, &GlanceView::refresh);
    connect(&alarms, &LiveAlarms::changed, this, &GlanceView::refresh);
    connect(&theme, &Theme::changed, this, qOverload<>(&GlanceView::update));
    m_tick.start(1000);
}

void GlanceView::toggle() {
    if (isVisible()) {
        leave();
        return;
    }
    showFullScreen();
    raise();
    activateWindow();
}

void GlanceView::leave() {
    hide();
    if (parentWidget())
        parentWidget()->activateWindow();
}

void GlanceView::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    refresh();
}

void GlanceView::refresh() {
    if (!isVisible())
        return;
    m_words.clear();
    QStringList spoken;
    for (const auto& session : m_notebook.sessions()) {
        m_words.push_back(glanceWords(*session, m_alarms, m_notebook.preferences()));
        spoken << spokenWords(m_words.back());
    }
    setAccessibleName(tr("At a glance. F11 or Escape goes back."));
    setAccessibleDescription(spoken.join(QStringLiteral(". ")));
    update();
}

void GlanceView::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.fillRect(rect(), m_theme.palette().page);
    if (m_words.empty()) {
        painter.setPen(m_theme.palette().soft);
        painter.setFont(m_theme.text(TextSize::display));
        painter.drawText(rect(), Qt::AlignCenter, tr("No firing is live"));
        return;
    }
    const auto count = static_cast<int>(m_words.size());
    const int columns = static_cast<int>(std::ceil(std::sqrt(count)));
    const int rows = (count + columns - 1) / columns;
    const double width = static_cast<double>(this->width()) / columns;
    const double height = static_cast<double>(this->height()) / rows;
    for (int i = 0; i < count; ++i) {
        const QRectF cell((i % columns) * width, (i / columns) * height, width, height);
        drawGlance(painter, cell, m_words[static_cast<std::size_t>(i)], m_theme);
        if (count > 1) {
            painter.setPen(QPen(m_theme.palette().edge, 2));
            painter.setBrush(Qt::NoBrush);
            painter.drawRect(cell);
        }
    }
}

void GlanceView::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_F11 || event->key() == Qt::Key_Escape)
        leave();
    else if (event->key() == Qt::Key_F8 && m_alarms.loudest())
        m_alarms.acknowledge(*m_alarms.loudest()->session, m_alarms.loudest()->alarm.cause);
    else
        QWidget::keyPressEvent(event);
}

} // namespace ringhold
