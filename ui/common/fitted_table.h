// A table whose columns share the room there is.
#pragma once

#include <QTableView>

#include <vector>

namespace ringhold {

/// In a narrow window columns are somewhat narrower than they need and their heads break between words; only
/// then does it scroll sideways. Tab leaves it; cells are drawn by a CellDelegate.
class FittedTable : public QTableView {
    Q_OBJECT

  public:
    struct Column {
        double figures = 8; ///< what it needs, in widths of a figure
        double share = 0;   ///< of the room that is left over
    };

    explicit FittedTable(QWidget* parent = nullptr);

    /// As many as the model has columns.
    void setColumns(std::vector<Column> columns);
    void reset() override;

  protected:
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;

  private:
    void fitColumns();

    std::vector<Column> m_columns;
};

} // namespace ringhold
