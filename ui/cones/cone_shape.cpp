#include "ui/cones/cone_shape.h"

#include "core/cones/bending.h"

#include <QTransform>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

namespace ringhold {

namespace {

constexpr double lean_rad = 8 * std::numbers::pi / 180;
constexpr double tipRadPerHour = std::numbers::pi / 6;
constexpr double tipWidth = 0.032;
constexpr double ridgeShare = 0.36; ///< of the width, from the leaning face
constexpr int spans = 12;           ///< curve pieces along a face
constexpr int stepsInSpan = 8;      ///< of the integration

/// How much of the bend lies below s (0 foot, 1 tip): little near the thick foot and near the tip, which
/// carries nothing; half of it below the middle, which makes the chord's angle half the tip's.
double bendShare(double s) {
    return 0.4 * s + 0.6 * s * s * (3 - 2 * s);
}

double bendSlope(double s) {
    return 0.4 + 0.6 * 6 * s * (1 - s);
}

double widthAt(double s) {
    return std::lerp(coneBaseWidth(), tipWidth, s);
}

/// A point of the leaning face (length 1, foot at 0, y up), and the direction there, from upright.
struct FacePoint {
    double s;
    QPointF at;
    double angle_rad;
};

QPointF along(double angle_rad) {
    return {std::sin(angle_rad), std::cos(angle_rad)};
}

/// Away from the side it leans to.
QPointF backwards(double angle_rad) {
    return {-std::cos(angle_rad), std::sin(angle_rad)};
}

std::vector<FacePoint> leaningFace(double tip_rad) {
    std::vector<FacePoint> face{{0, {0, 0}, 0}};
    constexpr double ds = 1.0 / (spans * stepsInSpan);
    QPointF at;
    for (int i = 0; i < spans * stepsInSpan; ++i) {
        const auto direction = [&](double s) { return along(tip_rad * bendShare(s)); };
        const double s = i * ds;
        at += (direction(s) + 4 * direction(s + ds / 2) + direction(s + ds)) * (ds / 6); // Simpson's rule
        if ((i + 1) % stepsInSpan == 0)
            face.push_back({s + ds, at, tip_rad * bendShare(s + ds)});
    }
    return face;
}

/// A point of the line that runs behind the face at a share of the width, and its derivative by s.
struct LinePoint {
    QPointF at;
    QPointF slope;
};

LinePoint behind(const FacePoint& face, double tip_rad, double share) {
    const double width = share * widthAt(face.s);
    const double widening = share * (tipWidth - coneBaseWidth());
    const double turning = tip_rad * bendSlope(face.s);
    return {face.at + width * backwards(face.angle_rad),
            (1 + width * turning) * along(face.angle_rad) + widening * backwards(face.angle_rad)};
}

/// Goes on along cubic pieces through the points, forwards or backwards.
void drawAlong(QPainterPath& path, const std::vector<LinePoint>& line, bool backwardsAlong) {
    const double third = (backwardsAlong ? -1.0 : 1.0) / (3.0 * spans);
    for (int i = 1; i <= spans; ++i) {
        const auto& from = line[backwardsAlong ? spans - i + 1 : i - 1];
        const auto& to = line[backwardsAlong ? spans - i : i];
        path.cubicTo(from.at + third * from.slope, to.at - third * to.slope, to.at);
    }
}

std::vector<LinePoint> lineBehind(const std::vector<FacePoint>& face, double tip_rad, double share) {
    std::vector<LinePoint> line;
    for (const auto& point : face)
        line.push_back(behind(point, tip_rad, share));
    return line;
}

QTransform placing(const ConePlace& place) {
    const double side = place.leansLeft ? -1 : 1;
    return {side * place.length, 0, 0, -place.length, place.foot.x(), place.foot.y()};
}

} // namespace

double coneBaseWidth() {
    return tipWidth + 2 * std::tan(lean_rad);
}

double coneReach() {
    static const double reach = [] {
        double farthest = 0;
        for (double hour = 3; hour <= hourDown; hour += 0.1)
            farthest = std::max(farthest, coneShape(hour, {}).outline.boundingRect().right());
        return farthest;
    }();
    return reach;
}

ConeShape coneShape(double hour, const ConePlace& place) {
    const double tip_rad = std::clamp(hour, hourStanding, hourDown) * tipRadPerHour;
    const auto face = leaningFace(tip_rad);
    const auto front = lineBehind(face, tip_rad, 0);
    const auto back = lineBehind(face, tip_rad, 1);
    const auto ridge = lineBehind(face, tip_rad, ridgeShare);

    ConeShape shape;
    shape.outline.moveTo(front.front().at);
    drawAlong(shape.outline, front, false);
    const QPointF rounding = tipWidth / 2 * along(tip_rad);
    shape.outline.cubicTo(front.back().at + rounding, back.back().at + rounding, back.back().at);
    drawAlong(shape.outline, back, true);
    shape.outline.closeSubpath();
    shape.ridge.moveTo(ridge.front().at);
    drawAlong(shape.ridge, ridge, false);

    const QTransform placed = placing(place);
    shape.outline = placed.map(shape.outline);
    shape.ridge = placed.map(shape.ridge);
    shape.tip = placed.map(face.back().at);
    return shape;
}

double hourOfTipAt(QPointF point, const ConePlace& place) {
    const double side = place.leansLeft ? -1 : 1;
    const QPointF from = point - place.foot;
    const double chord_rad = std::atan2(side * from.x(), -from.y());
    const bool belowFoot = from.y() > 0;
    const double hour = belowFoot ? hourDown : chord_rad / tipRadPerHour * 2;
    return std::round(2 * std::clamp(hour, hourStanding, hourDown)) / 2;
}

} // namespace ringhold
