#include "ui/ware/ware_delegate.h"

#include "ui/ware/ware_cells.h"
#include "ui/ware/ware_model.h"

#include <QApplication>
#include <QComboBox>
#include <QCompleter>
#include <QLineEdit>
#include <QPainter>
#include <QRegularExpressionValidator>

namespace ringhold {

namespace {

const WareModel* wareOf(const QModelIndex& index) {
    return qobject_cast<const WareModel*>(index.model());
}

QWidget* crystalsEditor(QWidget* parent) {
    auto* choice = new QComboBox(parent);
    choice->addItem(QStringLiteral("–"), QString());
    for (const auto crystals : {Crystals::none, Crystals::few, Crystals::many, Crystals::covered})
        choice->addItem(crystalsWords(crystals), crystalsWords(crystals));
    return choice;
}

const QRegularExpression& allowed(WareColumn column) {
    static const QRegularExpression any;
    static const QRegularExpression size(QStringLiteral("\\d{0,4}([.,]\\d?)?"));
    static const QRegularExpression count(QStringLiteral("\\d{0,2}"));
    return column == WareColumn::largest ? size : column == WareColumn::rings ? count : any;
}

QWidget* lineEditor(QWidget* parent, const QModelIndex& index) {
    const auto column = static_cast<WareColumn>(index.column());
    auto* line = new QLineEdit(parent);
    line->setFrame(false);
    if (!allowed(column).pattern().isEmpty())
        line->setValidator(new QRegularExpressionValidator(allowed(column), line));
    const auto* ware = wareOf(index);
    if (ware && (column == WareColumn::glaze || column == WareColumn::shelf || column == WareColumn::faults ||
                 column == WareColumn::grade)) {
        auto* completer = new QCompleter(ware->said(column), line);
        completer->setCompletionMode(QCompleter::InlineCompletion);
        completer->setCaseSensitivity(Qt::CaseInsensitive);
        line->setCompleter(completer);
    }
    return line;
}

/// The part of a cell that its words and ticks have, in line with its column's head.
QRect inner(const QRect& cell) {
    constexpr int margin = 5;
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

void WareDelegate::initStyleOption(QStyleOptionViewItem* option, const QModelIndex& index) const {
    QStyledItemDelegate::initStyleOption(option, index);
    const auto* ware = wareOf(index);
    if (ware && ware->isNewRow(index.row())) {
        option->palette.setBrush(QPalette::Text, option->palette.placeholderText());
        option->font.setItalic(true);
    }
}

void WareDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                         const QModelIndex& index) const {
    QStyleOptionViewItem filled = option;
    initStyleOption(&filled, index);
    if (option.state & QStyle::State_Selected)
        painter->fillRect(option.rect, filled.palette.highlight());
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

bool WareDelegate::editorEvent(QEvent* event, QAbstractItemModel* model, const QStyleOptionViewItem& option,
                               const QModelIndex& index) {
    QStyleOptionViewItem placed = option;
    placed.rect = inner(option.rect);
    return QStyledItemDelegate::editorEvent(event, model, placed, index);
}

QWidget* WareDelegate::createEditor(QWidget* parent, const QStyleOptionViewItem&,
                                    const QModelIndex& index) const {
    const bool crystals = static_cast<WareColumn>(index.column()) == WareColumn::crystals;
    QWidget* editor = crystals ? crystalsEditor(parent) : lineEditor(parent, index);
    editor->setAccessibleName(
        index.model()->headerData(index.column(), Qt::Horizontal, Qt::DisplayRole).toString());
    return editor;
}

void WareDelegate::setEditorData(QWidget* editor, const QModelIndex& index) const {
    if (auto* choice = qobject_cast<QComboBox*>(editor))
        choice->setCurrentIndex(std::max(0, choice->findData(index.data(Qt::EditRole).toString())));
    else if (auto* line = qobject_cast<QLineEdit*>(editor))
        line->setText(index.data(Qt::EditRole).toString());
}

void WareDelegate::setModelData(QWidget* editor, QAbstractItemModel* model, const QModelIndex& index) const {
    if (const auto* choice = qobject_cast<QComboBox*>(editor))
        model->setData(index, choice->currentData());
    else if (const auto* line = qobject_cast<QLineEdit*>(editor))
        model->setData(index, line->text());
}

} // namespace ringhold
