// What is drawn over a photo: seen on a light and on a dark one.
#pragma once

#include "ui/ware/photo_measure.h"

#include <QImage>
#include <QRectF>

class QPainter;

namespace ringhold {

class Theme;

/// Each stroke is light with a dark edge, since nobody knows what lies under it. Places are on the screen.
class PhotoInk {
  public:
    PhotoInk(QPainter& painter, const Theme& theme) : m_painter(painter), m_theme(theme) {}

    void line(QPointF from, QPointF to, Qt::PenStyle style) const;
    /// A square for the known length, a round one for the crystal.
    void mark(QPointF where, PhotoMark mark) const;
    void cross(QPointF where) const;
    /// Enlarged, in a corner of the room that is far from it.
    void loupe(const QImage& photo, QPointF onPhoto, QPointF onScreen, const QRectF& room,
               double scale) const;
    void frame(const QRectF& room) const;

  private:
    QPainter& m_painter;
    const Theme& m_theme;
};

} // namespace ringhold
