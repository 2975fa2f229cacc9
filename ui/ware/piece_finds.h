// The rings measured on one piece and the sags looked for, as the book has them.
#pragma once

#include "core/base/result.h" // first: see DEVELOPERS.md on moc and <compare>
#include "core/firing/ware_records.h"

#include <QObject>

#include <optional>
#include <vector>

class QUndoStack;

namespace ringhold {

class Notebook;

/// What is set is in the book when it returns true, and can be undone; else nothing changed and troubled()
/// said why. Notebook and stack outlive it.
class PieceFinds : public QObject {
    Q_OBJECT

  public:
    PieceFinds(Notebook& notebook, QUndoStack& undo, QObject* parent = nullptr)
        : QObject(parent), m_notebook(notebook), m_undo(undo) {}

    /// Nothing shows none. `name` is for the words of undo.
    void show(std::optional<PieceId> piece, const QString& name);
    void reload();
    std::optional<PieceId> piece() const { return m_piece; }
    const QString& name() const { return m_name; }
    const std::vector<RingRadius>& rings() const { return m_found.rings; } ///< from the innermost
    std::optional<SagSight> answer(Instant sag) const;

    /// These instead of all that were there; their piece is not looked at.
    bool setRings(std::vector<RingRadius> rings);
    bool setRing(int ring, double radius_mm, double sd_mm);
    /// No sight takes the answer back.
    bool answerSag(Instant sag, std::optional<SagSight> seen, std::optional<double> radius_mm);

  Q_SIGNALS:
    void changed(); ///< another piece, or something else is known of it
    void written();
    void troubled(const QString& why);

  private:
    friend class FindsEdit;
    struct Found {
        std::vector<RingRadius> rings;
        std::vector<SagSeen> sags;
        bool operator==(const Found&) const = default;
    };
    bool change(Found to, const QString& what);
    bool apply(PieceId piece, const Found& to);
    Result<Found> read(PieceId piece) const;
    Status write(PieceId piece, const Found& from, const Found& to) const;
    bool refuse(const Error& error);

    Notebook& m_notebook;
    QUndoStack& m_undo;
    std::optional<PieceId> m_piece;
    QString m_name;
    Found m_found;
    bool m_refused = false;
};

} // namespace ringhold
