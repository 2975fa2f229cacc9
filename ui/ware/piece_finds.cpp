#include "ui/ware/piece_finds.h"

#include "core/book/transaction.h"
#include "core/book/ware_finds.h"
#include "ui/session/notebook.h"

#include <QPointer>
#include <QUndoCommand>
#include <QUndoStack>

#include <algorithm>

namespace ringhold {

/// What was known of a piece and what is to be. Dropped when the book refuses it.
class FindsEdit : public QUndoCommand {
  public:
    FindsEdit(PieceFinds& finds, PieceId piece, PieceFinds::Found before, PieceFinds::Found after,
              const QString& what)
        : QUndoCommand(what), m_finds(&finds), m_piece(piece), m_before(std::move(before)),
          m_after(std::move(after)) {}
    void redo() override { go(m_after); }
    void undo() override { go(m_before); }

  private:
    void go(const PieceFinds::Found& to) { setObsolete(!m_finds || !m_finds->apply(m_piece, to)); }

    QPointer<PieceFinds> m_finds;
    PieceId m_piece;
    PieceFinds::Found m_before;
    PieceFinds::Found m_after;
};

void PieceFinds::show(std::optional<PieceId> piece, const QString& name) {
    m_name = name;
    if (piece == m_piece)
        return;
    m_piece = piece;
    reload();
}

void PieceFinds::reload() {
    Found found;
    if (m_piece) {
        auto read = this->read(*m_piece);
        if (!read) {
            refuse(read.error());
            return;
        }
        found = std::move(*read);
    }
    m_found = std::move(found);
    Q_EMIT changed();
}

std::optional<SagSight> PieceFinds::answer(Instant sag) const {
    const auto found = std::ranges::find(m_found.sags, sag, &SagSeen::at);
    return found == m_found.sags.end() ? std::nullopt : std::optional(found->seen);
}

bool PieceFinds::setRings(std::vector<RingRadius> rings) {
    Found to = m_found;
    to.rings = std::move(rings);
    for (auto& ring : to.rings)
        ring.piece = m_piece.value_or(PieceId{});
    return change(std::move(to), tr("rings of %1").arg(m_name));
}

bool PieceFinds::setRing(int ring, double radius_mm, double sd_mm) {
    auto rings = m_found.rings;
    std::erase_if(rings, [&](const RingRadius& r) { return r.ring == ring; });
    rings.push_back({{}, ring, radius_mm, sd_mm});
    std::ranges::sort(rings, {}, &RingRadius::ring);
    return setRings(std::move(rings));
}

bool PieceFinds::answerSag(Instant sag, std::optional<SagSight> seen, std::optional<double> radius_mm) {
    Found to = m_found;
    std::erase_if(to.sags, [&](const SagSeen& answer) { return answer.at == sag; });
    if (seen)
        to.sags.push_back({m_piece.value_or(PieceId{}), sag, *seen, radius_mm});
    std::ranges::sort(to.sags, {}, &SagSeen::at);
    return change(std::move(to), tr("answer on %1").arg(m_name));
}

bool PieceFinds::change(Found to, const QString& what) {
    if (!m_piece)
        return false;
    if (to == m_found)
        return true;
    m_refused = false;
    m_undo.push(new FindsEdit(*this, *m_piece, m_found, std::move(to), what));
    return !m_refused;
}

Result<PieceFinds::Found> PieceFinds::read(PieceId piece) const {
    const WareFinds finds(m_notebook.book());
    auto rings = finds.rings(piece);
    auto sags = finds.sags(piece);
    if (!rings || !sags)
        return rings ? sags.error() : rings.error();
    return Found{std::move(*rings), std::move(*sags)};
}

/// All of it or nothing.
Status PieceFinds::write(PieceId piece, const Found& from, const Found& to) const {
    auto transaction = WriteTransaction::begin(m_notebook.book());
    if (!transaction)
        return transaction.error();
    WareFinds finds(m_notebook.book());
    Status done;
    const auto go = [&done](Status next) {
        if (done)
            done = std::move(next);
    };
    for (const auto& ring : from.rings)
        go(finds.removeRing(piece, ring.ring));
    for (const auto& sag : from.sags)
        go(finds.removeSag(piece, sag.at));
    for (const auto& ring : to.rings)
        go(finds.set(ring));
    for (const auto& sag : to.sags)
        go(finds.set(sag));
    return done ? transaction->commit() : done;
}

bool PieceFinds::apply(PieceId piece, const Found& to) {
    const auto now = read(piece);
    if (!now)
        return refuse(now.error());
    if (const auto done = write(piece, *now, to); !done)
        return refuse(done.error());
    if (piece == m_piece) {
        m_found = to;
        Q_EMIT changed();
    }
    Q_EMIT written();
    return true;
}

bool PieceFinds::refuse(const Error& error) {
    m_refused = true;
    Q_EMIT troubled(QString::fromStdString(error.text()));
    return false;
}

} // namespace ringhold
