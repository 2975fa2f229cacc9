// The table of probes and its editors.
#pragma once

#include "ui/common/cell_delegate.h"
#include "ui/common/entry_table.h"

namespace ringhold {

/// Thermocouple types are chosen from a list.
class ProbeDelegate : public CellDelegate {
    Q_OBJECT

  public:
    using CellDelegate::CellDelegate;
    QWidget* createEditor(QWidget* parent, const QStyleOptionViewItem& option,
                          const QModelIndex& index) const override;
    void setEditorData(QWidget* editor, const QModelIndex& index) const override;
    void setModelData(QWidget* editor, QAbstractItemModel* model, const QModelIndex& index) const override;
};

/// A type's letter sets it and moves on.
class ProbeTable : public EntryTable {
    Q_OBJECT

  public:
    explicit ProbeTable(QWidget* parent = nullptr);

  protected:
    bool takeKey(const QString& text) override;
};

} // namespace ringhold
