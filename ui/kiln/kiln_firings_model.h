// The past firings of one kiln with what they tell of its wear, evenness and cost, as a table.
#pragma once

#include "core/base/result.h" // first: see DEVELOPERS.md on moc and <compare>
#include "ui/kiln/kiln_history.h"

#include <QAbstractTableModel>

#include <vector>

namespace ringhold {

class Preferences;

enum class KilnFiringColumn { began, firing, climb, volts, energy, cost, spread, places };
inline constexpr int kilnFiringColumns = 8;

/// The latest first. Preferences outlive it.
class KilnFiringsModel : public QAbstractTableModel {
    Q_OBJECT

  public:
    explicit KilnFiringsModel(const Preferences& preferences, QObject* parent = nullptr)
        : QAbstractTableModel(parent), m_preferences(preferences) {}

    /// In time order.
    void show(std::vector<KilnFiring> firings);
    const KilnFiring& firing(int row) const { return m_firings[static_cast<std::size_t>(row)]; }

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

  private:
    QString text(const KilnFiring& firing, KilnFiringColumn column) const;

    const Preferences& m_preferences;
    std::vector<KilnFiring> m_firings;
};

} // namespace ringhold
