// The kilns of a book as a list.
#pragma once

#include "core/firing/records.h"

#include <QAbstractListModel>

#include <vector>

namespace ringhold {

class KilnListModel : public QAbstractListModel {
    Q_OBJECT

  public:
    explicit KilnListModel(QObject* parent = nullptr) : QAbstractListModel(parent) {}

    void show(std::vector<Kiln> kilns);
    const Kiln& kiln(int row) const { return m_kilns[static_cast<std::size_t>(row)]; }
    /// -1 when it is not among them.
    int rowOf(KilnId kiln) const;

    int rowCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;

  private:
    std::vector<Kiln> m_kilns;
};

/// "electric", "gas", "wood".
QString fuelWords(Fuel fuel);

} // namespace ringhold
