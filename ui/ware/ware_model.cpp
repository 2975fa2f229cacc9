#include "ui/ware/ware_model.h"

#include "core/glaze/glaze_card.h"
#include "ui/common/cell_delegate.h"
#include "ui/ware/outcome_words.h"
#include "ui/ware/ware_changes.h"

#include <QColor>

#include <algorithm>

namespace ringhold {

namespace {

WareColumn columnOf(const QModelIndex& index) {
    return static_cast<WareColumn>(index.column());
}

int alignmentOf(WareColumn column) {
    return int(isFigure(column) ? Qt::AlignRight | Qt::AlignVCenter : Qt::AlignLeft | Qt::AlignVCenter);
}

} // namespace

WareModel::WareModel(Notebook& notebook, Access access, QObject* parent)
    : QAbstractTableModel(parent), m_notebook(notebook), m_access(access) {}

void WareModel::show(std::optional<FiringId> firing, std::vector<Piece> pieces,
                     const std::vector<Outcome>& outcomes, bool flame) {
    std::vector<WareRow> rows;
    for (auto& piece : pieces) {
        const auto outcome = std::ranges::find(outcomes, piece.id, &Outcome::piece);
        Outcome unknown;
        unknown.piece = piece.id;
        rows.push_back({std::move(piece), outcome == outcomes.end() ? unknown : *outcome});
    }
    if (firing != m_firing) {
        m_undo.clear();
        m_photos.clear();
    }
    if (firing == m_firing && flame == m_flame && shows(rows))
        return;
    beginResetModel();
    m_firing = firing;
    m_flame = flame;
    m_rows = std::move(rows);
    endResetModel();
}

void WareModel::showPhotoCounts(std::map<PieceId, int> counts) {
    if (counts == m_photos)
        return;
    m_photos = std::move(counts);
    if (!m_rows.empty())
        Q_EMIT dataChanged(index(0, int(WareColumn::photos)),
                           index(pieceCount() - 1, int(WareColumn::photos)));
}

bool WareModel::shows(const std::vector<WareRow>& rows) const {
    return std::ranges::equal(rows, m_rows, [](const WareRow& a, const WareRow& b) {
        return a.piece.id == b.piece.id && sameWare(a, b);
    });
}

int WareModel::judgedCount() const {
    return static_cast<int>(std::ranges::count_if(m_rows, isJudged, &WareRow::outcome));
}

bool WareModel::isOpenToFlame(const WareRow& row) const {
    if (!m_flame || row.piece.sagger)
        return false;
    const auto names = ringhold::glazeNames(row.piece.glaze);
    return names.empty() || !std::ranges::all_of(names, [this](const std::string& name) {
               return m_zincFree.contains(QString::fromStdString(name), Qt::CaseInsensitive);
           });
}

int WareModel::openToFlame() const {
    return static_cast<int>(
        std::ranges::count_if(m_rows, [this](const WareRow& row) { return isOpenToFlame(row); }));
}

int WareModel::photoCount(int at) const {
    const auto found = m_photos.find(piece(at).id);
    return found == m_photos.end() ? 0 : found->second;
}

std::optional<int> WareModel::rowOf(PieceId piece) const {
    const auto found = std::ranges::find(m_rows, piece, [](const WareRow& row) { return row.piece.id; });
    return found == m_rows.end() ? std::nullopt : std::optional(int(found - m_rows.begin()));
}

QStringList WareModel::said(WareColumn column) const {
    QStringList texts;
    for (const auto& row : m_rows)
        texts << cellText(row, column);
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

QString WareModel::text(const WareRow& row, WareColumn column) const {
    const QString cell = cellText(row, column);
    switch (column) {
    case WareColumn::sagger:
        if (isOpenToFlame(row))
            return tr("in flame");
        return m_access == Access::read && row.piece.sagger ? tr("yes") : QString();
    case WareColumn::catcher:
        return m_access == Access::read && row.piece.catcher ? tr("yes") : QString();
    case WareColumn::photos: {
        const auto count = m_photos.find(row.piece.id);
        return count == m_photos.end() || count->second == 0 ? QString() : QString::number(count->second);
    }
    default:
        return cell;
    }
}

QVariant WareModel::tick(const WareRow& row, WareColumn column) const {
    if (m_access == Access::read || !isTick(column))
        return {};
    return int((column == WareColumn::catcher ? row.piece.catcher : row.piece.sagger) ? Qt::Checked
                                                                                      : Qt::Unchecked);
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
    const auto& shown = row(index.row());
    switch (role) {
    case Qt::DisplayRole:
        return text(shown, column);
    case Qt::EditRole:
        return cellText(shown, column);
    case Qt::CheckStateRole:
        return tick(shown, column);
    case Qt::DecorationRole:
        if (const auto colour = pickedColour(shown, column); !colour.empty())
            return QColor(QString::fromStdString(colour));
        return {};
    case Qt::ToolTipRole:
    case Qt::AccessibleTextRole:
        return isTick(column) ? QVariant() : QVariant(text(shown, column));
    default:
        return {};
    }
}

QVariant WareModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation == Qt::Horizontal && section >= 0 && section < wareColumns) {
        const auto column = static_cast<WareColumn>(section);
        if (role == Qt::TextAlignmentRole)
            return alignmentOf(column);
        if (role == Qt::DisplayRole)
            return headingOf(column);
        if (role == Qt::ToolTipRole)
            return hintOf(column).isEmpty() ? headingOf(column) : hintOf(column);
        return {};
    }
    return role == Qt::DisplayRole && orientation == Qt::Vertical ? QVariant(section + 1) : QVariant();
}

Qt::ItemFlags WareModel::flags(const QModelIndex& index) const {
    const auto flags = QAbstractTableModel::flags(index);
    if (!index.isValid() || m_access == Access::read)
        return flags;
    if (isNewRow(index.row()))
        return columnOf(index) == WareColumn::piece ? flags | Qt::ItemIsEditable : flags;
    if (columnOf(index) == WareColumn::photos)
        return flags;
    return flags | (isTick(columnOf(index)) ? Qt::ItemIsUserCheckable : Qt::ItemIsEditable);
}

bool WareModel::setData(const QModelIndex& index, const QVariant& value, int role) {
    const bool known = index.isValid() && (role == Qt::EditRole || role == Qt::CheckStateRole);
    if (!known || m_access == Access::read || !m_firing || columnOf(index) == WareColumn::photos)
        return false;
    if (isNewRow(index.row())) {
        Piece piece;
        piece.name = value.toString().trimmed().toStdString();
        return columnOf(index) == WareColumn::piece && !piece.name.empty() && addPieces({piece});
    }
    WareRow changed = row(index.row());
    const QString wrong = putIntoCell(role == Qt::CheckStateRole ? value.toInt() == Qt::Checked : value,
                                      columnOf(index), changed);
    return wrong.isEmpty() ? alter(changed, headingOf(columnOf(index))) : refuse(wrong);
}

bool WareModel::refuse(const QString& why) {
    Q_EMIT troubled(why);
    return false;
}

} // namespace ringhold
