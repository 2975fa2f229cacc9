// What stands in the kiln and where: pieces and cone packs, as a list.
#pragma once

#include "core/firing/records.h"

#include <QAbstractListModel>

#include <optional>
#include <variant>
#include <vector>

namespace ringhold {

struct ShelfItem {
    std::variant<PieceId, PackId> id;
    QString name;
    QString glaze; ///< empty for a pack
    QString shelf; ///< empty while it has none
    std::optional<MapSpot> spot;
    bool sagger = false;

    bool isPack() const { return std::holds_alternative<PackId>(id); }
    bool operator==(const ShelfItem&) const = default;
};

/// Shelf by shelf. It writes nothing: whoever shows it does.
class ShelfMapModel : public QAbstractListModel {
    Q_OBJECT

  public:
    using QAbstractListModel::QAbstractListModel;

    /// `extraShelves` are there though nothing stands on them.
    void show(const std::vector<Piece>& pieces, const std::vector<Pack>& packs,
              const QStringList& extraShelves);

    /// In the order in which they are first named; "" last, if something stands nowhere yet.
    const QStringList& shelves() const { return m_shelves; }
    const ShelfItem& item(int row) const { return m_items[static_cast<std::size_t>(row)]; }
    /// Where it is drawn: at its spot, or in the rows in which a shelf's unplaced ones are set out.
    MapSpot spotOf(int row) const;
    std::optional<int> rowOf(const std::variant<PieceId, PackId>& id) const;

    int rowCount(const QModelIndex& parent = {}) const override;
    /// In words: "tall vase, ice 3, on the top shelf, left, in front".
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;

  private:
    QStringList m_shelves;
    std::vector<ShelfItem> m_items;
};

/// "left, in front", "middle"; seen from above with the door below.
QString spotWords(MapSpot spot);

} // namespace ringhold
