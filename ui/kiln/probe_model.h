// The probes of one kiln as a table.
#pragma once

#include "core/firing/records.h"

#include <QAbstractTableModel>

#include <optional>
#include <set>
#include <vector>

namespace ringhold {

class Notebook;

enum class ProbeColumn { label, type, position, fitted, retired };
inline constexpr int probeColumns = 5;

/// A row a probe and one more, empty: a label there adds a probe, fitted today. What is set is in the book
/// when setData() returns true; else nothing changed and troubled() said why.
class ProbeModel : public QAbstractTableModel {
    Q_OBJECT

  public:
    /// The notebook outlives the model.
    explicit ProbeModel(Notebook& notebook, QObject* parent = nullptr);

    /// `told`: probes whose offset firings have told. Their type and position stay: a probe that was moved or
    /// exchanged is another one. Nothing is told to the views when all is shown so already.
    void show(std::optional<KilnId> kiln, std::vector<Probe> probes, std::set<ProbeId> told);

    bool isNewRow(int row) const { return row >= static_cast<int>(m_probes.size()); }
    const Probe& probe(int row) const { return m_probes[static_cast<std::size_t>(row)]; }
    /// Retires this one now and adds another like it, fitted now: its offset starts afresh.
    bool replace(int row);

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
    QString text(const Probe& probe, ProbeColumn column, bool typed) const;
    /// What is wrong with the value; empty when it is in the probe now.
    QString put(const QString& text, ProbeColumn column, Probe& probe) const;
    bool refuse(const QString& why);
    bool add(Probe probe);
    bool alter(int row, const Probe& probe);

    Notebook& m_notebook;
    std::optional<KilnId> m_kiln;
    std::vector<Probe> m_probes;
    std::set<ProbeId> m_told;
};

} // namespace ringhold
