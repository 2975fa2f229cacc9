// The report of a firing of the book, read and reckoned beside the window's work.
#pragma once

#include "core/base/result.h" // first: moc stumbles when <compare> comes before all else
#include "core/firing/records.h"
#include "ui/common/latest_work.h"

#include <QWidget>

#include <optional>

namespace ringhold {

class Notebook;
class Remark;
class ReportPane;

/// The notebook outlives it.
class ReportView : public QWidget {
    Q_OBJECT

  public:
    explicit ReportView(Notebook& notebook, QWidget* parent = nullptr);

    /// Reads that firing anew, or shows none. What stood there stays until the new report is made.
    void show(std::optional<FiringId> firing);
    std::optional<FiringId> firing() const { return m_firing; }
    bool busy() const { return m_work.busy(); }
    ReportPane& pane() { return *m_pane; }

  private:
    void read();

    Notebook& m_notebook;
    std::optional<FiringId> m_firing;
    Remark* m_state;
    Remark* m_trouble;
    ReportPane* m_pane;
    LatestWork m_work;
};

} // namespace ringhold
