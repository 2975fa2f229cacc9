#include "ui/common/undo_buttons.h"

#include <QHBoxLayout>
#include <QPushButton>
#include <QShortcut>
#include <QUndoStack>

namespace ringhold {

UndoButtons::UndoButtons(QUndoStack& stack, QWidget& page) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    auto* undo = make(tr("&Undo"));
    auto* redo = make(tr("Redo"));
    connect(undo, &QPushButton::clicked, &stack, &QUndoStack::undo);
    connect(redo, &QPushButton::clicked, &stack, &QUndoStack::redo);
    connect(&stack, &QUndoStack::canUndoChanged, undo, &QPushButton::setEnabled);
    connect(&stack, &QUndoStack::canRedoChanged, redo, &QPushButton::setEnabled);
    connect(&stack, &QUndoStack::undoTextChanged, undo, &QPushButton::setToolTip);
    connect(&stack, &QUndoStack::redoTextChanged, redo, &QPushButton::setToolTip);
    const auto addKey = [&](QKeySequence::StandardKey key, auto slot) {
        auto* shortcut = new QShortcut(key, &page);
        shortcut->setContext(Qt::WidgetWithChildrenShortcut);
        connect(shortcut, &QShortcut::activated, &stack, slot);
    };
    addKey(QKeySequence::Undo, &QUndoStack::undo);
    addKey(QKeySequence::Redo, &QUndoStack::redo);
}

QPushButton* UndoButtons::make(const QString& words) {
    auto* button = new QPushButton(words);
    button->setAutoDefault(false);
    button->setEnabled(false);
    layout()->addWidget(button);
    return button;
}

} // namespace ringhold
