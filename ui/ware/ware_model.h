// The pieces of one firing and what became of them, as a table.
#pragma once

#include "core/firing/records.h"

#include <QAbstractTableModel>

#include <optional>
#include <vector>

namespace ringhold {

class Notebook;

enum class WareColumn { piece, glaze, shelf, catcher, sagger, crystals, largest, rings, faults, grade, note };
inline constexpr int wareColumns = 11;
/// The columns before are how a piece is set, those from here on what came out.
inline constexpr WareColumn firstOutcomeColumn = WareColumn::crystals;

/// A row a piece. Whoever may write has one more, empty: a name there adds a piece. What is set is in the
/// book when setData() returns true; else nothing changed and troubled() said why.
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

    int pieceCount() const { return static_cast<int>(m_rows.size()); }
    /// With anything at all known of what came out.
    int judgedCount() const;
    /// Pieces that stand in the flame without a sagger.
    int openToFlame() const;
    bool isNewRow(int row) const { return row >= pieceCount(); }
    const Piece& piece(int row) const { return m_rows[static_cast<std::size_t>(row)].piece; }
    const Outcome& outcome(int row) const { return m_rows[static_cast<std::size_t>(row)].outcome; }
    /// What this column says already, without the empty, each once: to complete what is being typed.
    QStringList said(WareColumn column) const;

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
    struct Row {
        Piece piece;
        Outcome outcome;
    };
    QString text(const Row& row, WareColumn column) const;
    bool shows(const std::vector<Row>& rows) const;
    bool refuse(const QString& why);
    bool addPiece(const QString& name);
    bool keep(int row, const Row& changed, WareColumn column);

    Notebook& m_notebook;
    Access m_access;
    std::optional<FiringId> m_firing;
    bool m_flame = false;
    std::vector<Row> m_rows;
};

} // namespace ringhold
