// A table that is filled in by keyboard.
#pragma once

#include "ui/common/fitted_table.h"

namespace ringhold {

/// Enter keeps what was typed and moves on, through the columns of a group and from the last of them to the
/// next row; in a row that only invites to write it stays. In a tick's cell 1 and 0, y and n, or Space;
/// Delete empties a cell. A row whose first cell says so by invitingRole is the empty one at the end: a value
/// in it adds a row.
class EntryTable : public FittedTable {
    Q_OBJECT

  public:
    explicit EntryTable(QWidget* parent = nullptr);

  protected:
    struct Group {
        int first = 0;
        int last = 0;
    };
    /// The columns that Enter goes through from this one: all of them unless overridden.
    virtual Group groupOf(int column) const;
    /// A key that sets the current cell without an editor; true when it did.
    virtual bool takeKey(const QString& text);

    void keyPressEvent(QKeyEvent* event) override;
    void closeEditor(QWidget* editor, QAbstractItemDelegate::EndEditHint hint) override;
    void rowsInserted(const QModelIndex& parent, int first, int last) override;

  private:
    bool invites(int row) const;
    void empty();
    void moveOn();

    int m_added = -1; ///< the row that the open editor added
};

} // namespace ringhold
