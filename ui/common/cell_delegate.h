// How the cells of every table are drawn.
#pragma once

#include <QStyledItemDelegate>

namespace ringhold {

/// Data of this role being true, a cell invites to write in it: soft and italic.
inline constexpr int invitingRole = Qt::UserRole + 70;

/// Words stand in line with their column's head; the cell that has the keyboard is framed; ticks are drawn in
/// the ink of the theme.
class CellDelegate : public QStyledItemDelegate {
    Q_OBJECT

  public:
    using QStyledItemDelegate::QStyledItemDelegate;
    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;

  protected:
    bool editorEvent(QEvent* event, QAbstractItemModel* model, const QStyleOptionViewItem& option,
                     const QModelIndex& index) override;
    void initStyleOption(QStyleOptionViewItem* option, const QModelIndex& index) const override;
};

} // namespace ringhold
