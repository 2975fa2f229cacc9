// What differs between firings laid over each other, as a table.
#pragma once

#include "ui/past/laid_over.h"

#include <QAbstractTableModel>
#include <QPen>

#include <vector>

namespace ringhold {

class Preferences;

enum class DifferenceColumn {
    key,
    firing,
    probe,
    peak,
    nearPeak,
    lastClimb,
    coneDown,
    holdMean,
    holdSd,
    holdLength
};
inline constexpr int differenceColumns = 10;

/// A row a firing. Its key has the pen it is drawn with as an icon. Preferences outlive it.
class DifferenceModel : public QAbstractTableModel {
    Q_OBJECT

  public:
    explicit DifferenceModel(const Preferences& preferences, QObject* parent = nullptr)
        : QAbstractTableModel(parent), m_preferences(preferences) {}

    /// As many pens as firings.
    void show(std::vector<LaidFiring> laid, std::vector<QPen> pens);

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

  private:
    QString text(std::size_t row, DifferenceColumn column) const;
    QString probeText(const LaidFiring& laid) const;
    QString holdText(const HoldStatistics& hold, DifferenceColumn column) const;

    const Preferences& m_preferences;
    std::vector<LaidFiring> m_laid;
    std::vector<QPen> m_pens;
};

} // namespace ringhold
