#include "ui/ware/ware_model.h"

#include "ui/common/cell_delegate.h"
#include "ui/session/notebook.h"
#include "ui/ware/ware_cells.h"

#include <algorithm>

namespace ringhold {

namespace {

WareColumn columnOf(const QModelIndex& index) {
    return static_cast<WareColumn>(index.column());
}

bool isTick(WareColumn column) {
    return column == WareColumn::catcher || column == WareColumn::sagger;
}

bool isFigure(WareColumn column) {
    return column == WareColumn::largest || column == WareColumn::rings;
}

int alignmentOf(WareColumn column) {
    return int(isFigure(column) ? Qt::AlignRight | Qt::AlignVCenter : Qt::AlignLeft | Qt::AlignVCenter);
}

} // namespace

WareModel::WareModel(Notebook& notebook, Access access, QObject* parent)
    : QAbstractTableModel(parent), m_notebook(notebook), m_access(access) {}

void WareModel::show(std::optional<FiringId> firing, std::vector<Piece> pieces,
                     const std::vector<Outcome>& outcomes, bool flame) {
    std::vector<Row> rows;
    for (auto& piece : pieces) {
        const auto outcome = std::ranges::find(outcomes, piece.id, &Outcome::piece);
        Outcome unknown;
        unknown.piece = piece.id;
        rows.push_back({std::move(piece), outcome == outcomes.end() ? unknown : *outcome});
    }
    if (firing == m_firing && flame == m_flame && shows(rows))
        return;
    beginResetModel();
    m_firing = firing;
    m_flame = flame;
    m_rows = std::move(rows);
    endResetModel();
}

bool WareModel::shows(const std::vector<Row>& rows) const {
    return std::ranges::equal(rows, m_rows, [](const Row& a, const Row& b) {
        return a.piece.id == b.piece.id && sameCells(a.piece, a.outcome, b.piece, b.outcome);
    });
}

int WareModel::judgedCount() const {
    return static_cast<int>(std::ranges::count_if(m_rows, isJudged, &Row::outcome));
}

int WareModel::openToFlame() const {
    return m_flame ? static_cast<int>(
                         std::ranges::count(m_rows, false, [](const Row& row) { return row.piece.sagger; }))
                   : 0;
}

QStringList WareModel::said(WareColumn column) const {
    QStringList texts;
    for (const auto& row : m_rows)
        texts << cellText(row.piece, row.outcome, column);
    texts.removeAll(QString());
    texts.removeDuplicates();
    return texts;
}

int WareModel::rowCount(const QModelIndex& parent) const {
    if (parent.isValid())
        return 0;
    return pieceCount() + (m_firing && m_access == Access::write ? 1 : 0);
}

int WareModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : wareColumns;
}

QString WareModel::text(const Row& row, WareColumn column) const {
    if (column == WareColumn::sagger && m_flame && !row.piece.sagger)
        return tr("in flame");
    if (column == WareColumn::largest && row.outcome.largest_mm)
        return cellText(row.piece, row.outcome, column) + QStringLiteral(" mm");
    if (m_access == Access::read && column == WareColumn::catcher)
        return row.piece.catcher ? tr("yes") : QString();
    if (m_access == Access::read && column == WareColumn::sagger)
        return row.piece.sagger ? tr("yes") : QString();
    return cellText(row.piece, row.outcome, column);
}

QVariant WareModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid))
        return {};
    const auto column = columnOf(index);
    if (role == Qt::TextAlignmentRole)
        return alignmentOf(column);
    if (isNewRow(index.row())) {
        const bool inviting = column == WareColumn::piece;
        if (inviting && role == Qt::DisplayRole)
            return tr("new piece …");
        return inviting && role == invitingRole ? QVariant(true) : QVariant();
    }
    const Row& row = m_rows[static_cast<std::size_t>(index.row())];
    switch (role) {
    case Qt::DisplayRole:
        return text(row, column);
    case Qt::EditRole:
        return cellText(row.piece, row.outcome, column);
    case Qt::CheckStateRole:
        if (m_access == Access::write && isTick(column))
            return int((column == WareColumn::catcher ? row.piece.catcher : row.piece.sagger)
                           ? Qt::Checked
                           : Qt::Unchecked);
        return {};
    case Qt::ToolTipRole:
    case Qt::AccessibleTextRole:
        return isTick(column) ? QVariant() : QVariant(cellText(row.piece, row.outcome, column));
    default:
        return {};
    }
}

QVariant WareModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation == Qt::Horizontal && role == Qt::TextAlignmentRole)
        return alignmentOf(static_cast<WareColumn>(section));
    if (role != Qt::DisplayRole && role != Qt::ToolTipRole)
        return {};
    if (orientation == Qt::Vertical)
        return section + 1;
    const QStringList heads{tr("Piece"),  tr("Glaze"),    tr("Shelf"),   tr("Catcher"),
                            tr("Sagger"), tr("Crystals"), tr("Largest"), tr("Rings"),
                            tr("Faults"), tr("Grade"),    tr("Note")};
    return heads.value(section);
}

Qt::ItemFlags WareModel::flags(const QModelIndex& index) const {
    if (!index.isValid())
        return Qt::NoItemFlags;
    Qt::ItemFlags flags = Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemNeverHasChildren;
    if (m_access == Access::read)
        return flags;
    if (isNewRow(index.row()))
        return columnOf(index) == WareColumn::piece ? flags | Qt::ItemIsEditable : flags;
    return flags | (isTick(columnOf(index)) ? Qt::ItemIsUserCheckable : Qt::ItemIsEditable);
}

bool WareModel::setData(const QModelIndex& index, const QVariant& value, int role) {
    const bool known = index.isValid() && (role == Qt::EditRole || role == Qt::CheckStateRole);
    if (!known || m_access == Access::read || !m_firing)
        return false;
    if (isNewRow(index.row()))
        return columnOf(index) == WareColumn::piece && addPiece(value.toString().trimmed());
    Row changed = m_rows[static_cast<std::size_t>(index.row())];
    const QString wrong = putIntoCell(role == Qt::CheckStateRole ? value.toInt() == Qt::Checked : value,
                                      columnOf(index), changed.piece, changed.outcome);
    return wrong.isEmpty() ? keep(index.row(), changed, columnOf(index)) : refuse(wrong);
}

bool WareModel::refuse(const QString& why) {
    Q_EMIT troubled(why);
    return false;
}

bool WareModel::addPiece(const QString& name) {
    if (name.isEmpty())
        return false;
    Row row;
    row.piece.firing = *m_firing;
    row.piece.name = name.toStdString();
    const auto id = m_notebook.writer().add(row.piece);
    if (!id)
        return refuse(QString::fromStdString(id.error().text()));
    row.piece.id = row.outcome.piece = *id;
    beginInsertRows({}, pieceCount(), pieceCount()); // above the empty row
    m_rows.push_back(std::move(row));
    endInsertRows();
    Q_EMIT written();
    return true;
}

bool WareModel::keep(int row, const Row& changed, WareColumn column) {
    auto& kept = m_rows[static_cast<std::size_t>(row)];
    if (sameCells(kept.piece, kept.outcome, changed.piece, changed.outcome))
        return true;
    auto writer = m_notebook.writer();
    const auto done = column < firstOutcomeColumn ? writer.alter(changed.piece) : writer.set(changed.outcome);
    if (!done)
        return refuse(QString::fromStdString(done.error().text()));
    kept = changed;
    Q_EMIT dataChanged(index(row, 0), index(row, wareColumns - 1));
    Q_EMIT written();
    return true;
}

} // namespace ringhold
