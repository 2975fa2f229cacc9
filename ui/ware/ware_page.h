// The ware page: what is in the kiln, and what came out of it.
#pragma once

#include "ui/ware/ware_model.h"

#include <QWidget>

#include <optional>

class QComboBox;
class QLabel;
class QPushButton;

namespace ringhold {

class FreshWhenSeen;
class Notebook;
class Remark;
class Theme;
class WareTable;

/// Notebook and theme outlive it.
class WarePage : public QWidget {
    Q_OBJECT

  public:
    WarePage(Notebook& notebook, const Theme& theme, QWidget* parent = nullptr);

    /// Live or past.
    void showFiring(FiringId firing);

  private:
    struct TakenOut {
        Piece piece;
        Outcome outcome;
    };
    QLayout* makeHead(const Theme& theme);
    QLayout* makeFoot();
    void connectAll();
    void refresh();
    void listFirings();
    void showChosen();
    void tellCounts();
    void copyLastLoad();
    void takeOut();
    void putBack();
    void wrote();
    std::optional<FiringId> chosen() const;

    Notebook& m_notebook;
    WareModel* m_model;
    QComboBox* m_firings;
    QPushButton* m_copy;
    QPushButton* m_takeOut;
    QPushButton* m_putBack;
    QLabel* m_counts;
    Remark* m_flame;
    Remark* m_trouble;
    WareTable* m_table;
    FreshWhenSeen* m_fresh;
    std::optional<TakenOut> m_taken;
};

} // namespace ringhold
