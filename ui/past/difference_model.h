// What differs between firings laid over each other, as a table.
#pragma once

#include "core/base/result.h" // first: see DEVELOPERS.md on moc and <compare>
#include "core/learn/comparison.h"
#include "ui/past/laid_over.h"

#include <QAbstractTableModel>
#include <QPen>

#include <optional>
#include <vector>

namespace ringhold {

class Preferences;

/// A column a firing, headed by its letter and the pen it is drawn with; a row a figure: first what the
/// firing and its probe are called, then the figures that at least one of them has, last the grades. A figure
/// that differs enough to look at has a heavy head. Preferences outlive it.
class DifferenceModel : public QAbstractTableModel {
    Q_OBJECT

  public:
    enum NamingRow { firingRow, probeRow, namingRows };

    explicit DifferenceModel(const Preferences& preferences, QObject* parent = nullptr)
        : QAbstractTableModel(parent), m_preferences(preferences) {}

    /// As many pens as firings.
    void show(std::vector<LaidFiring> laid, std::vector<QPen> pens);
    /// Nothing where no firing has it.
    std::optional<int> rowOf(Figure figure) const;
    const Comparison& comparison() const { return m_comparison; }

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

  private:
    const FigureRow* figures(int row) const;
    QString text(int row, const LaidFiring& laid, std::size_t column) const;
    QString grades(const LaidFiring& laid) const;
    QVariant figureHead(int row, int role) const;

    const Preferences& m_preferences;
    std::vector<LaidFiring> m_laid;
    std::vector<QPen> m_pens;
    Comparison m_comparison;
};

} // namespace ringhold
