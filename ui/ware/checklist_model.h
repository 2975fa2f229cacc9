// What is gone through before a kiln is lit: the standing cautions, and the potter's own lines.
#pragma once

#include "core/base/result.h"
#include "core/firing/kiln_records.h"

#include <QAbstractListModel>

#include <optional>
#include <set>
#include <vector>

class QUndoStack;

namespace ringhold {

class Notebook;

/// The cautions come first and stay; own lines are kept in the book and can be changed, and changed back. The
/// last row, empty, adds one. Ticks are for this firing only and are not kept; that the list was gone through
/// is: the last tick writes it in the firing's log, once. Notebook and stack outlive it.
class ChecklistModel : public QAbstractListModel {
    Q_OBJECT

  public:
    ChecklistModel(Notebook& notebook, QUndoStack& undo, QObject* parent = nullptr);

    void reload();
    /// A gas or wood kiln has more cautions; another firing has no ticks yet.
    void showFor(FiringId firing, bool flame);
    bool isCaution(int row) const { return row < static_cast<int>(m_cautions.size()); }
    bool isNewRow(int row) const { return row >= rowCount() - 1; }
    int lineCount() const { return rowCount() - 1; }
    int tickedCount() const;
    /// When the last line was ticked for this firing, as its log says.
    std::optional<Instant> goneThrough() const { return m_goneThrough; }
    bool remove(int row);

    int rowCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;
    bool setData(const QModelIndex& index, const QVariant& value, int role = Qt::EditRole) override;

  Q_SIGNALS:
    void tickedChanged();
    void written();
    void troubled(const QString& why);

  private:
    friend class ChecklistChange;
    QString text(int row) const;
    bool change(std::vector<ChecklistItem> items, const QString& what);
    bool write(const std::vector<ChecklistItem>& items);
    bool refuse(const Error& why);
    void readGoneThrough();
    void tellLog();

    Notebook& m_notebook;
    QStringList m_cautions;
    std::vector<ChecklistItem> m_own;
    std::set<QString> m_ticked;
    FiringId m_firing{};
    std::optional<Instant> m_goneThrough;
    bool m_refused = false;
    QUndoStack& m_undo;
};

} // namespace ringhold
