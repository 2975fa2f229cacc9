// The ware table as it is filled in: by keyboard, without looking for the mouse.
#pragma once

#include <QTableView>

namespace ringhold {

class WareModel;

/// Enter keeps what was typed and moves on: through the columns of the load, or through those of the outcome,
/// and from the last of them to the next piece. In the column of crystals the digits 0 to 3 choose and move
/// on; in the ticks' columns 1 and 0, y and n, or Space. Delete empties a cell. Tab leaves the table.
class WareTable : public QTableView {
    Q_OBJECT

  public:
    explicit WareTable(QWidget* parent = nullptr);
    void reset() override;

  protected:
    void keyPressEvent(QKeyEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;
    void closeEditor(QWidget* editor, QAbstractItemDelegate::EndEditHint hint) override;
    void rowsInserted(const QModelIndex& parent, int first, int last) override;

  private:
    void fitColumns();
    void moveOn();
    bool takeKey(const QString& text);

    int m_added = -1; ///< the row that the open editor added
};

} // namespace ringhold
