// The ware page: what is in the kiln and where, and what came out of it.
#pragma once

#include "core/base/result.h" // first: see DEVELOPERS.md on moc and <compare>
#include "core/learn/firing_cost.h"
#include "ui/ware/ware_model.h"

#include <QWidget>

#include <functional>
#include <optional>

class QColor;
class QComboBox;
class QLabel;
class QPushButton;
class QStackedWidget;

namespace ringhold {

class Checklist;
class ChoiceRow;
class FreshWhenSeen;
class Notebook;
class PiecePane;
class Remark;
class ShelfMapPane;
class Theme;
class WareTable;

/// Notebook and theme outlive it.
class WarePage : public QWidget {
    Q_OBJECT

  public:
    enum class Sheet { load, map, checklist, outcome };
    WarePage(Notebook& notebook, const Theme& theme, QWidget* parent = nullptr);
    ~WarePage() override;

    /// Live or past.
    void showFiring(FiringId firing);
    void showSheet(Sheet sheet);
    Sheet sheet() const;
    WareModel& model() { return *m_model; }
    /// How a colour is asked for, from the one there is; an invalid one changes nothing. A dialog unless a
    /// test says otherwise.
    void setColourChooser(std::function<QColor(QColor, const QString&)> chooser) {
        m_chooseColour = std::move(chooser);
    }

  private:
    QLayout* makeHead(const Theme& theme);
    QLayout* makeSheets();
    QWidget* makeTable();
    QLayout* makeFoot();
    void connectAll();
    void refresh();
    void listFirings();
    void showChosen();
    void showBegun();
    void showPiece();
    void tellCounts();
    void tellFlame(int open);
    void pickColour(const QModelIndex& cell);
    void copyLastLoad();
    void wrote();
    void arrange();
    std::optional<FiringId> chosen() const;

    Notebook& m_notebook;
    const Theme& m_theme;
    WareModel* m_model;
    QComboBox* m_firings;
    ChoiceRow* m_sheets;
    QPushButton* m_copy;
    QPushButton* m_takeOut;
    QPushButton* m_pick;
    QLabel* m_counts;
    QLabel* m_hint;
    Remark* m_flame;
    Remark* m_trouble;
    WareTable* m_table;
    PiecePane* m_piece;
    ShelfMapPane* m_map;
    Checklist* m_checklist;
    QStackedWidget* m_stack;
    FreshWhenSeen* m_fresh;
    std::optional<FiringId> m_shown;
    std::optional<FiringId> m_begun; ///< the latest live one
    FiringUse m_use;                 ///< of the firing shown
    std::function<QColor(QColor, const QString&)> m_chooseColour;
};

} // namespace ringhold
