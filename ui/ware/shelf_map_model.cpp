#include "ui/ware/shelf_map_model.h"

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

QString of(const std::string& text) {
    return QString::fromStdString(text);
}

QString packName(const Pack& pack) {
    QStringList cones;
    for (const auto& cone : pack.cones)
        cones << of(cone);
    return ShelfMapModel::tr("cones %1").arg(cones.join(QStringLiteral(" ")));
}

} // namespace

QString spotWords(MapSpot spot) {
    constexpr double third = 1.0 / 3;
    QStringList words;
    if (spot.x < third)
        words << ShelfMapModel::tr("left");
    else if (spot.x > 1 - third)
        words << ShelfMapModel::tr("right");
    if (spot.y < third)
        words << ShelfMapModel::tr("in front");
    else if (spot.y > 1 - third)
        words << ShelfMapModel::tr("at the back");
    return words.isEmpty() ? ShelfMapModel::tr("in the middle") : words.join(QStringLiteral(", "));
}

void ShelfMapModel::show(const std::vector<Piece>& pieces, const std::vector<Pack>& packs,
                         const QStringList& extraShelves) {
    std::vector<ShelfItem> items;
    for (const auto& piece : pieces)
        items.push_back(
            {piece.id, of(piece.name), of(piece.glaze), of(piece.shelf).trimmed(), piece.spot, piece.sagger});
    for (const auto& pack : packs)
        items.push_back({pack.id, packName(pack), QString(),
                         of(pack.shelf.empty() ? pack.place : pack.shelf).trimmed(), pack.spot});
    QStringList shelves;
    for (const auto& item : items)
        shelves << item.shelf;
    shelves << extraShelves;
    shelves.removeDuplicates();
    if (shelves.removeAll(QString()) > 0)
        shelves << QString();
    std::ranges::stable_sort(items, {}, [&](const ShelfItem& item) { return shelves.indexOf(item.shelf); });
    if (items == m_items && shelves == m_shelves)
        return;
    beginResetModel();
    m_items = std::move(items);
    m_shelves = std::move(shelves);
    endResetModel();
}

MapSpot ShelfMapModel::spotOf(int row) const {
    if (item(row).spot)
        return *item(row).spot;
    int before = 0, all = 0;
    for (int i = 0; i < rowCount(); ++i)
        if (item(i).shelf == item(row).shelf && !item(i).spot) {
            before += i < row ? 1 : 0;
            ++all;
        }
    const int across = std::max(1, static_cast<int>(std::ceil(std::sqrt(all))));
    const int deep = (all + across - 1) / across;
    return {(before % across + 0.5) / across, 1 - (before / across + 0.5) / deep};
}

std::optional<int> ShelfMapModel::rowOf(const std::variant<PieceId, PackId>& id) const {
    const auto found = std::ranges::find(m_items, id, &ShelfItem::id);
    return found == m_items.end() ? std::nullopt : std::optional(int(found - m_items.begin()));
}

int ShelfMapModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_items.size());
}

QVariant ShelfMapModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid) ||
        (role != Qt::DisplayRole && role != Qt::AccessibleTextRole && role != Qt::ToolTipRole))
        return {};
    const auto& shown = item(index.row());
    QStringList words{shown.name};
    if (!shown.glaze.isEmpty())
        words << shown.glaze;
    if (shown.sagger)
        words << tr("in a sagger");
    words << (shown.shelf.isEmpty() ? tr("on no shelf yet") : tr("on %1").arg(shown.shelf));
    if (shown.spot)
        words << spotWords(*shown.spot);
    return words.join(QStringLiteral(", "));
}

} // namespace ringhold
