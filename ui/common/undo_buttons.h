// Undo and redo of a page: two buttons and their keys.
#pragma once

#include <QWidget>

class QPushButton;
class QUndoStack;

namespace ringhold {

/// Each says by its tooltip what it would undo. The keys work anywhere on the page. The stack outlives it.
class UndoButtons : public QWidget {
    Q_OBJECT

  public:
    UndoButtons(QUndoStack& stack, QWidget& page);

  private:
    QPushButton* make(const QString& words);
};

} // namespace ringhold
