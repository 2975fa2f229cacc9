#include "ui/glance/glance_drawing.h"

#include "ui/theme/theme.h"

#include <QCoreApplication>
#include <QFontMetricsF>
#include <QPainter>

#include <algorithm>

namespace ringhold {

namespace {

constexpr double figureShare = 0.36; ///< of the height
constexpr double lineShare = 0.068;
constexpr double footShare = 0.05;
constexpr double side = 0.05; ///< of the width, free at either side

/// Of that height, or smaller if the words are wider than the room.
QFont fitted(const Theme& theme, const QString& words, double height, double room, QFont::Weight weight) {
    QFont font = theme.text(TextSize::body, weight);
    font.setPixelSize(std::max(8, static_cast<int>(height)));
    const double width = QFontMetricsF(font).horizontalAdvance(words);
    if (width > room)
        font.setPixelSize(std::max(8, static_cast<int>(height * room / width)));
    return font;
}

class Sheet {
  public:
    Sheet(QPainter& painter, const QRectF& in, const Theme& theme)
        : m_painter(painter), m_in(in), m_theme(theme) {}

    const Palette& colours() const { return m_theme.palette(); }
    double room() const { return m_in.width() * (1 - 2 * side); }

    /// A line whose middle is at that share of the height.
    void line(const QString& words, double at, double share, const QColor& colour,
              QFont::Weight weight = QFont::Normal) {
        const double height = m_in.height() * share;
        m_painter.setFont(fitted(m_theme, words, height, room(), weight));
        m_painter.setPen(colour);
        m_painter.drawText(row(at, height), Qt::AlignCenter, words);
    }
    QRectF row(double at, double height) const {
        return {m_in.left() + m_in.width() * side, m_in.top() + m_in.height() * at - height, room(),
                height * 2};
    }

    void figure(const GlanceWords& words) {
        const double height = m_in.height() * figureShare;
        QFont font = fitted(m_theme, words.temperature, height, room() * 0.86, QFont::Bold);
        font.setStrikeOut(!words.live && words.temperature != QStringLiteral("–"));
        QFont unitFont = m_theme.text(TextSize::body);
        unitFont.setPixelSize(std::max(8, font.pixelSize() / 4));
        const double width = QFontMetricsF(font).horizontalAdvance(words.temperature);
        const double unitWidth =
            QFontMetricsF(unitFont).horizontalAdvance(words.unit) + font.pixelSize() * 0.06;
        const double left = m_in.center().x() - (width + unitWidth) / 2;
        const double baseline = m_in.top() + m_in.height() * 0.40 + QFontMetricsF(font).capHeight() / 2;
        m_painter.setPen(words.live ? colours().ink : colours().soft);
        m_painter.setFont(font);
        m_painter.drawText(QPointF(left, baseline), words.temperature);
        m_painter.setPen(colours().soft);
        m_painter.setFont(unitFont);
        m_painter.drawText(QPointF(left + width + font.pixelSize() * 0.06, baseline), words.unit);
    }

    void foot(const GlanceWords& words) {
        const QString alarm =
            words.alarm.isEmpty() ? QCoreApplication::translate("Glance", "no alarm") : words.alarm;
        const QString more =
            words.alarmsMore > 0
                ? QCoreApplication::translate("Glance", "  and %1 more").arg(words.alarmsMore)
                : QString();
        if (!words.alarm.isEmpty()) {
            const double height = m_in.height() * 0.13;
            const QRectF ground(m_in.left(), m_in.bottom() - height, m_in.width(), height);
            m_painter.fillRect(ground, words.urgent ? colours().warning : colours().warningGround);
            m_painter.setPen(words.urgent ? colours().warningGround : colours().warning);
            m_painter.setFont(fitted(m_theme, alarm + more, m_in.height() * lineShare, room(), QFont::Bold));
            m_painter.drawText(ground, Qt::AlignCenter, alarm + more);
            return;
        }
        line(alarm, 0.935, footShare, colours().soft);
    }

  private:
    QPainter& m_painter;
    QRectF m_in;
    const Theme& m_theme;
};

} // namespace

void drawGlance(QPainter& painter, const QRectF& in, const GlanceWords& words, const Theme& theme) {
    const auto& colours = theme.palette();
    painter.fillRect(in, colours.page);
    Sheet sheet(painter, in, theme);
    sheet.line(words.kiln + QStringLiteral(" · ") + words.age, 0.07, footShare,
               words.live ? colours.soft : colours.warning);
    sheet.line(words.step, 0.165, lineShare, colours.soft);
    sheet.figure(words);
    sheet.line(words.state, 0.655, lineShare * 1.25,
               words.tone == GlanceTone::warning ? colours.warning
               : words.tone == GlanceTone::well  ? colours.forecastText
                                                 : colours.ink,
               QFont::DemiBold);
    sheet.line(words.next, 0.785, lineShare, colours.soft);
    sheet.foot(words);
}

} // namespace ringhold
