// The pieces of one firing and what became of them, as a table.
#pragma once

#include "core/book/ware_finds.h"
#include "ui/ware/ware_cells.h"

#include <QAbstractTableModel>
#include <QUndoStack>

#include <map>
#include <optional>
#include <vector>

namespace ringhold {

class Notebook;

/// A row a piece. Whoever may write has one more, empty: a name there adds a piece. What is set is in the
/// book when setData() returns true; else nothing changed and troubled() said why. Every change can be undone
/// until another firing is shown.
class WareModel : public QAbstractTableModel {
    Q_OBJECT

  public:
    enum class Access { read, write };
    /// The notebook outlives the model.
    WareModel(Notebook& notebook, Access access, QObject* parent = nullptr);

    /// A firing's ware; nothing is told to the views when it is shown so already. `flame`: the kiln is fired
    /// by gas or wood.
    void show(std::optional<FiringId> firing, std::vector<Piece> pieces, const std::vector<Outcome>& outcomes,
              bool flame);
    /// How many each piece has; those not named have none.
    void showPhotoCounts(std::map<PieceId, int> counts);

    int pieceCount() const { return static_cast<int>(m_rows.size()); }
    /// With anything at all known of what came out.
    int judgedCount() const;
    /// Pieces that stand in the flame without a sagger, unless all their glazes are known to have no zinc.
    int openToFlame() const;
    bool isNewRow(int row) const { return row >= pieceCount(); }
    const WareRow& row(int row) const { return m_rows[static_cast<std::size_t>(row)]; }
    const Piece& piece(int at) const { return row(at).piece; }
    const Outcome& outcome(int at) const { return row(at).outcome; }
    int photoCount(int at) const;
    std::optional<int> rowOf(PieceId piece) const;
    /// What this column says already, without the empty, each once: to complete what is being typed.
    QStringList said(WareColumn column) const;
    /// Of the cards in the book: to complete a glaze.
    void showGlazeNames(QStringList names) { m_glazeNames = std::move(names); }
    /// Of glazes that the flame takes no zinc from.
    void showZincFree(QStringList names) { m_zincFree = std::move(names); }
    const QStringList& glazeNames() const { return m_glazeNames; }

    QUndoStack& undoStack() { return m_undo; }
    /// "#rrggbb", or empty for none, in one of the two columns of colours.
    bool pick(const QModelIndex& cell, const QString& colour);
    bool place(PieceId piece, const std::string& shelf, std::optional<MapSpot> spot);
    bool addPieces(std::vector<Piece> pieces);
    /// A piece that was never in the kiln; all that hangs on it comes back when that is undone.
    bool takeOut(int row);
    /// Any change of one piece, as one step to be undone.
    bool alter(const WareRow& changed, const QString& what);

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;
    bool setData(const QModelIndex& index, const QVariant& value, int role = Qt::EditRole) override;

  Q_SIGNALS:
    void written(); ///< something new is in the book
    void troubled(const QString& why);

  private:
    friend class WareEdit;
    friend class WareCount;
    QString text(const WareRow& row, WareColumn column) const;
    QVariant tick(const WareRow& row, WareColumn column) const;
    bool shows(const std::vector<WareRow>& rows) const;
    bool isOpenToFlame(const WareRow& row) const;
    bool refuse(const QString& why);
    bool push(QUndoCommand* command);
    // What commands do.
    bool write(const WareRow& row);
    /// New pieces are given their ids; those that were there before get all back that hung on them.
    bool insert(std::vector<WholePiece>& pieces);
    bool erase(std::vector<WholePiece>& pieces);

    Notebook& m_notebook;
    Access m_access;
    std::optional<FiringId> m_firing;
    bool m_flame = false;
    std::vector<WareRow> m_rows;
    std::map<PieceId, int> m_photos;
    QStringList m_glazeNames;
    QStringList m_zincFree;
    QUndoStack m_undo;
};

} // namespace ringhold
