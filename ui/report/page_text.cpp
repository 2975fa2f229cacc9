#include "ui/report/page_text.h"

#include <QPainter>
#include <QRegularExpression>
#include <QTextLayout>

#include <algorithm>

namespace ringhold {

namespace {

/// Text is laid out in twentieths of a point, in which a font's pixel size is fine enough.
constexpr double unit = 1.0 / 20;
constexpr double endless = 1e5;
constexpr double noLigatures = 0.02; ///< letter spacing switches them off; this much is nothing
const QChar noBreak(0xa0);

/// Whether the heading font's words can be taken from a PDF again. Its figures are not tabular, and an f
/// before i, l and the like is a glyph of its own that tells no letter.
bool survivesExtraction(const QString& words) {
    static const QRegularExpression lost(QStringLiteral("[0-9]|f[bfhijklt]"));
    return !words.contains(lost);
}

QFont fontOf(const PageType& type, const QString& words) {
    const bool heading = type.face == PageFace::heading && survivesExtraction(words);
    QFont font(heading ? QStringList{QStringLiteral("Vollkorn"), QStringLiteral("DejaVu Serif")}
                       : QStringList{QStringLiteral("Lato"), QStringLiteral("DejaVu Sans")});
    font.setStyleHint(heading ? QFont::Serif : QFont::SansSerif);
    font.setPixelSize(static_cast<int>(std::lround(type.points / unit)));
    font.setWeight(type.weight);
    font.setStrikeOut(type.struck);
    font.setHintingPreference(QFont::PreferNoHinting);
    font.setLetterSpacing(QFont::AbsoluteSpacing, noLigatures);
    return font;
}

/// Blanks that must not break a line are made so.
QString keptTogether(QString words) {
    static const QRegularExpression beforeUnit(
        QStringLiteral("(?<=\\d) (?=(°[CF]|mm|min|kWh|mV|µm|[VALhs%])(\\W|$))"));
    static const QRegularExpression afterSign(QStringLiteral("(?<=[−+±]) (?=\\d)"));
    words.replace(beforeUnit, noBreak);
    words.replace(afterSign, noBreak);
    words.replace(QStringLiteral(" ±"), QString(noBreak) + u'±');
    return words.replace(u'\n', QChar::LineSeparator);
}

QTextOption optionsFor(Qt::Alignment alignment) {
    QTextOption options(alignment);
    options.setWrapMode(QTextOption::WrapAtWordBoundaryOrAnywhere);
    return options;
}

} // namespace

PageText::PageText(const QString& words, const PageType& type, double width, Qt::Alignment alignment)
    : m_layout(std::make_shared<QTextLayout>(keptTogether(words), fontOf(type, words))), m_ink(type.ink) {
    m_layout->setTextOption(optionsFor(alignment));
    const double leading = type.points * type.leading;
    m_baseline = (leading - type.points) / 2 + type.points * 0.8;
    m_layout->beginLayout();
    for (auto line = m_layout->createLine(); line.isValid(); line = m_layout->createLine()) {
        line.setLineWidth(width / unit);
        // lines stand a leading apart, however tall a borrowed font is
        line.setPosition({0, (m_height + m_baseline) / unit - line.ascent()});
        m_naturalWidth = std::max(m_naturalWidth, line.naturalTextWidth() * unit);
        m_height += leading;
    }
    m_layout->endLayout();
}

void PageText::paint(QPainter& painter, QPointF topLeft) const {
    painter.save();
    painter.translate(topLeft);
    painter.scale(unit, unit);
    painter.setPen(m_ink);
    m_layout->draw(&painter, {0, 0});
    painter.restore();
}

double PageText::widthOf(const QString& words, const PageType& type) {
    return PageText(words, type, endless).naturalWidth();
}

} // namespace ringhold
