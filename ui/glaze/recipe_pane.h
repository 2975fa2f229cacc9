// A glaze's recipe with what it comes to.
#pragma once

#include "ui/glaze/recipe_model.h"

#include <QWidget>

class QLabel;
class QLineEdit;
class QPushButton;

namespace ringhold {

class EntryTable;
class Remark;

/// Nothing is kept here: edited() tells what the recipe is to be.
class RecipePane : public QWidget {
    Q_OBJECT

  public:
    explicit RecipePane(QWidget* parent = nullptr);
    void show(const std::vector<RecipeLine>& lines);
    EntryTable& table() { return *m_table; }

  Q_SIGNALS:
    void edited(const std::vector<ringhold::RecipeLine>& lines);

  private:
    QLayout* makeFoot();
    void tell();
    void takeBatch();

    RecipeModel* m_model;
    EntryTable* m_table;
    QLabel* m_figures;
    Remark* m_warnings;
    Remark* m_trouble;
    QLineEdit* m_batch;
    QPushButton* m_remove;
};

} // namespace ringhold
