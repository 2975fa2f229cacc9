#include "ui/report/crystal_drawing.h"

#include "ui/theme/palette.h"

#include <QPainter>

#include <cmath>
#include <numbers>

namespace ringhold {

namespace {

constexpr int fadeSteps = 24;
constexpr int needles = 150;

QColor sheer(QColor colour, double alpha) {
    colour.setAlphaF(static_cast<float>(alpha));
    return colour;
}

QColor between(const QColor& one, const QColor& other, double share) {
    const auto mix = [share](float a, float b) { return static_cast<float>(std::lerp(a, b, share)); };
    return QColor::fromRgbF(mix(one.redF(), other.redF()), mix(one.greenF(), other.greenF()),
                            mix(one.blueF(), other.blueF()));
}

void disc(QPainter& painter, QPointF centre, double radius, const QColor& colour) {
    painter.setPen(Qt::NoPen);
    painter.setBrush(colour);
    painter.drawEllipse(centre, radius, radius);
}

/// Many faint discs, each a little larger than the one on it.
void paintFade(QPainter& painter, QPointF centre, double from, double to, const QColor& colour) {
    for (int i = fadeSteps; i > 0; --i) {
        const double share = double(i) / fadeSteps;
        disc(painter, centre, std::lerp(from, to, share * share), sheer(colour, 0.02));
    }
}

/// The fine lines that run out from the middle of such a crystal.
void paintNeedles(QPainter& painter, QPointF centre, double radius, const QColor& colour) {
    painter.setPen(QPen(sheer(colour, 0.35), 0.35));
    for (int i = 0; i < needles; ++i) {
        const double angle = 2 * std::numbers::pi * i / needles;
        const double start = i % 5 == 0 ? 0.04 : i % 2 == 0 ? 0.35 : 0.6;
        const QPointF out(std::cos(angle), std::sin(angle));
        painter.drawLine(centre + out * radius * start, centre + out * radius);
    }
}

void paintCircle(QPainter& painter, QPointF centre, double radius, const QPen& pen) {
    painter.setBrush(Qt::NoBrush);
    painter.setPen(pen);
    painter.drawEllipse(centre, radius, radius);
}

} // namespace

void paintCrystal(QPainter& painter, const DrawnCrystal& crystal, QPointF centre, double perMm,
                  const Palette& palette) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const double radius = crystal.radius.likely_mm * perMm;
    const QColor rim = between(palette.plan, palette.page, 0.45);
    const QColor core = between(palette.band, palette.kiln, 0.06);
    paintFade(painter, centre, radius, crystal.radius.high_mm * perMm, palette.plan);
    disc(painter, centre, radius, crystal.rings.empty() ? core : rim);
    for (auto ring = crystal.rings.rbegin(); ring != crystal.rings.rend(); ++ring) {
        disc(painter, centre, ring->outer_mm * perMm, palette.forecastWindow);
        disc(painter, centre, ring->turn_mm * perMm, palette.forecast);
        disc(painter, centre, ring->inner_mm * perMm, palette.forecastWindow);
    }
    if (!crystal.rings.empty())
        disc(painter, centre, crystal.rings.front().inner_mm * perMm, core);
    paintNeedles(painter, centre, radius, palette.page);
    paintCircle(painter, centre, radius, QPen(between(palette.plan, palette.page, 0.2), 0.5));
    QPen dashes(palette.soft, 0.5, Qt::CustomDashLine);
    dashes.setDashPattern({4, 4});
    paintCircle(painter, centre, crystal.radius.low_mm * perMm, dashes);
    painter.restore();
}

} // namespace ringhold
