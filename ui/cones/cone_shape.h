// How a bent cone looks: one outline for the spyhole, the pack card, the report and the margin marks.
#pragma once

#include <QPainterPath>
#include <QPointF>

namespace ringhold {

/// Where a cone stands, and how large it is drawn.
struct ConePlace {
    QPointF foot;           ///< the corner that it leans over, on the plaque; y grows downwards
    double length = 1;      ///< of its leaning face, from foot to tip; the same however far it bends
    bool leansLeft = false; ///< mirrored
};

struct ConeShape {
    QPainterPath outline; ///< closed, crosses itself nowhere
    QPainterPath ridge;   ///< the edge between the two faces that are seen
    QPointF tip;
};

/// A cone whose tip points to that hour, 0 standing to 6 down (values outside are taken to the nearest). The
/// leaning face turns along its length from upright to the hour's own angle (30° an hour), as much before its
/// middle as after it, so that its chord from foot to tip is half as far round (15° an hour, the angle of the
/// bending law in core/cones/bending.h): at 3 the tip points level, at 6 it is level with the foot. The axis
/// leans 8° when the cone stands, and the base is as wide as that makes it.
ConeShape coneShape(double hour, const ConePlace& place);

/// How wide the base is, and how far from its foot a cone reaches at its farthest (between 3 and 6), for a
/// length of 1.
double coneBaseWidth();
double coneReach();

/// The hour, in halves, at which the tip would lie in the direction of that point, for a tip drawn by hand:
/// below the foot is down, behind it is standing.
double hourOfTipAt(QPointF point, const ConePlace& place);

} // namespace ringhold
