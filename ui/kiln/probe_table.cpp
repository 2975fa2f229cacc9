#include "ui/kiln/probe_table.h"

#include "ui/kiln/probe_model.h"

#include <QComboBox>
#include <QLineEdit>

namespace ringhold {

namespace {

constexpr auto letters = "BEJKNRST";

bool isType(const QModelIndex& index) {
    return static_cast<ProbeColumn>(index.column()) == ProbeColumn::type;
}

bool isDay(const QModelIndex& index) {
    return static_cast<ProbeColumn>(index.column()) >= ProbeColumn::fitted;
}

} // namespace

QWidget* ProbeDelegate::createEditor(QWidget* parent, const QStyleOptionViewItem& option,
                                     const QModelIndex& index) const {
    QWidget* editor = nullptr;
    if (isType(index)) {
        auto* choice = new QComboBox(parent);
        for (const char* letter = letters; *letter; ++letter)
            choice->addItem(QString(QLatin1Char(*letter)));
        editor = choice;
    } else {
        editor = CellDelegate::createEditor(parent, option, index);
        if (auto* line = qobject_cast<QLineEdit*>(editor); line && isDay(index))
            line->setPlaceholderText(QStringLiteral("2026-03-01"));
    }
    editor->setAccessibleName(
        index.model()->headerData(index.column(), Qt::Horizontal, Qt::DisplayRole).toString());
    return editor;
}

void ProbeDelegate::setEditorData(QWidget* editor, const QModelIndex& index) const {
    if (auto* choice = qobject_cast<QComboBox*>(editor))
        choice->setCurrentText(index.data(Qt::EditRole).toString());
    else
        CellDelegate::setEditorData(editor, index);
}

void ProbeDelegate::setModelData(QWidget* editor, QAbstractItemModel* model, const QModelIndex& index) const {
    if (const auto* choice = qobject_cast<QComboBox*>(editor))
        model->setData(index, choice->currentText());
    else
        CellDelegate::setModelData(editor, model, index);
}

ProbeTable::ProbeTable(QWidget* parent) : EntryTable(parent) {
    setItemDelegate(new ProbeDelegate(this));
    setColumns({{9, 1}, {6.5, 0}, {15, 2}, {11, 0}, {11, 0}});
}

bool ProbeTable::takeKey(const QString& text) {
    const QModelIndex at = currentIndex();
    if (!isType(at) || !(at.flags() & Qt::ItemIsEditable))
        return EntryTable::takeKey(text);
    const bool isLetter =
        text.size() == 1 && QString::fromLatin1(letters).contains(text, Qt::CaseInsensitive);
    return isLetter && model()->setData(at, text.toUpper());
}

} // namespace ringhold
