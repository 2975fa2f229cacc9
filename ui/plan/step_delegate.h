// How the cells of a plan's table look and are edited.
#pragma once

#include <QStyledItemDelegate>

namespace ringhold {

class Theme;

/// A faulty cell has a mark, another ground and its words in the tool tip; the kind of a step is chosen from
/// a list.
class StepDelegate : public QStyledItemDelegate {
    Q_OBJECT

  public:
    explicit StepDelegate(const Theme& theme, QObject* parent = nullptr);

    QWidget* createEditor(QWidget* parent, const QStyleOptionViewItem& option,
                          const QModelIndex& index) const override;
    void setEditorData(QWidget* editor, const QModelIndex& index) const override;
    void setModelData(QWidget* editor, QAbstractItemModel* model, const QModelIndex& index) const override;

  protected:
    void initStyleOption(QStyleOptionViewItem* option, const QModelIndex& index) const override;

  private:
    const Theme& m_theme;
};

} // namespace ringhold
