#include "ui/ware/shelf_map_view.h"

#include "ui/theme/theme.h"

#include <QApplication>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

constexpr double gap = 14;
constexpr double titleHeight = 24;
constexpr double pieceRadius = 15;
constexpr double step = 0.05; ///< of a shelf, by key

bool isEnter(int key) {
    return key == Qt::Key_Return || key == Qt::Key_Enter || key == Qt::Key_Space;
}

} // namespace

ShelfMapView::ShelfMapView(ShelfMapModel& model, const Theme& theme, QWidget* parent)
    : QWidget(parent), m_model(model), m_theme(theme) {
    setFocusPolicy(Qt::StrongFocus);
    setAccessibleName(tr("Shelf map"));
    connect(&model, &QAbstractItemModel::modelReset, this, &ShelfMapView::modelReset);
    connect(&theme, &Theme::changed, this, qOverload<>(&ShelfMapView::update));
}

void ShelfMapView::modelReset() {
    m_carried.reset();
    m_pressed.reset();
    const auto again = m_currentId ? m_model.rowOf(*m_currentId) : std::nullopt;
    m_current = again ? *again : m_model.rowCount() > 0 ? 0 : -1;
    tell();
    update();
}

void ShelfMapView::setCurrent(int row) {
    m_current = row >= 0 && row < m_model.rowCount() ? row : -1;
    m_currentId = m_current < 0 ? std::nullopt : std::optional(m_model.item(m_current).id);
    tell();
    update();
}

void ShelfMapView::tell() {
    setAccessibleDescription(m_current < 0 ? tr("Empty") : m_model.index(m_current).data().toString());
    Q_EMIT currentChanged(m_current);
}

/// As many beside each other as makes the shelves nearly square.
QRectF ShelfMapView::shelfRect(int shelf) const {
    const int count = std::max<int>(1, static_cast<int>(m_model.shelves().size()));
    const double wish = std::sqrt(count * double(width()) / std::max(1, height()));
    const int across = std::clamp(static_cast<int>(std::lround(wish)), 1, count);
    const int deep = (count + across - 1) / across;
    const double w = (width() - gap * (across - 1)) / across, h = (height() - gap * (deep - 1)) / deep;
    return {(shelf % across) * (w + gap), (shelf / across) * (h + gap), w, h};
}

/// The part of a shelf that middles of pieces lie in: their names have room below.
QRectF ShelfMapView::ground(int shelf) const {
    const double name = fontMetrics().height();
    return shelfRect(shelf).adjusted(3 * pieceRadius, titleHeight + pieceRadius + 4, -3 * pieceRadius,
                                     -pieceRadius - name - 6);
}

ShelfMapView::Place ShelfMapView::placeOf(int row) const {
    if (row == m_current && m_carried)
        return *m_carried;
    return {static_cast<int>(m_model.shelves().indexOf(m_model.item(row).shelf)), m_model.spotOf(row)};
}

QPointF ShelfMapView::onScreen(const Place& place) const {
    const QRectF on = ground(place.shelf);
    return {on.left() + place.spot.x * on.width(), on.bottom() - place.spot.y * on.height()};
}

QPointF ShelfMapView::middleOf(int row) const {
    return onScreen(placeOf(row));
}

ShelfMapView::Place ShelfMapView::placeAt(QPointF at) const {
    int nearest = 0;
    double least = 1e9;
    for (int i = 0; i < static_cast<int>(m_model.shelves().size()); ++i)
        if (const double away = QLineF(shelfRect(i).center(), at).length();
            shelfRect(i).contains(at) || away < least) {
            nearest = i;
            least = shelfRect(i).contains(at) ? 0 : away;
        }
    const QRectF on = ground(nearest);
    const auto share = [](double value) { return std::clamp(std::round(value * 100) / 100, 0.0, 1.0); };
    return {nearest, {share((at.x() - on.left()) / on.width()), share((on.bottom() - at.y()) / on.height())}};
}

void ShelfMapView::takeUp() {
    if (m_current >= 0)
        m_carried = placeOf(m_current);
    update();
}

void ShelfMapView::putBack() {
    m_carried.reset();
    m_pressed.reset();
    update();
}

void ShelfMapView::setDown() {
    const auto place = std::exchange(m_carried, std::nullopt);
    m_pressed.reset();
    update();
    if (!place || m_current < 0)
        return;
    const ShelfItem item = m_model.item(m_current);
    const QString shelf = m_model.shelves().value(place->shelf);
    if (item.shelf != shelf || item.spot != place->spot)
        Q_EMIT moved(item, shelf, place->spot);
}

bool ShelfMapView::carry(int key) {
    auto& [shelf, spot] = *m_carried;
    const auto moveBy = [](double& along, double by) { along = std::clamp(along + by, 0.0, 1.0); };
    const int shelves = static_cast<int>(m_model.shelves().size());
    if (key == Qt::Key_Left || key == Qt::Key_Right)
        moveBy(spot.x, key == Qt::Key_Left ? -step : step);
    else if (key == Qt::Key_Up || key == Qt::Key_Down)
        moveBy(spot.y, key == Qt::Key_Up ? step : -step);
    else if (key == Qt::Key_PageUp || key == Qt::Key_PageDown)
        shelf = (shelf + (key == Qt::Key_PageUp ? shelves - 1 : 1)) % shelves;
    else if (isEnter(key))
        setDown();
    else if (key == Qt::Key_Escape)
        putBack();
    else
        return false;
    return true;
}

bool ShelfMapView::walk(int key) {
    const int count = m_model.rowCount();
    if (count == 0)
        return false;
    if (isEnter(key))
        takeUp();
    else if (key == Qt::Key_Right || key == Qt::Key_Down)
        setCurrent(std::min(m_current + 1, count - 1));
    else if (key == Qt::Key_Left || key == Qt::Key_Up)
        setCurrent(std::max(m_current - 1, 0));
    else if (key == Qt::Key_Home || key == Qt::Key_End)
        setCurrent(key == Qt::Key_Home ? 0 : count - 1);
    else
        return false;
    return true;
}

void ShelfMapView::keyPressEvent(QKeyEvent* event) {
    const bool done = m_carried ? carry(event->key()) : walk(event->key());
    if (!done)
        return QWidget::keyPressEvent(event);
    update();
}

void ShelfMapView::mousePressEvent(QMouseEvent* event) {
    if (event->button() != Qt::LeftButton)
        return;
    for (int row = m_model.rowCount() - 1; row >= 0; --row)
        if (QLineF(middleOf(row), event->position()).length() <= pieceRadius + 4) {
            setCurrent(row);
            m_pressed = event->position();
            return;
        }
}

void ShelfMapView::mouseMoveEvent(QMouseEvent* event) {
    if (!m_pressed)
        return;
    const bool far = (event->position() - *m_pressed).manhattanLength() >= QApplication::startDragDistance();
    if (!m_carried && !far)
        return;
    m_carried = placeAt(event->position());
    update();
}

void ShelfMapView::mouseReleaseEvent(QMouseEvent*) {
    if (m_pressed && m_carried)
        setDown();
    m_pressed.reset();
}

void ShelfMapView::focusInEvent(QFocusEvent* event) {
    QWidget::focusInEvent(event);
    if (m_current < 0 && m_model.rowCount() > 0)
        setCurrent(0);
    update();
}

void ShelfMapView::focusOutEvent(QFocusEvent* event) {
    QWidget::focusOutEvent(event);
    if (m_carried && !m_pressed)
        putBack();
    update();
}

void ShelfMapView::drawShelf(QPainter& painter, int shelf) const {
    const auto& palette = m_theme.palette();
    const QRectF rect = shelfRect(shelf).adjusted(0.5, 0.5, -0.5, -0.5);
    const QString name = m_model.shelves()[shelf];
    painter.setPen(QPen(palette.edge, 1, name.isEmpty() ? Qt::DashLine : Qt::SolidLine));
    painter.setBrush(name.isEmpty() ? palette.page : palette.table);
    painter.drawRoundedRect(rect, 6, 6);
    painter.setPen(palette.soft);
    painter.setFont(m_theme.text(TextSize::body, QFont::DemiBold));
    const QRectF title = rect.adjusted(12, 4, -12, 0);
    painter.drawText(title, Qt::AlignLeft | Qt::AlignTop, name.isEmpty() ? tr("on no shelf yet") : name);
    painter.setFont(m_theme.text(TextSize::small));
    painter.drawText(title, Qt::AlignRight | Qt::AlignTop, tr("back"));
}

void ShelfMapView::drawItem(QPainter& painter, int row) const {
    const auto& palette = m_theme.palette();
    const auto& item = m_model.item(row);
    const bool current = row == m_current && hasFocus();
    const QPointF at = middleOf(row);
    QPen outline(palette.coneOutline, 1.4, item.spot ? Qt::SolidLine : Qt::DashLine);
    if (row == m_current)
        outline = QPen(current ? palette.plan : palette.soft, m_carried ? 3.4 : 2.4,
                       m_carried ? Qt::DotLine : Qt::SolidLine);
    painter.setPen(outline);
    painter.setBrush(item.isPack() ? palette.plaque : palette.band);
    if (item.isPack())
        painter.drawRoundedRect(QRectF(at - QPointF(20, 6), QSizeF(40, 12)), 2, 2);
    else
        painter.drawEllipse(at, pieceRadius, pieceRadius);
    if (item.sagger) // a box around it
        painter.setBrush(Qt::NoBrush),
            painter.drawRect(QRectF(at - QPointF(pieceRadius + 4, pieceRadius + 4),
                                    QSizeF(2 * pieceRadius + 8, 2 * pieceRadius + 8)));
    painter.setPen(palette.ink);
    painter.setFont(m_theme.text(TextSize::small, row == m_current ? QFont::Bold : QFont::Normal));
    const QFontMetricsF metrics(painter.font());
    const double room = 6 * pieceRadius;
    painter.drawText(
        QRectF(at.x() - room / 2, at.y() + pieceRadius + (item.sagger ? 5 : 1), room, metrics.height()),
        Qt::AlignHCenter | Qt::AlignTop, metrics.elidedText(item.name, Qt::ElideRight, room));
}

void ShelfMapView::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    for (int shelf = 0; shelf < static_cast<int>(m_model.shelves().size()); ++shelf)
        drawShelf(painter, shelf);
    for (int row = 0; row < m_model.rowCount(); ++row)
        if (row != m_current)
            drawItem(painter, row);
    if (m_current >= 0)
        drawItem(painter, m_current);
    if (m_model.rowCount() == 0) {
        painter.setPen(m_theme.palette().soft);
        painter.drawText(rect(), Qt::AlignCenter, tr("Nothing is in the kiln yet."));
    }
}

} // namespace ringhold
