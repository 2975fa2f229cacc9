#include "ui/ware/ware_changes.h"

#include "ui/session/notebook.h"

#include <algorithm>

namespace ringhold {

namespace {

bool samePiece(const WareRow& a, const WareRow& b) {
    for (int i = 0; i < int(firstOutcomeColumn); ++i)
        if (cellText(a, static_cast<WareColumn>(i)) != cellText(b, static_cast<WareColumn>(i)))
            return false;
    return a.piece.catcher == b.piece.catcher && a.piece.sagger == b.piece.sagger &&
           a.piece.spot == b.piece.spot;
}

QString nameOf(const WareRow& row) {
    return QString::fromStdString(row.piece.name);
}

} // namespace

bool WareModel::push(QUndoCommand* command) {
    bool refused = false;
    const auto watch = connect(this, &WareModel::troubled, this, [&] { refused = true; });
    m_undo.push(command); // gone already when the book refused it
    disconnect(watch);
    return !refused;
}

bool WareModel::alter(const WareRow& changed, const QString& what) {
    const auto at = rowOf(changed.piece.id);
    if (!at)
        return false;
    if (sameWare(row(*at), changed))
        return true;
    return push(new WareEdit(*this, row(*at), changed, tr("%1 of %2").arg(what, nameOf(changed))));
}

bool WareModel::pick(const QModelIndex& cell, const QString& colour) {
    if (!cell.isValid() || isNewRow(cell.row()) || m_access == Access::read)
        return false;
    WareRow changed = row(cell.row());
    pickColour(colour.toStdString(), static_cast<WareColumn>(cell.column()), changed);
    return alter(changed, headingOf(static_cast<WareColumn>(cell.column())));
}

bool WareModel::place(PieceId piece, const std::string& shelf, std::optional<MapSpot> spot) {
    const auto at = rowOf(piece);
    if (!at)
        return false;
    WareRow changed = row(*at);
    changed.piece.shelf = shelf;
    changed.piece.spot = spot;
    return alter(changed, tr("place"));
}

bool WareModel::addPieces(std::vector<Piece> pieces) {
    if (!m_firing || pieces.empty())
        return false;
    std::vector<WholePiece> fresh;
    for (auto& piece : pieces) {
        piece.firing = *m_firing;
        piece.id = {};
        fresh.push_back({std::move(piece)});
    }
    const QString what = fresh.size() == 1
                             ? tr("new piece %1").arg(QString::fromStdString(fresh.front().piece.name))
                             : tr("%1 pieces copied").arg(fresh.size());
    return push(new WareCount(*this, std::move(fresh), WareCount::Way::in, what));
}

bool WareModel::takeOut(int at) {
    if (isNewRow(at) || at < 0)
        return false;
    WholePiece gone;
    gone.piece = piece(at);
    return push(new WareCount(*this, {gone}, WareCount::Way::out, tr("%1 taken out").arg(nameOf(row(at)))));
}

bool WareModel::write(const WareRow& changed) {
    const auto at = rowOf(changed.piece.id);
    if (!at)
        return refuse(tr("This piece is no longer in the book."));
    auto& kept = m_rows[static_cast<std::size_t>(*at)];
    auto writer = m_notebook.writer();
    const auto done = samePiece(kept, changed) ? writer.set(changed.outcome) : writer.alter(changed.piece);
    if (!done)
        return refuse(QString::fromStdString(done.error().text()));
    kept = changed;
    Q_EMIT dataChanged(index(*at, 0), index(*at, wareColumns - 1));
    Q_EMIT written();
    return true;
}

bool WareModel::insert(std::vector<WholePiece>& pieces) {
    for (auto& whole : pieces) {
        if (whole.piece.id == PieceId{}) {
            const auto id = m_notebook.writer().add(whole.piece);
            if (!id)
                return refuse(QString::fromStdString(id.error().text()));
            whole.piece.id = *id;
        } else if (const auto back = WareFinds(m_notebook.book()).restore(whole); !back) {
            return refuse(QString::fromStdString(back.error().text()));
        }
        Outcome unknown;
        unknown.piece = whole.piece.id;
        const auto at =
            std::ranges::find_if(m_rows, [&](const WareRow& row) { return row.piece.id > whole.piece.id; });
        const int place = static_cast<int>(at - m_rows.begin());
        beginInsertRows({}, place, place); // where the book has it; above the empty row
        m_rows.insert(at, {whole.piece, whole.outcome.value_or(unknown)});
        endInsertRows();
    }
    Q_EMIT written();
    return true;
}

bool WareModel::erase(std::vector<WholePiece>& pieces) {
    for (auto& piece : pieces) {
        auto whole = WareFinds(m_notebook.book()).whole(piece.piece.id);
        const auto at = rowOf(piece.piece.id);
        if (!whole || !at)
            return refuse(tr("This piece is no longer in the book."));
        piece = std::move(*whole);
        if (const auto removed = m_notebook.writer().remove(piece.piece.id); !removed)
            return refuse(QString::fromStdString(removed.error().text()));
        beginRemoveRows({}, *at, *at);
        m_rows.erase(m_rows.begin() + *at);
        endRemoveRows();
    }
    Q_EMIT written();
    return true;
}

} // namespace ringhold
