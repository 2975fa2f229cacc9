// A paper log as it is being typed in: rows of time, reading, and whatever else was written, with what they
// will become.
#pragma once

#include "core/base/result.h" // first: moc stumbles when <compare> comes before all else
#include "core/firing/paper_log.h"

#include <QAbstractTableModel>

#include <vector>

namespace ringhold {

class Preferences;

enum class PaperColumn { time, reading, line, meaning };

/// The last row is the empty one that invites to go on. Nothing is in the book until it is written.
class PaperLogModel : public QAbstractTableModel {
    Q_OBJECT

  public:
    /// The preferences outlive it.
    PaperLogModel(PaperContext context, const Preferences& preferences, QObject* parent = nullptr);

    /// Of the rows without a fault, from the top.
    std::vector<WrittenLine> lines() const;
    int faults() const;
    bool isEmpty() const { return m_rows.empty(); }
    void clear();
    /// Takes out the rows whose lines are all among the first so many of lines(): they are written.
    void drop(std::size_t written);

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role = Qt::DisplayRole) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;
    bool setData(const QModelIndex& index, const QVariant& value, int role = Qt::EditRole) override;

  Q_SIGNALS:
    void changed();

  private:
    void readAll();
    bool invites(int row) const { return row == static_cast<int>(m_rows.size()); }
    QString meaning(const PaperRowRead& read) const;

    PaperContext m_context;
    const Preferences& m_preferences;
    std::vector<PaperRow> m_rows;
    std::vector<PaperRowRead> m_read;
};

} // namespace ringhold
