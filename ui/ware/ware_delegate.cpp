#include "ui/ware/ware_delegate.h"

#include "ui/common/list_completer.h"
#include "ui/ware/outcome_words.h"
#include "ui/ware/ware_model.h"

#include <QComboBox>
#include <QLineEdit>
#include <QRegularExpressionValidator>

namespace ringhold {

namespace {

WareColumn columnOf(const QModelIndex& index) {
    return static_cast<WareColumn>(index.column());
}

QWidget* choiceEditor(QWidget* parent, const QStringList& words) {
    auto* choice = new QComboBox(parent);
    choice->addItem(QStringLiteral("–"), QString());
    for (const QString& word : words)
        choice->addItem(word, word);
    return choice;
}

const QRegularExpression& allowed(WareColumn column) {
    static const QRegularExpression any;
    static const QRegularExpression size(QStringLiteral("\\d{0,4}([.,]\\d?)?"));
    static const QRegularExpression count(QStringLiteral("\\d{0,2}"));
    static const QRegularExpression share(QStringLiteral("[\\d.,/ ]*"));
    switch (column) {
    case WareColumn::largest:
    case WareColumn::typical:
        return size;
    case WareColumn::rings:
        return count;
    case WareColumn::application:
        return share;
    default:
        return any;
    }
}

/// What others say there, and for faults their common words before.
QStringList completions(const WareModel& ware, WareColumn column) {
    QStringList words = column == WareColumn::faults ? allFaultWords() : QStringList();
    for (const QString& said : ware.said(column))
        words << (column == WareColumn::faults ? said.split(QStringLiteral(", ")) : QStringList(said));
    if (column == WareColumn::glaze)
        words << ware.glazeNames();
    words.removeDuplicates();
    return words;
}

QString separators(WareColumn column) {
    return column == WareColumn::faults  ? QStringLiteral(",")
           : column == WareColumn::glaze ? QStringLiteral("+,;")
                                         : QString();
}

QWidget* lineEditor(QWidget* parent, const QModelIndex& index) {
    auto* line = new QLineEdit(parent);
    line->setFrame(false);
    if (!allowed(columnOf(index)).pattern().isEmpty())
        line->setValidator(new QRegularExpressionValidator(allowed(columnOf(index)), line));
    const auto* ware = qobject_cast<const WareModel*>(index.model());
    if (ware && isRepeated(columnOf(index)))
        line->setCompleter(
            new ListCompleter(completions(*ware, columnOf(index)), separators(columnOf(index)), line));
    return line;
}

} // namespace

QWidget* WareDelegate::createEditor(QWidget* parent, const QStyleOptionViewItem&,
                                    const QModelIndex& index) const {
    QWidget* editor = nullptr;
    if (columnOf(index) == WareColumn::crystals)
        editor = choiceEditor(parent, {crystalsWords(Crystals::none), crystalsWords(Crystals::few),
                                       crystalsWords(Crystals::many), crystalsWords(Crystals::covered)});
    else if (columnOf(index) == WareColumn::catcherClean)
        editor = choiceEditor(parent, {cleanWords(true), cleanWords(false)});
    else
        editor = lineEditor(parent, index);
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
