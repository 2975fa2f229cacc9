#include "ui/plot/setting_mark.h"

#include "ui/theme/theme.h"

namespace ringhold {

namespace {

constexpr double barHeight_px = 18;
constexpr double barWidth_px = 3;
constexpr int wordsWidth_px = 150;
constexpr double wordsGap_px = 6;

} // namespace

SettingMark::SettingMark(QCustomPlot* plot, QPointF place, const QString& words, const Theme& theme)
    : QCPAbstractItem(plot), m_words(words), m_theme(theme),
      m_place(createPosition(QStringLiteral("place"))) {
    m_place->setCoords(place);
}

void SettingMark::draw(QCPPainter* painter) {
    const QPointF at = m_place->pixelPosition();
    painter->setPen(Qt::NoPen);
    painter->setBrush(m_theme.palette().ink);
    painter->drawRect(QRectF(at.x() - barWidth_px / 2, at.y() - barHeight_px / 2, barWidth_px, barHeight_px));
    if (m_words.isEmpty())
        return;
    const QFont font = m_theme.text(TextSize::small);
    const QFontMetrics metrics(font);
    const QStringList lines = m_words.split(QLatin1Char('\n'));
    double y = at.y() + barHeight_px / 2 + metrics.ascent() + 2;
    painter->setFont(font);
    painter->setPen(QPen(m_theme.palette().soft));
    for (const auto& line : lines) {
        painter->drawText(QPointF(at.x() + wordsGap_px, y),
                          metrics.elidedText(line, Qt::ElideRight, wordsWidth_px));
        y += metrics.height();
    }
}

} // namespace ringhold
