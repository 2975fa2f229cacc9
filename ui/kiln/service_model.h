// What was done to one kiln, as a table that can be changed and changed back.
#pragma once

#include "core/base/result.h" // first: see DEVELOPERS.md on moc and <compare>
#include "core/firing/kiln_records.h"

#include <QAbstractTableModel>
#include <QUndoStack>

#include <optional>
#include <vector>

namespace ringhold {

class Notebook;

enum class ServiceColumn { day, kind, probe, words };
inline constexpr int serviceColumns = 4;

/// A row an entry, the latest first, and one more, empty: words or a kind there add an entry of today. What
/// is set is in the book when setData() returns true; else nothing changed and troubled() said why. The
/// notebook outlives it.
class ServiceModel : public QAbstractTableModel {
    Q_OBJECT

  public:
    explicit ServiceModel(Notebook& notebook, QObject* parent = nullptr)
        : QAbstractTableModel(parent), m_notebook(notebook) {}

    /// What was done to another kiln can be undone no more.
    void show(std::optional<KilnId> kiln, std::vector<Probe> probes);
    const ServiceEntry& entry(int row) const { return m_entries[static_cast<std::size_t>(row)]; }
    bool isNewRow(int row) const { return row >= static_cast<int>(m_entries.size()); }
    bool takeOut(int row);
    QUndoStack& undoStack() { return m_undo; }
    /// When the elements were last new, as far as it is written down.
    std::optional<Instant> elementsFitted() const;

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;
    bool setData(const QModelIndex& index, const QVariant& value, int role = Qt::EditRole) override;

  Q_SIGNALS:
    void written();
    void troubled(const QString& why);

  private:
    friend class ServiceChange;
    QString text(const ServiceEntry& entry, ServiceColumn column, bool typed) const;
    /// What is wrong with the value; empty when it is in the entry now.
    QString put(const QString& text, ServiceColumn column, ServiceEntry& entry) const;
    bool push(std::optional<ServiceEntry> before, std::optional<ServiceEntry> after, const QString& what);
    /// Brings the book from one to the other; nothing stands for no entry. A new one is given its id.
    bool apply(const std::optional<ServiceEntry>& from, std::optional<ServiceEntry>& to);
    void reload();
    bool refuse(const QString& why);

    Notebook& m_notebook;
    std::optional<KilnId> m_kiln;
    std::vector<Probe> m_probes;
    std::vector<ServiceEntry> m_entries;
    QUndoStack m_undo;
    bool m_refused = false;
};

/// "elements", "probe", "relay", "other".
QString serviceWords(ServiceKind kind);

} // namespace ringhold
