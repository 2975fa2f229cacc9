#include "ui/ware/photo_view.h"

#include "ui/theme/theme.h"
#include "ui/ware/photo_drawing.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>

#include <algorithm>

namespace ringhold {

namespace {

constexpr double mostZoom = 16;
constexpr double zoomStep = 1.25;
constexpr double grabWithin_px = 9; ///< of the screen
constexpr double screenError_px = 1.5;
constexpr double longStep_px = 12;

} // namespace

PhotoView::PhotoView(const Theme& theme, QWidget* parent) : QWidget(parent), m_theme(theme) {
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
    setCursor(Qt::CrossCursor);
    setAccessibleName(tr("Photo to measure on"));
    setAccessibleDescription(
        tr("Arrows move the cross, Enter sets a mark, Backspace takes the last back, plus and minus zoom"));
    connect(&theme, &Theme::changed, this, qOverload<>(&PhotoView::update));
}

void PhotoView::show(const QImage& photo) {
    m_photo = photo;
    m_cross = QPointF(photo.width(), photo.height()) / 2;
    m_zoom = 1;
    fit();
    startOver();
}

void PhotoView::takeBack() {
    m_marks.takeBack();
    update();
    Q_EMIT marksChanged();
}

void PhotoView::startOver() {
    m_marks.clear();
    update();
    Q_EMIT marksChanged();
}

double PhotoView::markError_px() const {
    return std::max(1.0, screenError_px / scale());
}

QPointF PhotoView::toScreen(QPointF onPhoto) const {
    return m_corner + onPhoto * scale();
}

QPointF PhotoView::toPhoto(QPointF onScreen) const {
    return (onScreen - m_corner) / scale();
}

void PhotoView::fit() {
    if (m_photo.isNull())
        return;
    m_fitScale = std::min(double(width()) / m_photo.width(), double(height()) / m_photo.height());
    keepInside();
}

/// A picture smaller than the view stands in its middle, a larger one leaves no gap.
void PhotoView::keepInside() {
    const auto placed = [](double corner, double length, double room) {
        return length <= room ? (room - length) / 2 : std::clamp(corner, room - length, 0.0);
    };
    m_corner = {placed(m_corner.x(), m_photo.width() * scale(), width()),
                placed(m_corner.y(), m_photo.height() * scale(), height())};
    update();
}

void PhotoView::zoomAt(QPointF onScreen, double factor) {
    const QPointF held = toPhoto(onScreen);
    m_zoom = std::clamp(m_zoom * factor, 1.0, mostZoom);
    m_corner = onScreen - held * scale();
    keepInside();
}

void PhotoView::moveCross(QPointF onPhoto) {
    m_cross = {std::clamp(onPhoto.x(), 0.0, double(m_photo.width())),
               std::clamp(onPhoto.y(), 0.0, double(m_photo.height()))};
    update();
}

void PhotoView::setMark() {
    if (m_photo.isNull() || m_marks.complete())
        return;
    m_marks.add(m_cross);
    update();
    Q_EMIT marksChanged();
}

void PhotoView::resizeEvent(QResizeEvent*) {
    fit();
}

void PhotoView::mousePressEvent(QMouseEvent* event) {
    if (event->button() == Qt::RightButton) {
        m_panFrom = event->position() - m_corner;
        return;
    }
    if (event->button() != Qt::LeftButton)
        return;
    moveCross(toPhoto(event->position()));
    m_dragged = m_marks.near(m_cross, grabWithin_px / scale());
    if (!m_dragged)
        setMark();
}

void PhotoView::mouseMoveEvent(QMouseEvent* event) {
    if (m_panFrom) {
        m_corner = event->position() - *m_panFrom;
        return keepInside();
    }
    moveCross(toPhoto(event->position()));
    if (!m_dragged)
        return;
    m_marks.move(*m_dragged, m_cross);
    Q_EMIT marksChanged();
}

void PhotoView::mouseReleaseEvent(QMouseEvent*) {
    m_dragged.reset();
    m_panFrom.reset();
}

void PhotoView::wheelEvent(QWheelEvent* event) {
    zoomAt(event->position(), event->angleDelta().y() > 0 ? zoomStep : 1 / zoomStep);
    event->accept();
}

bool PhotoView::moveCrossByKey(int key, double step) {
    const double length = step / scale();
    const QPointF by = key == Qt::Key_Left    ? QPointF(-length, 0)
                       : key == Qt::Key_Right ? QPointF(length, 0)
                       : key == Qt::Key_Up    ? QPointF(0, -length)
                       : key == Qt::Key_Down  ? QPointF(0, length)
                                              : QPointF();
    if (by.isNull())
        return false;
    moveCross(m_cross + by);
    const QPointF at = toScreen(m_cross);
    m_corner +=
        QPointF(std::clamp(at.x(), 20.0, width() - 20.0), std::clamp(at.y(), 20.0, height() - 20.0)) - at;
    keepInside();
    return true;
}

void PhotoView::keyPressEvent(QKeyEvent* event) {
    const int key = event->key();
    if (moveCrossByKey(key, event->modifiers() & Qt::ShiftModifier ? longStep_px : 1))
        return;
    if (key == Qt::Key_Return || key == Qt::Key_Enter || key == Qt::Key_Space)
        return setMark();
    if (key == Qt::Key_Backspace || key == Qt::Key_Delete)
        return takeBack();
    if (key == Qt::Key_Plus || key == Qt::Key_Equal)
        return zoomAt(toScreen(m_cross), zoomStep);
    if (key == Qt::Key_Minus)
        return zoomAt(toScreen(m_cross), 1 / zoomStep);
    if (key == Qt::Key_Home)
        return zoomAt({}, 0);
    QWidget::keyPressEvent(event);
}

void PhotoView::focusInEvent(QFocusEvent* event) {
    QWidget::focusInEvent(event);
    update();
}

void PhotoView::focusOutEvent(QFocusEvent* event) {
    QWidget::focusOutEvent(event);
    update();
}

void PhotoView::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setRenderHint(QPainter::SmoothPixmapTransform, scale() < 4);
    painter.fillRect(rect(), m_theme.palette().table);
    if (m_photo.isNull())
        return;
    painter.drawImage(QRectF(m_corner, QSizeF(m_photo.size()) * scale()), m_photo);
    const PhotoInk ink(painter, m_theme);
    if (const auto known = m_marks.known())
        ink.line(toScreen(known->p1()), toScreen(known->p2()), Qt::DashLine);
    if (const auto crystal = m_marks.crystal())
        ink.line(toScreen(crystal->p1()), toScreen(crystal->p2()), Qt::SolidLine);
    for (int i = 0; i < m_marks.count(); ++i) {
        const auto mark = static_cast<PhotoMark>(i);
        ink.mark(toScreen(*m_marks.at(mark)), mark);
    }
    ink.cross(toScreen(m_cross));
    ink.loupe(m_photo, m_cross, toScreen(m_cross), QRectF(rect()), scale());
    if (hasFocus())
        ink.frame(rect());
}

} // namespace ringhold
