#include "ui/ware/ware_delegate.h"

#include "ui/ware/ware_cells.h"
#include "ui/ware/ware_model.h"

#include <QComboBox>
#include <QCompleter>
#include <QLineEdit>
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

} // namespace

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
