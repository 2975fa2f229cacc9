#include "ui/plan/crystal_view.h"

#include "ui/report/crystal_drawing.h"
#include "ui/theme/theme.h"

#include <QPainter>

#include <algorithm>
#include <cmath>

namespace ringhold {

CrystalView::CrystalView(const Theme& theme, QWidget* parent) : QWidget(parent), m_theme(theme) {
    setObjectName(QStringLiteral("planCrystal"));
    connect(&theme, &Theme::changed, this, qOverload<>(&QWidget::update));
}

void CrystalView::show(const std::optional<PlanCrystal>& crystal) {
    m_crystal = crystal;
    setVisible(crystal.has_value());
    setAccessibleName(crystal ? tr("Crystal %1, %2").arg(sizeWords(*crystal), sourceWords(*crystal))
                              : QString());
    update();
}

namespace {
constexpr double barGap = 3; ///< above and below the scale's bar, in pixels
}

void CrystalView::paintEvent(QPaintEvent*) {
    if (!m_crystal)
        return;
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QFont font = m_theme.text(TextSize::small);
    const double words = QFontMetricsF(font).height();
    const double room = std::min<double>(width(), height() - words - 2 * barGap);
    const double perMm = room / (2 * m_crystal->radius.high_mm);
    paintCrystal(painter, {m_crystal->radius, m_crystal->rings}, QPointF(width() / 2.0, room / 2), perMm,
                 m_theme.palette());
    const double bar_mm = barLength_mm(width() / perMm / 3);
    const double y = height() - words - barGap;
    painter.setPen(QPen(m_theme.palette().soft, 1.2));
    painter.drawLine(QPointF(0, y), QPointF(bar_mm * perMm, y));
    painter.setFont(font);
    painter.drawText(QRectF(0, y + barGap, width(), words), Qt::AlignLeft, tr("%1\u202fmm").arg(bar_mm));
}

double barLength_mm(double atMost_mm) {
    const double decade = std::pow(10, std::floor(std::log10(atMost_mm)));
    for (const double steps : {5.0, 2.0})
        if (steps * decade <= atMost_mm)
            return steps * decade;
    return decade;
}

} // namespace ringhold
