// A glaze's recipe as a table.
#pragma once

#include "core/base/result.h" // before the card: see DEVELOPERS.md on moc and <compare>
#include "core/glaze/glaze_card.h"

#include <QAbstractTableModel>

#include <optional>
#include <vector>

namespace ringhold {

enum class RecipeColumn { material, percent, addition, formula, batch };
inline constexpr int recipeColumns = 5;

/// A row a line, and an empty one in which a material's name adds one. It keeps nothing: edited() tells what
/// the recipe is to be, and whoever keeps it shows it again.
class RecipeModel : public QAbstractTableModel {
    Q_OBJECT

  public:
    using QAbstractTableModel::QAbstractTableModel;

    void show(std::vector<RecipeLine> lines);
    /// Of how many grams the weights are told.
    void setBatch(double grams);
    const std::vector<RecipeLine>& lines() const { return m_lines; }
    bool isNewRow(int row) const { return row >= static_cast<int>(m_lines.size()); }
    void removeLine(int row);

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;
    bool setData(const QModelIndex& index, const QVariant& value, int role = Qt::EditRole) override;

  Q_SIGNALS:
    void edited(const std::vector<ringhold::RecipeLine>& lines);
    void troubled(const QString& why);

  private:
    QString text(const RecipeLine& line, RecipeColumn column) const;
    QString put(const QVariant& value, RecipeColumn column, RecipeLine& line) const;

    std::vector<RecipeLine> m_lines;
    double m_batch_g = 1000;
};

/// The chemical formula of a pure material by its common name, and those that are completed while typing;
/// empty for one that is not known, as for all that come with an analysis.
QString formulaOf(const QString& material);
QStringList knownMaterials();

} // namespace ringhold
