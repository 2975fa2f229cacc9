// Where a log kept on paper is typed in.
#pragma once

#include "core/base/result.h" // first: moc stumbles when <compare> comes before all else
#include "core/firing/paper_log.h"
#include "core/firing/records.h"

#include <QDialog>

class QPushButton;

namespace ringhold {

class EntryTable;
class Notebook;
class PaperLogModel;
class Remark;

/// Stops nobody. Rows with a fault stay when the others are written; closed with rows not yet written it asks
/// on its own page, not in a box.
class PaperLogWindow : public QDialog {
    Q_OBJECT

  public:
    /// The notebook outlives it.
    PaperLogWindow(Notebook& notebook, FiringId firing, PaperContext context, QWidget* parent = nullptr);

    /// Shows one for that firing; null, with why, when the book cannot tell of it.
    static Result<PaperLogWindow*> open(Notebook& notebook, FiringId firing, QWidget* parent);

    void reject() override;

  private:
    void write();
    void tell();

    Notebook& m_notebook;
    FiringId m_firing;
    PaperLogModel* m_model;
    EntryTable* m_table;
    Remark* m_said;
    Remark* m_trouble;
    QPushButton* m_write;
    bool m_warned = false; ///< that rows would be lost
};

} // namespace ringhold
