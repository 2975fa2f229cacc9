// The log of a past firing: to be read, struck and added to.
#pragma once

#include "core/firing/line_key.h"
#include "ui/past/opened_firing.h"
#include "ui/spread/line_undo.h"

#include <QWidget>

class QLineEdit;
class QPushButton;

namespace ringhold {

class LogModel;
class LogView;
class Notebook;
class Remark;
class Theme;

/// Delete strikes a line or takes that back, as on the spread; Ctrl+Z undoes what was done last. Looks that
/// are struck or restored file the kiln's offset anew. A firing that is still live is only read here.
/// Notebook and theme outlive it.
class PastLog : public QWidget {
    Q_OBJECT

  public:
    PastLog(Notebook& notebook, const Theme& theme, QWidget* parent = nullptr);

    void show(std::shared_ptr<const OpenedFiring> firing);

  Q_SIGNALS:
    void written();
    void paperWanted();

  private:
    QWidget* makeFoot();
    void strikeRow(int row);
    void markAndTell(const std::vector<LineKey>& keys, bool struck);
    Status mark(const std::vector<LineKey>& keys, bool struck);
    void addNote();
    void tell(const Status& done);
    bool eventFilter(QObject* watched, QEvent* event) override;
    bool undoByKey(const QKeyEvent& key);

    Notebook& m_notebook;
    LogModel* m_model;
    LogView* m_log;
    QLineEdit* m_note;
    Remark* m_trouble;
    LineUndo m_undo;
    std::shared_ptr<const OpenedFiring> m_firing;
};

} // namespace ringhold
