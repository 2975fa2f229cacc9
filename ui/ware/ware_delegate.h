// How the cells of the ware table are edited.
#pragma once

#include "ui/common/cell_delegate.h"

namespace ringhold {

/// Editors by column: what is known already completes what is typed, crystals are chosen from their words.
class WareDelegate : public CellDelegate {
    Q_OBJECT

  public:
    using CellDelegate::CellDelegate;
    QWidget* createEditor(QWidget* parent, const QStyleOptionViewItem& option,
                          const QModelIndex& index) const override;
    void setEditorData(QWidget* editor, const QModelIndex& index) const override;
    void setModelData(QWidget* editor, QAbstractItemModel* model, const QModelIndex& index) const override;
};

} // namespace ringhold
