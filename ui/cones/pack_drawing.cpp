#include "ui/cones/pack_drawing.h"

#include "ui/theme/palette.h"

#include <QPainter>

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

// All in cone lengths.
constexpr double leastPitch = 0.78; ///< from foot to foot, at the least
constexpr double mostPitch = 1.15;  ///< where there is room
constexpr double plaqueHeight = 0.13;
constexpr double margin = 0.08; ///< of the plaque, on both sides
constexpr double headroom = 0.04;
constexpr double sunk = 0.02; ///< how deep a cone sits in its plaque

double widthInLengths(std::size_t cones, double pitch = leastPitch) {
    return 2 * margin + coneBaseWidth() + pitch * static_cast<double>(cones - 1) + coneReach();
}

constexpr double heightInLengths = headroom + 1 + plaqueHeight;

QPen pen(const QColor& colour, double width, Qt::PenStyle style = Qt::SolidLine) {
    return QPen(colour, width, style, Qt::RoundCap, Qt::RoundJoin);
}

QColor sheer(QColor colour, double alpha) {
    colour.setAlphaF(static_cast<float>(alpha));
    return colour;
}

} // namespace

PackInks PackInks::onPaper(const Palette& p) {
    return {p.cone, p.coneOutline, p.plaque, p.forecastText, p.ink};
}

PackInks PackInks::inTheGlow(const Palette& p) {
    return {p.hotCone, p.hotConeOutline, p.hotPlaque, p.hotGhost, p.glowText};
}

double PackDrawing::aspect(std::size_t cones) {
    return widthInLengths(std::max<std::size_t>(cones, 1)) / heightInLengths;
}

PackDrawing::PackDrawing(DrawnPack pack, const QRectF& area, double nameHeight)
    : m_pack(std::move(pack)), m_nameHeight(nameHeight) {
    const std::size_t cones = std::max<std::size_t>(m_pack.cones.size(), 1);
    m_length = std::max(
        1.0, std::min(area.width() / widthInLengths(cones), (area.height() - nameHeight) / heightInLengths));
    const double spare = area.width() / m_length - widthInLengths(cones);
    m_pitch =
        cones > 1 ? std::min(leastPitch + spare / static_cast<double>(cones - 1), mostPitch) : leastPitch;
    m_plaque = QRectF(0, 0, widthInLengths(cones, m_pitch) * m_length, plaqueHeight * m_length);
    m_plaque.moveCenter(area.center());
    m_plaque.moveBottom(area.bottom() - nameHeight);
    m_firstFoot = (margin + coneBaseWidth()) * m_length;
}

ConePlace PackDrawing::place(std::size_t cone) const {
    const double along = m_firstFoot + m_pitch * m_length * static_cast<double>(cone);
    const double x = m_pack.leansLeft ? m_plaque.right() - along : m_plaque.left() + along;
    return {{x, m_plaque.top() + sunk * m_length}, m_length, m_pack.leansLeft};
}

QRectF PackDrawing::nameRect(std::size_t cone) const {
    const double middle = coneBaseWidth() / 2 * m_length;
    const double x = place(cone).foot.x() + (m_pack.leansLeft ? middle : -middle);
    const double width = (coneBaseWidth() + 2 * margin) * m_length;
    return {x - width / 2, m_plaque.bottom(), width, m_nameHeight};
}

void PackDrawing::paint(QPainter& painter, const PackInks& inks, const QFont& nameFont) const {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const double line = std::clamp(m_length / 90, 0.6, 2.2);
    for (std::size_t i = 0; i < m_pack.cones.size(); ++i)
        paintInterval(painter, i, inks.ghost);
    for (std::size_t i = m_pack.cones.size(); i-- > 0;) { // the one that bends first lies in front
        const auto shape = coneShape(m_pack.cones[i].hour, place(i));
        painter.setPen(Qt::NoPen);
        painter.setBrush(inks.cone);
        painter.drawPath(shape.outline);
        painter.setBrush(Qt::NoBrush);
        painter.setPen(pen(sheer(inks.outline, 0.45), line * 0.7));
        painter.drawPath(shape.ridge);
        painter.setPen(pen(inks.outline, line));
        painter.drawPath(shape.outline);
        paintGhost(painter, i, inks.ghost);
    }
    painter.setPen(Qt::NoPen);
    painter.setBrush(inks.plaque);
    painter.drawRoundedRect(m_plaque, m_plaque.height() * 0.3, m_plaque.height() * 0.3);
    painter.setPen(inks.words);
    for (std::size_t i = 0; i < m_pack.cones.size() && m_nameHeight > 0; ++i)
        paintName(painter, i, nameFont);
    painter.restore();
}

void PackDrawing::paintInterval(QPainter& painter, std::size_t cone, const QColor& ink) const {
    const auto& ghost = m_pack.cones[cone].ghost;
    if (!ghost)
        return;
    QPainterPath swept; // all that the interval covers, filled once
    swept.setFillRule(Qt::WindingFill);
    const int steps = std::clamp(static_cast<int>((ghost->high - ghost->low) / 0.03), 1, 60);
    for (int i = 0; i <= steps; ++i)
        swept.addPath(coneShape(std::lerp(ghost->low, ghost->high, double(i) / steps), place(cone)).outline);
    painter.setPen(Qt::NoPen);
    painter.setBrush(sheer(ink, 0.14));
    painter.drawPath(swept);
}

void PackDrawing::paintGhost(QPainter& painter, std::size_t cone, const QColor& ink) const {
    const auto& ghost = m_pack.cones[cone].ghost;
    if (!ghost)
        return;
    auto dashes = pen(ink, std::clamp(m_length / 100, 0.6, 2.0), Qt::CustomDashLine);
    dashes.setDashPattern({2.6, 2.4});
    dashes.setCapStyle(Qt::FlatCap);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(dashes);
    painter.drawPath(coneShape(ghost->hour, place(cone)).outline);
}

void PackDrawing::paintName(QPainter& painter, std::size_t cone, const QFont& font) const {
    const auto& drawn = m_pack.cones[cone];
    QFont own = font;
    own.setBold(drawn.picked);
    own.setUnderline(drawn.picked);
    painter.setFont(own);
    painter.drawText(nameRect(cone), Qt::AlignHCenter | Qt::AlignBottom, drawn.name);
}

std::optional<std::size_t> PackDrawing::coneAt(QPointF point) const {
    std::optional<std::size_t> found;
    double nearest = 0.3 * m_length;
    for (std::size_t i = 0; i < m_pack.cones.size(); ++i) {
        const auto shape = coneShape(m_pack.cones[i].hour, place(i));
        const double toTip = QLineF(point, shape.tip).length();
        const bool on = shape.outline.contains(point) || (m_nameHeight > 0 && nameRect(i).contains(point));
        const double distance = on ? std::min(toTip, 0.15 * m_length) : toTip;
        if (distance < nearest) {
            nearest = distance;
            found = i;
        }
    }
    return found;
}

} // namespace ringhold
