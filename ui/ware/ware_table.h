// The ware table as it is filled in: by keyboard, without looking for the mouse.
#pragma once

#include "ui/common/entry_table.h"

namespace ringhold {

/// Enter goes through the columns of the load, or through those of the outcome. In the column of crystals the
/// digits 0 to 3 choose and move on.
class WareTable : public EntryTable {
    Q_OBJECT

  public:
    explicit WareTable(QWidget* parent = nullptr);
    void reset() override;

  protected:
    Group groupOf(int column) const override;
    bool takeKey(const QString& text) override;
};

} // namespace ringhold
