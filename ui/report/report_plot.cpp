#include "ui/report/report_plot.h"

#include "core/report/report_content.h"
#include "ui/cones/cone_shape.h"
#include "ui/plot/decimation.h"
#include "ui/plot/time_ticks.h"
#include "ui/report/page_text.h"
#include "ui/report/report_talk.h"
#include "ui/theme/palette.h"

#include <QPainter>
#include <QPainterPath>

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

constexpr double leftMargin = 30, bottomMargin = 16, keyHeight = 14, coneHeight = 20;
constexpr double labelPoints = 7.5;
constexpr double columnsPerPoint = 4;
constexpr std::size_t fewReadings = 150; ///< that are shown as dots as well
constexpr double coneLength = 9;

const Palette& paper() {
    return builtInPalettes().paper;
}

QPen pen(const QColor& colour, double width) {
    return QPen(colour, width, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin);
}

QPen dashedPen() {
    QPen dashes(paper().plan, 0.9, Qt::CustomDashLine, Qt::FlatCap);
    dashes.setDashPattern({4, 3});
    return dashes;
}

struct SeenDown {
    QString cone;
    Instant at;
};

class Plot {
  public:
    Plot(const ReportContent& content, const QRectF& area);
    void paint(QPainter& painter) const;

  private:
    double shown(Temperature t) const {
        return m_content.style.scale == TemperatureScale::fahrenheit ? t.fahrenheit() : t.celsius();
    }
    double x(Instant at) const {
        return m_box.left() + inSeconds(at - m_from) / inSeconds(m_to - m_from) * m_box.width();
    }
    double yOf(double degrees) const { return m_box.bottom() - degrees / m_top * m_box.height(); }
    double y(Temperature t) const { return yOf(shown(t)); }
    QPainterPath pathOf(const Curve& curve) const;

    void findRange();
    void paintGrid(QPainter& painter) const;
    void paintTimes(QPainter& painter) const;
    void paintBands(QPainter& painter) const;
    void paintCurves(QPainter& painter) const;
    void paintCones(QPainter& painter) const;
    void paintAlarms(QPainter& painter) const;
    void paintKey(QPainter& painter) const;
    bool anyAlarm() const;
    std::vector<SeenDown> conesDown() const;

    const ReportContent& m_content;
    QRectF m_area;
    QRectF m_box;
    Instant m_from;
    Instant m_to;
    double m_top = 0; ///< in shown degrees
};

void label(QPainter& painter, const QString& words, QPointF at, Qt::Alignment alignment, double width = 60) {
    const PageText text(words, {.points = labelPoints, .ink = paper().soft}, width, alignment);
    const double dx = alignment & Qt::AlignRight ? -width : alignment & Qt::AlignHCenter ? -width / 2 : 0;
    text.paint(painter, at + QPointF(dx, -text.height() / 2));
}

Plot::Plot(const ReportContent& content, const QRectF& area)
    : m_content(content), m_area(area),
      m_box(
          area.adjusted(leftMargin, keyHeight + (conesDown().empty() ? 4 : coneHeight), -4, -bottomMargin)) {
    findRange();
}

void Plot::findRange() {
    const auto& curves = m_content.curves;
    m_from = m_content.began;
    m_to = m_content.until;
    const auto take = [this](const Curve& curve) {
        for (const auto& point : curve)
            m_top = std::max(m_top, shown(point.temperature));
    };
    take(curves.control);
    take(curves.planned);
    for (const auto& other : curves.others)
        take(other.curve);
    if (!curves.control.empty()) {
        m_from = std::min(m_from, curves.control.front().at);
        m_to = curves.control.back().at;
    } else if (!curves.planned.empty()) {
        m_from = curves.planned.front().at;
        m_to = curves.planned.back().at;
    }
    m_to = std::max(m_to, m_from + std::chrono::minutes(10));
    m_top = std::max(m_top * 1.03, 100.0);
}

QPainterPath Plot::pathOf(const Curve& curve) const {
    QPainterPath path;
    const int columns = static_cast<int>(m_box.width() * columnsPerPoint);
    for (const auto& point : decimated(curve, m_from, m_to, columns)) {
        const QPointF at(x(point.at), y(point.temperature));
        path.elementCount() == 0 ? path.moveTo(at) : path.lineTo(at);
    }
    return path;
}

void Plot::paintGrid(QPainter& painter) const {
    const double step = m_top > 2000 ? 400 : m_top > 500 ? 200 : 50;
    for (double degrees = 0; degrees <= m_top; degrees += step) {
        painter.setPen(pen(degrees > 0 ? paper().grid : paper().faint, 0.5));
        painter.drawLine(QPointF(m_box.left(), yOf(degrees)), QPointF(m_box.right(), yOf(degrees)));
        label(painter, QString::number(degrees), {m_box.left() - 5, yOf(degrees)}, Qt::AlignRight);
    }
    label(painter, QString::fromStdString(unitWords(m_content.style)), {m_area.left(), m_box.top() - 8},
          Qt::AlignLeft);
}

void Plot::paintTimes(QPainter& painter) const {
    painter.setPen(pen(paper().faint, 0.5));
    const int most = std::max(2, static_cast<int>(m_box.width() / 50));
    for (const auto& tick : timeTicks(m_from, m_to, m_content.style.zone, most)) {
        painter.setPen(pen(paper().faint, 0.5));
        painter.drawLine(QPointF(x(tick.at), m_box.bottom()), QPointF(x(tick.at), m_box.bottom() + 3));
        label(painter, tick.label, {x(tick.at), m_box.bottom() + 10}, Qt::AlignHCenter);
    }
}

void Plot::paintBands(QPainter& painter) const {
    for (const auto& [when, band] : m_content.curves.bands)
        painter.fillRect(QRectF(QPointF(x(when.start), y(band.high())), QPointF(x(when.end), y(band.low()))),
                         paper().band);
}

void Plot::paintCurves(QPainter& painter) const {
    painter.save();
    painter.setClipRect(m_box.adjusted(0, -4, 1, 0));
    painter.setBrush(Qt::NoBrush);
    for (const auto& other : m_content.curves.others)
        painter.strokePath(pathOf(other.curve), pen(paper().soft, 0.6));
    const auto& control = m_content.curves.control;
    painter.strokePath(pathOf(control), pen(paper().kiln, 1.3));
    painter.strokePath(pathOf(m_content.curves.planned), dashedPen());
    painter.setPen(Qt::NoPen);
    painter.setBrush(paper().kiln);
    if (control.size() <= fewReadings)
        for (const auto& point : control)
            painter.drawEllipse(QPointF(x(point.at), y(point.temperature)), 1.5, 1.5);
    painter.restore();
}

std::vector<SeenDown> Plot::conesDown() const {
    std::vector<SeenDown> seen;
    for (const auto& pack : m_content.packs)
        for (const auto& cone : pack.cones)
            if (cone.down.seen)
                seen.push_back({QString::fromStdString(cone.cone), *cone.down.seen});
    std::ranges::sort(seen, {}, &SeenDown::at);
    return seen;
}

void Plot::paintCones(QPainter& painter) const {
    double free = m_box.left();
    for (const auto& [cone, at] : conesDown()) {
        const QString words = cone + u' ';
        const double width = PageText::widthOf(words, {.points = labelPoints, .ink = paper().soft});
        const double foot = std::max(x(at), free + width + 4);
        const double ground = m_box.top() - 5;
        painter.setPen(pen(paper().faint, 0.4));
        painter.drawLine(QPointF(foot, ground + 1), QPointF(x(at), m_box.top() + 2));
        const auto shape = coneShape(6, {{foot, ground}, coneLength, false});
        painter.setBrush(paper().cone);
        painter.setPen(pen(paper().coneOutline, 0.5));
        painter.drawPath(shape.outline);
        label(painter, cone, {foot - coneLength * coneBaseWidth() - 1.5, ground - 3}, Qt::AlignRight);
        free = shape.outline.boundingRect().right();
    }
}

bool Plot::anyAlarm() const {
    return std::ranges::any_of(
        m_content.log, [](const LogLine& line) { return std::holds_alternative<AlarmLine>(line.what); });
}

void paintMark(QPainter& painter, QPointF at) {
    painter.setPen(Qt::NoPen);
    painter.setBrush(paper().warning);
    painter.drawPolygon(QPolygonF{{at, at + QPointF(-3, 5.5), at + QPointF(3, 5.5)}});
}

void Plot::paintAlarms(QPainter& painter) const {
    const auto& control = m_content.curves.control;
    for (const auto& line : m_content.log)
        if (std::holds_alternative<AlarmLine>(line.what) && !control.empty() && line.at >= m_from &&
            line.at <= m_to)
            paintMark(painter, {x(line.at), y(temperatureAt(control, line.at)) + 2});
}

void Plot::paintKey(QPainter& painter) const {
    double right = m_box.right();
    const double middle = m_area.top() + keyHeight / 2;
    const auto entry = [&](const QString& words, const auto& paintSample) {
        const PageType type{.points = labelPoints, .ink = paper().soft};
        const double width = PageText::widthOf(words, type);
        label(painter, words, {right, middle}, Qt::AlignRight, width + 1);
        paintSample(QPointF(right - width - 20, middle), QPointF(right - width - 4, middle));
        right -= width + 32;
    };
    const auto line = [&](const QPen& linePen) {
        return [&painter, linePen](QPointF from, QPointF to) {
            painter.setPen(linePen);
            painter.drawLine(from, to);
        };
    };
    if (anyAlarm())
        entry(ReportTalk::tr("alarm"), [&](QPointF, QPointF to) { paintMark(painter, to - QPointF(4, 3)); });
    if (!m_content.curves.others.empty())
        entry(ReportTalk::tr("other probes"), line(pen(paper().soft, 0.6)));
    if (!m_content.curves.bands.empty())
        entry(ReportTalk::tr("band"), [&](QPointF from, QPointF to) {
            painter.fillRect(QRectF(from, to).adjusted(0, -3, 0, 3), paper().band);
        });
    if (!m_content.curves.planned.empty())
        entry(ReportTalk::tr("plan"), line(dashedPen()));
    entry(ReportTalk::tr("kiln"), line(pen(paper().kiln, 1.3)));
}

void Plot::paint(QPainter& painter) const {
    painter.save();
    paintGrid(painter);
    paintTimes(painter);
    paintBands(painter);
    paintCurves(painter);
    paintCones(painter);
    paintAlarms(painter);
    paintKey(painter);
    painter.restore();
}

} // namespace

PageBlock curveBlock(const ReportContent& content, double width, double height) {
    const auto shared = std::make_shared<const ReportContent>(content);
    PageBlock block;
    block.height = height;
    block.paint = [shared, width, height](QPainter& painter, QPointF at) {
        Plot(*shared, QRectF(at, QSizeF(width, height))).paint(painter);
    };
    return block;
}

} // namespace ringhold
