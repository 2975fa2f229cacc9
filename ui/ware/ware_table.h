// The ware table as it is filled in: by keyboard, without looking for the mouse.
#pragma once

#include "ui/common/entry_table.h"
#include "ui/ware/ware_columns.h"

namespace ringhold {

/// Enter goes through the columns of the load, or through those of the outcome. In the column of crystals the
/// digits 0 to 3 choose and move on; F4 in a column of colours asks for one to be picked, Enter in that of
/// photos for the photos.
class WareTable : public EntryTable {
    Q_OBJECT

  public:
    explicit WareTable(WareSheet sheet, QWidget* parent = nullptr);
    void reset() override;
    void setModel(QAbstractItemModel* model) override;
    WareSheet sheet() const { return m_sheet; }
    void showSheet(WareSheet sheet);

  Q_SIGNALS:
    void colourWanted(const QModelIndex& cell);
    void photosWanted(const QModelIndex& cell);

  protected:
    Group groupOf(int column) const override;
    bool takeKey(const QString& text) override;
    void keyPressEvent(QKeyEvent* event) override;

  private:
    void arrange();

    WareSheet m_sheet;
};

} // namespace ringhold
