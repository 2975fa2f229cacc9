// The book's firings as a table, with a tick for those to be laid over each other.
#pragma once

#include "core/book/reader.h"

#include <QAbstractTableModel>

#include <vector>

namespace ringhold {

class Preferences;

enum class FiringColumn { tick, began, title, kiln, length, peak, readings };
inline constexpr int firingColumns = 7;

/// The latest first. Preferences outlive it.
class FiringsModel : public QAbstractTableModel {
    Q_OBJECT

  public:
    /// What a filter looks at: all words of a firing.
    static constexpr int wordsRole = Qt::UserRole;
    static constexpr int sortRole = Qt::UserRole + 1;

    explicit FiringsModel(const Preferences& preferences, QObject* parent = nullptr)
        : QAbstractTableModel(parent), m_preferences(preferences) {}

    /// In time order, as the book gives them. Ticks of those that are still there stay.
    void show(std::vector<FiringSummary> firings);
    const FiringSummary& firing(int row) const { return m_firings[static_cast<std::size_t>(row)]; }
    /// -1 when it is not among them.
    int rowOf(FiringId firing) const;

    /// In the order of ticking; at most mostLaidOver, further ticks are not taken.
    const std::vector<FiringId>& ticked() const { return m_ticked; }
    void untickAll();

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;
    bool setData(const QModelIndex& index, const QVariant& value, int role = Qt::EditRole) override;

  Q_SIGNALS:
    void tickedChanged();

  private:
    QString text(const FiringSummary& firing, FiringColumn column) const;
    QVariant sortValue(const FiringSummary& firing, FiringColumn column) const;
    QString words(const FiringSummary& firing) const;

    const Preferences& m_preferences;
    std::vector<FiringSummary> m_firings;
    std::vector<FiringId> m_ticked;
};

} // namespace ringhold
