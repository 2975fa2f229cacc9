// The left page: everything that was written of a firing, line by line in time order.
#pragma once

#include "core/book/log_records.h"
#include "core/firing/line_key.h"
#include "core/watch/setting_answer.h"

#include <QAbstractListModel>

#include <vector>

namespace ringhold {

struct FiringRecord;
struct LookDoubt;
class Preferences;

enum class LogKind { look, note, setting, reading, alarm, forecast, event };

struct PageLine {
    Instant at;
    LogKind kind = LogKind::note;
    QString words;
    bool struck = false;
    std::vector<LineKey> keys; ///< looks of one visit share a line
    QString remark{}; ///< what the program has to say about it: a look that does not fit, what a setting did
};

/// The lines of a record, and events and alarms beside it, in time order; doubtful looks and settings with a
/// remark.
std::vector<PageLine> pageLines(const FiringRecord& record, const std::vector<LogEvent>& events,
                                const std::vector<AlarmRecord>& alarms, const Preferences& preferences,
                                const std::vector<LookDoubt>& doubts = {},
                                const std::vector<SettingAnswer>& answers = {});

class LogModel : public QAbstractListModel {
    Q_OBJECT

  public:
    enum Role { TimeRole = Qt::UserRole, KindRole, StruckRole, RemarkRole };

    explicit LogModel(QObject* parent = nullptr) : QAbstractListModel(parent) {}

    /// Only what differs is told to the views.
    void setLines(std::vector<PageLine> lines, const Preferences& preferences);
    const PageLine& line(int row) const { return m_lines[static_cast<std::size_t>(row)]; }

    int rowCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;

  private:
    std::vector<PageLine> m_lines;
    std::vector<QString> m_times;
};

/// "look", "note" ...: for the margin's tip and for screen readers.
QString kindWords(LogKind kind);

} // namespace ringhold
