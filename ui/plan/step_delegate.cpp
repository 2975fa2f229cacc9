#include "ui/plan/step_delegate.h"

#include "ui/plan/plan_model.h"
#include "ui/theme/theme.h"

#include <QComboBox>
#include <QLineEdit>

namespace ringhold {

namespace {

bool isKind(const QModelIndex& index) {
    return index.column() == static_cast<int>(StepColumn::kind);
}

} // namespace

StepDelegate::StepDelegate(const Theme& theme, QObject* parent)
    : QStyledItemDelegate(parent), m_theme(theme) {}

QWidget* StepDelegate::createEditor(QWidget* parent, const QStyleOptionViewItem& option,
                                    const QModelIndex& index) const {
    const QString name = index.data(Qt::AccessibleTextRole).toString();
    if (!isKind(index)) {
        auto* line = QStyledItemDelegate::createEditor(parent, option, index);
        line->setAccessibleName(name);
        return line;
    }
    auto* kinds = new QComboBox(parent);
    kinds->setAccessibleName(tr("What the kiln does in step %1").arg(index.row() + 1));
    for (int kind = 0; kind < stepKinds; ++kind)
        kinds->addItem(kindWords(static_cast<StepKind>(kind)));
    auto* self = const_cast<StepDelegate*>(this);
    connect(kinds, &QComboBox::activated, self, [self, kinds] {
        Q_EMIT self->commitData(kinds);
        Q_EMIT self->closeEditor(kinds);
    });
    return kinds;
}

void StepDelegate::setEditorData(QWidget* editor, const QModelIndex& index) const {
    if (auto* kinds = qobject_cast<QComboBox*>(editor))
        kinds->setCurrentIndex(index.data(Qt::EditRole).toInt());
    else
        QStyledItemDelegate::setEditorData(editor, index);
}

void StepDelegate::setModelData(QWidget* editor, QAbstractItemModel* model, const QModelIndex& index) const {
    if (const auto* kinds = qobject_cast<QComboBox*>(editor))
        model->setData(index, kinds->currentIndex());
    else
        QStyledItemDelegate::setModelData(editor, model, index);
}

void StepDelegate::initStyleOption(QStyleOptionViewItem* option, const QModelIndex& index) const {
    QStyledItemDelegate::initStyleOption(option, index);
    const auto& inks = m_theme.palette();
    if (index.data(PlanModel::ReckonedRole).toBool()) {
        option->palette.setColor(QPalette::Text, inks.soft);
        option->palette.setColor(QPalette::HighlightedText, inks.ink);
    }
    if (index.data(PlanModel::FaultRole).toString().isEmpty())
        return;
    option->text = QStringLiteral("! ") + option->text;
    option->font.setBold(true);
    option->backgroundBrush = inks.warningGround;
    option->palette.setColor(QPalette::Text, inks.warning);
    option->palette.setColor(QPalette::HighlightedText, inks.warning);
}

} // namespace ringhold
