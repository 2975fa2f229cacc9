#include "ui/common/cell_delegate.h"

#include <QApplication>
#include <QPainter>

namespace ringhold {

namespace {

constexpr int margin = 5;

/// The part of a cell that its words and ticks have, in line with its column's head.
QRect inner(const QRect& cell) {
    return cell.adjusted(margin, 0, -margin, 0);
}

/// A box in the ink of the theme: the style's own is hard to see on dark paper.
void paintTick(QPainter& painter, QRectF box, const QPalette& palette, bool ticked) {
    painter.setRenderHint(QPainter::Antialiasing);
    box = box.toRect().adjusted(1, 1, -1, -1);
    painter.setPen(QPen(palette.color(QPalette::PlaceholderText), 1));
    painter.setBrush(palette.base());
    painter.drawRoundedRect(box.translated(0.5, 0.5), 2.5, 2.5);
    if (!ticked)
        return;
    const auto at = [&](double x, double y) {
        return QPointF(box.left() + box.width() * x, box.top() + box.height() * y);
    };
    painter.setPen(QPen(palette.text(), 2, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.drawPolyline(QPolygonF{at(0.24, 0.56), at(0.46, 0.8), at(0.86, 0.26)});
}

} // namespace

void CellDelegate::initStyleOption(QStyleOptionViewItem* option, const QModelIndex& index) const {
    QStyledItemDelegate::initStyleOption(option, index);
    if (index.data(invitingRole).toBool()) {
        option->palette.setBrush(QPalette::Text, option->palette.placeholderText());
        option->font.setItalic(true);
    }
}

void CellDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                         const QModelIndex& index) const {
    QStyleOptionViewItem filled = option;
    initStyleOption(&filled, index);
    if (option.state & QStyle::State_Selected)
        painter->fillRect(option.rect, filled.palette.highlight());
    filled.state &= ~QStyle::State_Selected; // the style would shade it
    filled.rect = inner(option.rect);
    const auto* style = option.widget ? option.widget->style() : QApplication::style();
    style->drawControl(QStyle::CE_ItemViewItem, &filled, painter, option.widget);
    painter->save();
    if (filled.features & QStyleOptionViewItem::HasCheckIndicator)
        paintTick(*painter,
                  style->subElementRect(QStyle::SE_ItemViewItemCheckIndicator, &filled, option.widget),
                  filled.palette, filled.checkState == Qt::Checked);
    if (option.state & QStyle::State_HasFocus) {
        painter->setBrush(Qt::NoBrush);
        painter->setPen(QPen(filled.palette.link(), 2));
        painter->drawRect(option.rect.adjusted(1, 1, -1, -1));
    }
    painter->restore();
}

bool CellDelegate::editorEvent(QEvent* event, QAbstractItemModel* model, const QStyleOptionViewItem& option,
                               const QModelIndex& index) {
    QStyleOptionViewItem placed = option;
    placed.rect = inner(option.rect);
    return QStyledItemDelegate::editorEvent(event, model, placed, index);
}

QSize CellDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const {
    QStyleOptionViewItem narrower = option;
    narrower.rect = inner(option.rect);
    return QStyledItemDelegate::sizeHint(narrower, index) + QSize(2 * margin, margin);
}

} // namespace ringhold
