#include "ui/plot/look_mark.h"

#include "ui/cones/cone_shape.h"
#include "ui/theme/theme.h"

namespace ringhold {

namespace {

constexpr double markHeight_px = 14;

} // namespace

LookMark::LookMark(QCustomPlot* plot, double key, double value, double hour, const Theme& theme)
    : QCPAbstractItem(plot), m_hour(hour), m_theme(theme), m_place(createPosition(QStringLiteral("place"))) {
    m_place->setCoords(key, value);
    setClipToAxisRect(false);
}

void LookMark::draw(QCPPainter* painter) {
    const QPointF at = m_place->pixelPosition();
    const auto shape = coneShape(m_hour, {QPointF(at.x() - 4, at.y() - 8), markHeight_px, false});
    painter->setAntialiasing(true);
    painter->setPen(QPen(m_theme.palette().coneOutline, 1));
    painter->setBrush(m_theme.palette().cone);
    painter->drawPath(shape.outline);
}

} // namespace ringhold
