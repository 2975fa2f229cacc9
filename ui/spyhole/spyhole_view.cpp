#include "ui/spyhole/spyhole_view.h"

#include "ui/cones/pack_view.h"
#include "ui/theme/theme.h"

#include <QApplication>
#include <QMouseEvent>
#include <QPainter>
#include <QRadialGradient>

#include <algorithm>

namespace ringhold {

namespace {

constexpr double rimShare = 0.018; ///< of the hole's diameter

}

SpyholeView::SpyholeView(const Theme& theme, QWidget* parent) : QWidget(parent), m_theme(theme) {
    setAccessibleName(tr("The pack through the spyhole"));
    setMouseTracking(true);
    connect(&theme, &Theme::changed, this, qOverload<>(&QWidget::update));
}

void SpyholeView::setPack(const DrawnPack& pack) {
    m_pack = pack;
    setAccessibleDescription(packInWords(pack));
    update();
}

QRectF SpyholeView::hole() const {
    const double diameter = std::min(width(), height()) - 2;
    QRectF square(0, 0, diameter, diameter);
    square.moveCenter(QRectF(rect()).center());
    return square;
}

QFont SpyholeView::nameFont() const {
    return m_theme.text(TextSize::large);
}

PackDrawing SpyholeView::drawing() const {
    const QRectF around = hole();
    const double size = around.width();
    const double names = QFontMetricsF(nameFont()).height() * 1.2;
    const double width = 0.84 * size;
    const double height = std::min(width / PackDrawing::aspect(m_pack.cones.size()) + names, 0.62 * size);
    QRectF area(0, 0, width, height);
    area.moveCenter(around.center() + QPointF(0, 0.02 * size));
    return PackDrawing(m_pack, area, names);
}

void SpyholeView::paintEvent(QPaintEvent*) {
    const auto& palette = m_theme.palette();
    const QRectF around = hole();
    const double rim = rimShare * around.width();
    QRadialGradient glow(around.center(), around.width() / 2);
    glow.setColorAt(0, palette.glowHeart);
    glow.setColorAt(0.55, palette.glow);
    glow.setColorAt(1, palette.glowEdge);
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(palette.rim, rim));
    painter.setBrush(glow);
    painter.drawEllipse(around.adjusted(rim / 2, rim / 2, -rim / 2, -rim / 2));
    drawing().paint(painter, PackInks::inTheGlow(palette), nameFont());
}

void SpyholeView::mousePressEvent(QMouseEvent* event) {
    m_held = event->button() == Qt::LeftButton ? drawing().coneAt(event->position()) : std::nullopt;
    m_pressedAt = event->position();
    m_pulling = false;
}

void SpyholeView::mouseMoveEvent(QMouseEvent* event) {
    if (!m_held) {
        setCursor(drawing().coneAt(event->position()) ? Qt::PointingHandCursor : Qt::ArrowCursor);
        return;
    }
    const auto moved = (event->position() - m_pressedAt).manhattanLength();
    m_pulling = m_pulling || moved >= QApplication::startDragDistance();
    const double hour = hourOfTipAt(event->position(), drawing().place(*m_held));
    const auto& cone = m_pack.cones[*m_held];
    if (m_pulling && (hour != cone.hour || !cone.picked))
        Q_EMIT pulled(*m_held, hour);
}

void SpyholeView::mouseReleaseEvent(QMouseEvent*) {
    if (m_held && !m_pulling)
        Q_EMIT picked(*m_held);
    m_held.reset();
}

} // namespace ringhold
