#include "ui/ware/photo_drawing.h"

#include "ui/theme/theme.h"

#include <QPainter>

namespace ringhold {

namespace {

constexpr double markSize_px = 5;
constexpr double crossArm_px = 12;
constexpr double crossGap_px = 3;
constexpr double loupeSide_px = 128;
constexpr double loupeTimes = 4; ///< what is on the screen

const QColor light(255, 252, 240);
const QColor dark(20, 16, 12);

/// Twice: a broad dark stroke, a thin light one on it.
template <class Stroke>
void twice(QPainter& painter, Qt::PenStyle style, const Stroke& stroke) {
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(dark, 3.4, Qt::SolidLine, Qt::FlatCap));
    stroke();
    painter.setPen(QPen(light, 1.6, style, Qt::FlatCap));
    stroke();
}

} // namespace

void PhotoInk::line(QPointF from, QPointF to, Qt::PenStyle style) const {
    twice(m_painter, style, [&] { m_painter.drawLine(from, to); });
}

void PhotoInk::mark(QPointF where, PhotoMark mark) const {
    const QRectF box(where - QPointF(markSize_px, markSize_px), QSizeF(2 * markSize_px, 2 * markSize_px));
    const bool known = mark == PhotoMark::knownFrom || mark == PhotoMark::knownTo;
    twice(m_painter, Qt::SolidLine, [&] { known ? m_painter.drawRect(box) : m_painter.drawEllipse(box); });
}

void PhotoInk::cross(QPointF where) const {
    twice(m_painter, Qt::SolidLine, [&] {
        for (const QPointF arm : {QPointF(1, 0), QPointF(-1, 0), QPointF(0, 1), QPointF(0, -1)})
            m_painter.drawLine(where + arm * crossGap_px, where + arm * crossArm_px);
    });
}

void PhotoInk::loupe(const QImage& photo, QPointF onPhoto, QPointF onScreen, const QRectF& room,
                     double scale) const {
    constexpr double margin = 10;
    if (room.width() < 3 * loupeSide_px || room.height() < 2 * loupeSide_px)
        return;
    const bool left = onScreen.x() > room.center().x();
    const QRectF glass(left ? room.left() + margin : room.right() - margin - loupeSide_px,
                       room.top() + margin, loupeSide_px, loupeSide_px);
    const double side = loupeSide_px / loupeTimes / scale;
    m_painter.save();
    m_painter.fillRect(glass, dark);
    m_painter.setClipRect(glass);
    m_painter.drawImage(glass, photo, QRectF(onPhoto - QPointF(side, side) / 2, QSizeF(side, side)));
    cross(glass.center());
    m_painter.restore();
    m_painter.setPen(QPen(light, 2));
    m_painter.setBrush(Qt::NoBrush);
    m_painter.drawRect(glass);
}

void PhotoInk::frame(const QRectF& room) const {
    m_painter.setPen(QPen(m_theme.palette().plan, 3));
    m_painter.setBrush(Qt::NoBrush);
    m_painter.drawRect(room.adjusted(1, 1, -1, -1));
}

} // namespace ringhold
