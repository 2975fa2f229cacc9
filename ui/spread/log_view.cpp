#include "ui/spread/log_view.h"

#include "ui/cones/cone_shape.h"
#include "ui/spread/log_model.h"
#include "ui/theme/theme.h"

#include <QContextMenuEvent>
#include <QKeyEvent>
#include <QMenu>
#include <QMetaMethod>
#include <QPainter>
#include <QScrollBar>

namespace ringhold {

namespace {

constexpr int timeWidth = 62;
constexpr int markWidth = 22;
constexpr int padding = 8;
constexpr int remarkGap = 2;
constexpr int wordFlags = Qt::TextWordWrap | Qt::AlignLeft | Qt::AlignTop;

LogKind kindOf(const QModelIndex& index) {
    return static_cast<LogKind>(index.data(LogModel::KindRole).toInt());
}

} // namespace

QRect LogDelegate::wordsRect(const QRect& line) const {
    return line.adjusted(timeWidth + markWidth, padding, -padding, -padding);
}

/// What the curve says to a setting is no warning.
QFont LogDelegate::remarkFont(const QModelIndex& index) const {
    const bool answer = index.data(LogModel::KindRole).toInt() == static_cast<int>(LogKind::setting);
    return m_theme.text(TextSize::small, answer ? QFont::Normal : QFont::DemiBold);
}

/// A look has a small cone, an alarm a filled triangle, a forecast a ring, a reading a dot, a setting a bar;
/// a note none.
void LogDelegate::paintMark(QPainter& painter, const QRectF& mark, int kind) const {
    const auto& palette = m_theme.palette();
    painter.setPen(Qt::NoPen);
    switch (static_cast<LogKind>(kind)) {
    case LogKind::look:
        painter.setPen(QPen(palette.coneOutline, 1));
        painter.setBrush(palette.cone);
        painter.drawPath(
            coneShape(2, {QPointF(mark.center().x() - 3, mark.bottom()), mark.height() * 1.1, false})
                .outline);
        break;
    case LogKind::alarm:
        painter.setBrush(palette.warning);
        painter.drawPolygon(
            QPolygonF{mark.bottomLeft(), mark.bottomRight(), {mark.center().x(), mark.top()}});
        break;
    case LogKind::forecast:
        painter.setPen(QPen(palette.forecastText, 1.5));
        painter.setBrush(Qt::NoBrush);
        painter.drawEllipse(mark.center(), 4, 4);
        break;
    case LogKind::reading:
        painter.setBrush(palette.kiln);
        painter.drawEllipse(mark.center(), 3, 3);
        break;
    case LogKind::setting:
        painter.setBrush(palette.plan);
        painter.drawRect(QRectF(mark.center().x() - 5, mark.center().y() - 1.5, 10, 3));
        break;
    default:
        break;
    }
}

void LogDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                        const QModelIndex& index) const {
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    const auto& palette = m_theme.palette();
    if (option.state & QStyle::State_Selected) {
        painter->fillRect(option.rect, palette.band);
        painter->setPen(QPen(palette.kiln, 2));
        painter->drawLine(option.rect.topLeft(), option.rect.bottomLeft());
    }
    const auto kind = kindOf(index);
    const QRect words = wordsRect(option.rect);
    if (kind == LogKind::alarm)
        painter->fillRect(words.adjusted(-4, -3, 4, 3), palette.warningGround);
    painter->setFont(m_theme.text(TextSize::body));
    painter->setPen(palette.soft);
    painter->drawText(option.rect.adjusted(0, padding, 0, 0), Qt::AlignLeft | Qt::AlignTop,
                      index.data(LogModel::TimeRole).toString());
    const double centre = option.rect.top() + padding + painter->fontMetrics().height() / 2.0;
    paintMark(*painter, QRectF(option.rect.left() + timeWidth - 2, centre - 6, 12, 12),
              index.data(LogModel::KindRole).toInt());
    QFont font = m_theme.text(
        TextSize::body, kind == LogKind::look || kind == LogKind::alarm ? QFont::DemiBold : QFont::Normal);
    font.setStrikeOut(index.data(LogModel::StruckRole).toBool());
    painter->setFont(font);
    painter->setPen(kind == LogKind::alarm      ? palette.warning
                    : kind == LogKind::forecast ? palette.forecastText
                                                : palette.ink);
    if (index.data(LogModel::StruckRole).toBool())
        painter->setPen(palette.soft);
    QRect drawn;
    painter->drawText(words, wordFlags, index.data(Qt::DisplayRole).toString(), &drawn);
    if (const QString remark = index.data(LogModel::RemarkRole).toString(); !remark.isEmpty()) {
        painter->setFont(remarkFont(index));
        painter->setPen(kind == LogKind::setting ? palette.soft : palette.warning);
        painter->drawText(words.adjusted(0, drawn.height() + remarkGap, 0, 0), wordFlags, remark);
    }
    painter->setPen(palette.edge);
    painter->drawLine(option.rect.bottomLeft(), option.rect.bottomRight());
    painter->restore();
}

QSize LogDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const {
    const int width =
        option.widget ? static_cast<const QAbstractScrollArea*>(option.widget)->viewport()->width() : 300;
    const QFontMetrics metrics(m_theme.text(TextSize::body, QFont::DemiBold));
    const QRect words = wordsRect(QRect(0, 0, width, 10000));
    const QRect needed = metrics.boundingRect(words, wordFlags, index.data(Qt::DisplayRole).toString());
    int height = std::max(metrics.height(), needed.height());
    if (const QString remark = index.data(LogModel::RemarkRole).toString(); !remark.isEmpty())
        height += QFontMetrics(remarkFont(index)).boundingRect(words, wordFlags, remark).height() + remarkGap;
    return {width, height + 2 * padding};
}

LogView::LogView(const Theme& theme, QWidget* parent) : QListView(parent) {
    setAccessibleName(tr("Log of the firing"));
    setItemDelegate(new LogDelegate(theme, this));
    setProperty("bare", true);
    setVerticalScrollMode(ScrollPerPixel);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setResizeMode(Adjust);
    viewport()->setAutoFillBackground(false);
    connect(&theme, &Theme::changed, this, [this] {
        scheduleDelayedItemsLayout();
        viewport()->update();
    });
}

void LogView::setModel(QAbstractItemModel* model) {
    QListView::setModel(model);
    connect(model, &QAbstractItemModel::rowsInserted, this,
            [this] { QMetaObject::invokeMethod(this, &QListView::scrollToBottom, Qt::QueuedConnection); });
    connect(model, &QAbstractItemModel::modelReset, this,
            [this] { QMetaObject::invokeMethod(this, &QListView::scrollToBottom, Qt::QueuedConnection); });
    scrollToBottom();
}

void LogView::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Delete && currentIndex().isValid())
        Q_EMIT strikeWanted(currentIndex().row());
    else
        QListView::keyPressEvent(event);
}

void LogView::contextMenuEvent(QContextMenuEvent* event) {
    const QModelIndex line =
        event->reason() == QContextMenuEvent::Mouse ? indexAt(event->pos()) : currentIndex();
    if (!line.isValid() || !isSignalConnected(QMetaMethod::fromSignal(&LogView::strikeWanted)))
        return;
    setCurrentIndex(line);
    auto* menu = new QMenu(this);
    menu->setAttribute(Qt::WA_DeleteOnClose);
    menu->addAction(
        line.data(LogModel::StruckRole).toBool() ? tr("&Take the strike back") : tr("&Strike out"),
        QKeySequence(Qt::Key_Delete), this, [this, row = line.row()] { Q_EMIT strikeWanted(row); });
    menu->popup(event->globalPos());
}

void LogView::resizeEvent(QResizeEvent* event) {
    QListView::resizeEvent(event);
    scheduleDelayedItemsLayout();
}

} // namespace ringhold
