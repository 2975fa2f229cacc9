// All alarms of all live firings: those on the boards, and those that are over and answered, from the book.
#pragma once

#include "ui/alarm/live_alarms.h"

#include <QAbstractTableModel>

#include <vector>

namespace ringhold {

class Notebook;
class Preferences;

struct AlarmRow {
    FiringId firing{};
    AlarmCause cause = AlarmCause::bandLeft;
    AlarmLevel level = AlarmLevel::notice;
    Instant first;
    bool onBoard = false; ///< goes on, or nobody has answered it
    bool mayAcknowledge = false;
    QString kiln, title, since, evidence, answer;

    bool isSame(const AlarmRow& other) const {
        return firing == other.firing && cause == other.cause && first == other.first;
    }
};

/// Those on the boards in the order of LiveAlarms, then the others, the newest first. Alarms and notebook
/// outlive it.
class AlarmListModel : public QAbstractTableModel {
    Q_OBJECT

  public:
    enum Column { Level, Title, Kiln, Since, Answer, Evidence, Columns };

    AlarmListModel(const LiveAlarms& alarms, Notebook& notebook, QObject* parent = nullptr);

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

    const AlarmRow& row(int row) const { return m_rows[static_cast<std::size_t>(row)]; }
    /// Reads what the book has of alarms that are over.
    void readBook();

  private:
    void refresh();
    std::vector<AlarmRow> reckon() const;
    QString text(const AlarmRow& row, int column) const;

    const LiveAlarms& m_alarms;
    Notebook& m_notebook;
    std::vector<AlarmRow> m_past;
    std::vector<AlarmRow> m_rows;
};

} // namespace ringhold
