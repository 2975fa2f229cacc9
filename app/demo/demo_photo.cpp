#include "app/demo/demo_photo.h"

#include "core/kiln/chance.h"

#include <QBuffer>
#include <QPainter>
#include <QPainterPath>

#include <cmath>
#include <numbers>

namespace ringhold {

namespace {

constexpr int width_px = 640;
constexpr int height_px = 800;
constexpr double px_per_mm = 3.2;
constexpr double scale_mm = 50;
constexpr int quality = 82; // of 100

QColor colourOf(const std::string& picked, const QColor& otherwise) {
    const QColor colour(QString::fromStdString(picked));
    return colour.isValid() ? colour : otherwise;
}

/// The outline of a vase, bowl or tile, standing on y = 690.
QPainterPath outlineOf(const std::string& form) {
    QPainterPath path;
    if (form == "tile") {
        path.addRoundedRect(170, 250, 300, 440, 10, 10);
        return path;
    }
    const bool low = form == "bowl";
    const double rim = low ? 470 : 150;
    const double neck = low ? 225 : form == "bottle" ? 38 : 90;
    const double belly = low ? 215 : 190;
    path.moveTo(320 - neck, rim);
    path.cubicTo(320 - neck, rim + 150, 320 - belly, low ? 560 : 330, 320 - belly, low ? 570 : 470);
    path.cubicTo(320 - belly, 620, 320 - 110, 660, 320 - 95, 690);
    path.lineTo(320 + 95, 690);
    path.cubicTo(320 + 110, 660, 320 + belly, 620, 320 + belly, low ? 570 : 470);
    path.cubicTo(320 + belly, low ? 560 : 330, 320 + neck, rim + 150, 320 + neck, rim);
    path.closeSubpath();
    return path;
}

void drawSheet(QPainter& painter) {
    QLinearGradient paper(0, 0, 0, height_px);
    paper.setColorAt(0, QColor(0xd9, 0xd5, 0xcc));
    paper.setColorAt(0.83, QColor(0xc4, 0xbf, 0xb3));
    paper.setColorAt(0.84, QColor(0xb1, 0xaa, 0x9b));
    paper.setColorAt(1, QColor(0xa4, 0x9d, 0x8e));
    painter.fillRect(0, 0, width_px, height_px, paper);
}

/// Black and white centimetres.
void drawScale(QPainter& painter, QPointF from) {
    for (int cm = 0; cm < 5; ++cm)
        painter.fillRect(QRectF(from.x() + cm * 10 * px_per_mm, from.y(), 10 * px_per_mm, 14),
                         cm % 2 ? Qt::white : Qt::black);
}

/// Spokes from the middle, fainter outwards, with the rings that were counted.
void drawCrystal(QPainter& painter, QPointF centre, double radius_px, const QColor& colour, int rings,
                 Chance& chance) {
    QRadialGradient glow(centre, radius_px);
    QColor faint = colour;
    faint.setAlpha(150);
    glow.setColorAt(0, colour);
    glow.setColorAt(0.85, faint);
    faint.setAlpha(90);
    glow.setColorAt(1, faint);
    painter.setPen(Qt::NoPen);
    painter.setBrush(glow);
    painter.drawEllipse(centre, radius_px, radius_px);
    painter.setBrush(Qt::NoBrush);
    for (double angle = 0; angle < 2 * std::numbers::pi; angle += 0.05 + 0.1 * chance.uniform()) {
        painter.setPen(QPen(chance.uniform() < 0.5 ? colour.lighter(115) : colour.darker(118), 1));
        const double length = radius_px * (0.75 + 0.25 * chance.uniform());
        painter.drawLine(centre, centre + length * QPointF(std::cos(angle), std::sin(angle)));
    }
    painter.setPen(QPen(colour.darker(150), 1.3));
    for (int ring = 1; ring <= rings && radius_px > 20; ++ring) {
        const double at = radius_px * (0.55 + 0.42 * ring / (rings + 1));
        painter.drawEllipse(centre, at, at);
    }
}

int countOf(const Outcome& outcome) {
    if (!outcome.crystals)
        return 0;
    switch (*outcome.crystals) {
    case Crystals::none:
        return 0;
    case Crystals::few:
        return 5;
    case Crystals::many:
        return 14;
    case Crystals::covered:
        return 34;
    }
    return 0;
}

PhotoPoint share(QPointF point) {
    return {point.x() / width_px, point.y() / height_px};
}

} // namespace

DemoPicture drawDemoPiece(const Piece& piece, const Outcome& outcome, std::uint64_t seed) {
    Chance chance(seed, 31);
    DemoPicture picture{QImage(width_px, height_px, QImage::Format_RGB32), {}};
    QPainter painter(&picture.image);
    painter.setRenderHint(QPainter::Antialiasing);
    drawSheet(painter);
    const QPainterPath outline = outlineOf(piece.form);
    const QColor ground = colourOf(outcome.groundPicked, QColor(0xb8, 0xb0, 0xa0));
    const QColor crystal = colourOf(outcome.crystalPicked, ground.lighter());
    const QRectF body = outline.boundingRect();
    QLinearGradient light(body.topLeft(), body.topRight());
    light.setColorAt(0, ground.darker(135));
    light.setColorAt(0.35, ground.lighter(115));
    light.setColorAt(1, ground.darker(150));
    painter.fillPath(outline, light);
    painter.setClipPath(outline);
    const double largest_px = outcome.largest_mm.value_or(0) / 2 * px_per_mm;
    const int rings = outcome.rings.value_or(0);
    for (int i = 1; i < countOf(outcome); ++i) {
        const QPointF centre(body.left() + body.width() * chance.uniform(),
                             body.top() + body.height() * chance.uniform());
        drawCrystal(painter, centre, largest_px * (0.35 + 0.5 * chance.uniform()), crystal, rings, chance);
    }
    const QPointF middle(315, 520);
    if (largest_px > 0)
        drawCrystal(painter, middle, largest_px, crystal, rings, chance);
    painter.setClipping(false);
    const QPointF scale(60, 745);
    drawScale(painter, scale);
    picture.ends = {share(scale), share(scale + QPointF(scale_mm * px_per_mm, 0)),
                    share(middle - QPointF(largest_px, 0)), share(middle + QPointF(largest_px, 0))};
    return picture;
}

Result<Photo> demoPhoto(const DemoPicture& picture, const std::string& caption, Instant taken) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    if (!picture.image.save(&buffer, "JPG", quality))
        return Error{ErrorKind::failed, "this computer can write no JPEG pictures"};
    return Photo{{}, {}, taken, width_px, height_px, caption, bytes.toStdString()};
}

} // namespace ringhold
