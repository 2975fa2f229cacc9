#include "ui/plan/plan_card.h"

#include "core/exchange/file.h"
#include "ui/theme/theme.h"

#include <QBuffer>
#include <QFontMetricsF>
#include <QLocale>
#include <QPainter>
#include <QPdfWriter>

#include <algorithm>
#include <array>

namespace ringhold {

namespace {

constexpr double title_pt = 27, figure_pt = 24, text_pt = 14, hand_pt = 16, small_pt = 10.5;
constexpr double margin_mm = 14;
constexpr double rowGap_pt = 7;
/// Where the columns end, as shares of the width: segment, rate, set point, dwell, begins, remark.
constexpr std::array columnEnds{0.08, 0.21, 0.39, 0.57, 0.71, 1.0};

/// Paints from the top of the first page downwards; lengths in points are turned into the device's units.
class CardPainter {
  public:
    CardPainter(QPagedPaintDevice& device, QPainter& painter, const QString& title)
        : m_device(device), m_painter(painter), m_title(title),
          m_area(QPointF(), device.pageLayout().paintRectPixels(painter.device()->logicalDpiX()).size()),
          m_unit(painter.device()->logicalDpiY() / 72.0) {}

    void paint(const PlanCardWords& words) {
        paragraph(words.title, heading(words.title), m_inks.ink);
        paragraph(words.subtitle, font(text_pt), m_inks.soft);
        skip(6);
        heads(words.heads);
        for (const auto& row : words.rows)
            segment(row, words.heads);
        skip(4);
        paragraph(words.after, font(text_pt), m_inks.ink);
        paragraph(words.full, font(small_pt), m_inks.soft);
        for (const auto& hand : words.byHand)
            framed(hand);
        for (const auto& line : words.offset)
            paragraph(line, font(text_pt), m_inks.ink);
        skip(6);
        for (const auto& line : words.cautions)
            paragraph(line, font(small_pt), m_inks.soft);
    }

  private:
    QFont font(double points, QFont::Weight weight = QFont::Normal) const {
        QFont made = m_theme.text(TextSize::body, weight);
        made.setPointSizeF(points);
        return made;
    }

    QFont heading(const QString& words) const {
        QFont made = m_theme.heading(TextSize::title, words);
        made.setPointSizeF(title_pt);
        return made;
    }

    double lineHeight(const QFont& f) const { return QFontMetricsF(f, m_painter.device()).height(); }
    void skip(double points) { m_y += points * m_unit; }

    void newPage() {
        m_device.newPage();
        m_y = 0;
        draw(QRectF(0, 0, m_area.width(), m_area.height()), m_title, font(small_pt), m_inks.soft,
             Qt::AlignRight);
        skip(2 * small_pt);
    }

    /// Begins a new page unless so much has room on this one.
    bool makeRoom(double height) {
        if (m_y + height <= m_area.height() || m_y == 0)
            return false;
        newPage();
        return true;
    }

    void draw(const QRectF& box, const QString& text, const QFont& f, const QColor& ink, int flags) {
        m_painter.setFont(f);
        m_painter.setPen(ink);
        m_painter.drawText(box, flags, text);
    }

    double heightOf(const QString& text, const QFont& f, double width) {
        m_painter.setFont(f);
        return m_painter.boundingRect(QRectF(0, 0, width, 0), Qt::TextWordWrap, text).height();
    }

    void paragraph(const QString& text, const QFont& f, const QColor& ink) {
        if (text.isEmpty())
            return;
        const double height = heightOf(text, f, m_area.width());
        makeRoom(height);
        draw(QRectF(0, m_y, m_area.width(), height), text, f, ink, Qt::TextWordWrap);
        m_y += height;
        skip(3);
    }

    QRectF cell(std::size_t column, double height) const {
        const double left = column == 0 ? 0 : columnEnds[column - 1];
        const QRectF whole(m_area.width() * left, m_y, m_area.width() * (columnEnds[column] - left), height);
        return whole.adjusted(4 * m_unit, 0, -4 * m_unit, 0);
    }

    void rule(const QColor& ink, double width_pt) {
        m_painter.setPen(QPen(ink, width_pt * m_unit));
        m_painter.drawLine(QPointF(0, m_y), QPointF(m_area.width(), m_y));
    }

    void heads(const QStringList& texts) {
        const double height = lineHeight(font(small_pt)) + 3 * m_unit;
        for (std::size_t i = 0; i < columnEnds.size(); ++i)
            draw(cell(i, height), texts[static_cast<qsizetype>(i)], font(small_pt), m_inks.soft,
                 Qt::AlignLeft);
        m_y += height;
        rule(m_inks.ink, 1);
    }

    void segment(const PlanCardRow& row, const QStringList& columns) {
        const double remarkWidth = cell(columnEnds.size() - 1, 0).width();
        const double remark = heightOf(row.remark, font(text_pt), remarkWidth);
        const double height = std::max(lineHeight(font(figure_pt)), remark) + rowGap_pt * m_unit;
        if (makeRoom(height))
            heads(columns);
        if (row.byHand)
            m_painter.fillRect(QRectF(0, m_y, m_area.width(), height), m_inks.band);
        const std::array figures{row.number, row.rate, row.set, row.dwell};
        for (std::size_t i = 0; i < figures.size(); ++i) {
            const bool keyedIn = i == 1 || i == 2;
            draw(cell(i, height), figures[i], font(figure_pt, keyedIn ? QFont::Bold : QFont::Normal),
                 m_inks.ink, Qt::AlignLeft | Qt::AlignVCenter);
        }
        draw(cell(4, height), row.begins, font(text_pt), m_inks.soft, Qt::AlignLeft | Qt::AlignVCenter);
        draw(cell(5, height), row.remark, font(text_pt, row.byHand ? QFont::Bold : QFont::Normal), m_inks.ink,
             Qt::AlignLeft | Qt::AlignVCenter | Qt::TextWordWrap);
        m_y += height;
        rule(m_inks.edge, 0.7);
    }

    /// What the potter must do.
    void framed(const PlanCardHand& hand) {
        const double inset = 9 * m_unit;
        const double width = m_area.width() - 2 * inset;
        const QFont bold = font(hand_pt, QFont::Bold);
        const QFont plain = font(text_pt);
        skip(6);
        const double act = heightOf(hand.act, bold, width);
        const double more = heightOf(hand.more, plain, width);
        makeRoom(act + more + 2.5 * inset);
        const QRectF box(0, m_y, m_area.width(), act + more + 2.5 * inset);
        m_painter.setPen(QPen(m_inks.ink, 1.4 * m_unit));
        m_painter.setBrush(Qt::NoBrush);
        m_painter.drawRoundedRect(box, 4 * m_unit, 4 * m_unit);
        draw(QRectF(inset, m_y + inset, width, act), hand.act, bold, m_inks.ink, Qt::TextWordWrap);
        draw(QRectF(inset, m_y + 1.5 * inset + act, width, more), hand.more, plain, m_inks.ink,
             Qt::TextWordWrap);
        m_y += box.height();
        skip(8);
    }

    QPagedPaintDevice& m_device;
    QPainter& m_painter;
    QString m_title;
    QRectF m_area;
    double m_unit; ///< of the device, in a point
    double m_y = 0;
    Theme m_theme;
    const Palette& m_inks = builtInPalettes().paper;
};

} // namespace

bool paintPlanCard(QPagedPaintDevice& device, const PlanCardWords& words) {
    QPainter painter;
    if (!painter.begin(&device))
        return false;
    CardPainter(device, painter, words.title).paint(words);
    return painter.end();
}

Status writePlanCard(const std::filesystem::path& file, const PlanCardWords& words, const QPageSize& size) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    {
        QPdfWriter writer(&buffer);
        writer.setPageLayout(planCardLayout(size));
        writer.setTitle(words.title);
        writer.setCreator(QStringLiteral("Ringhold"));
        if (!paintPlanCard(writer, words))
            return Error{ErrorKind::failed, "the plan card cannot be painted"};
    }
    return writeFile(file, {bytes.constData(), static_cast<std::size_t>(bytes.size())});
}

QPageLayout planCardLayout(const QPageSize& size) {
    return {size, QPageLayout::Portrait, QMarginsF(margin_mm, margin_mm, margin_mm, margin_mm),
            QPageLayout::Millimeter};
}

QPageSize usualPageSize() {
    const bool letter = QLocale::system().measurementSystem() == QLocale::ImperialUSSystem;
    return QPageSize(letter ? QPageSize::Letter : QPageSize::A4);
}

} // namespace ringhold
