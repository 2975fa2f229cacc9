#include "ui/report/report_preview.h"

#include <QKeyEvent>
#include <QPainter>
#include <QScrollBar>
#include <QWheelEvent>

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

constexpr double around = 16; ///< pixels left free about the sheet
constexpr double smallest = 0.4, largest = 6;
constexpr double zoomStep = 1.2;

} // namespace

ReportPreview::ReportPreview(QWidget* parent) : QAbstractScrollArea(parent) {
    setFocusPolicy(Qt::StrongFocus);
    setFrameShape(QFrame::NoFrame);
    setAccessibleName(tr("Pages of the report"));
}

void ReportPreview::setDocument(std::optional<PageDocument> document) {
    m_document = std::move(document);
    m_page = std::clamp(m_page, 0, std::max(0, pageCount() - 1));
    updateBars();
    viewport()->update();
    Q_EMIT pageChanged();
}

void ReportPreview::setPage(int page) {
    const int taken = std::clamp(page, 0, std::max(0, pageCount() - 1));
    if (taken == m_page)
        return;
    m_page = taken;
    verticalScrollBar()->setValue(0);
    viewport()->update();
    Q_EMIT pageChanged();
}

void ReportPreview::turn(int by) {
    setPage(m_page + by);
}

void ReportPreview::fit(Fit fit) {
    m_zoom = scale();
    m_fit = fit;
    updateBars();
    viewport()->update();
}

void ReportPreview::zoomBy(double factor) {
    const double now = scale();
    m_fit = Fit::none;
    m_zoom = std::clamp(now * factor, smallest, largest);
    updateBars();
    viewport()->update();
}

QSizeF ReportPreview::sheet() const {
    return sheetOf(m_document ? m_document->paper() : Paper::a4);
}

double ReportPreview::fitted() const {
    const double width = (viewport()->width() - 2 * around) / sheet().width();
    const double height = (viewport()->height() - 2 * around) / sheet().height();
    return std::clamp(m_fit == Fit::width ? width : std::min(width, height), smallest, largest);
}

double ReportPreview::scale() const {
    return m_fit == Fit::none ? m_zoom : fitted();
}

void ReportPreview::updateBars() {
    const QSizeF size = sheet() * scale() + QSizeF(2 * around, 2 * around);
    const auto set = [](QScrollBar* bar, double whole, int seen) {
        bar->setRange(0, std::max(0, static_cast<int>(std::ceil(whole)) - seen));
        bar->setPageStep(seen);
        bar->setSingleStep(std::max(1, seen / 12));
    };
    set(horizontalScrollBar(), size.width(), viewport()->width());
    set(verticalScrollBar(), size.height(), viewport()->height());
}

void ReportPreview::resizeEvent(QResizeEvent*) {
    updateBars();
}

void ReportPreview::paintEvent(QPaintEvent*) {
    if (!m_document)
        return;
    QPainter painter(viewport());
    const QSizeF size = sheet() * scale();
    const double left = std::max(around, (viewport()->width() - size.width()) / 2);
    painter.translate(left - horizontalScrollBar()->value(), around - verticalScrollBar()->value());
    painter.fillRect(QRectF(QPointF(2, 3), size), QColor(0, 0, 0, 40)); // the sheet's shadow
    painter.fillRect(QRectF(QPointF(0, 0), size), Qt::white);
    painter.scale(scale(), scale());
    m_document->paint(painter, m_page);
}

void ReportPreview::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
    case Qt::Key_PageDown:
    case Qt::Key_Space:
        return turn(1);
    case Qt::Key_PageUp:
    case Qt::Key_Backspace:
        return turn(-1);
    case Qt::Key_Home:
        return setPage(0);
    case Qt::Key_End:
        return setPage(pageCount() - 1);
    case Qt::Key_Plus:
    case Qt::Key_Equal:
        return zoomBy(zoomStep);
    case Qt::Key_Minus:
        return zoomBy(1 / zoomStep);
    case Qt::Key_W:
        return fit(Fit::width);
    case Qt::Key_P:
        return fit(Fit::page);
    default:
        QAbstractScrollArea::keyPressEvent(event);
    }
}

void ReportPreview::wheelEvent(QWheelEvent* event) {
    const int delta = event->angleDelta().y();
    if (event->modifiers() & Qt::ControlModifier)
        return zoomBy(std::pow(zoomStep, delta / 120.0));
    auto* bar = verticalScrollBar();
    const bool atEdge = delta < 0 ? bar->value() == bar->maximum() : bar->value() == bar->minimum();
    if (!atEdge)
        return QAbstractScrollArea::wheelEvent(event);
    const int before = m_page;
    turn(delta < 0 ? 1 : -1);
    if (delta > 0 && m_page != before)
        bar->setValue(bar->maximum());
}

} // namespace ringhold
