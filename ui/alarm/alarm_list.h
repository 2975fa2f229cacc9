// The window with all alarms of all live firings.
#pragma once

#include <QDialog>

class QLabel;
class QPushButton;

namespace ringhold {

class AlarmListModel;
class FittedTable;
class LiveAlarms;
class Notebook;
class Theme;

/// Beside the notebook's window, never in its way. Its arguments outlive it.
class AlarmList : public QDialog {
    Q_OBJECT

  public:
    AlarmList(LiveAlarms& alarms, Notebook& notebook, const Theme& theme, QWidget* parent = nullptr);

    AlarmListModel& model() { return *m_model; }
    /// Shows it with what the book has now.
    void open() override;

  private:
    void acknowledgeChosen();
    void refresh();

    LiveAlarms& m_alarms;
    Notebook& m_notebook;
    AlarmListModel* m_model;
    FittedTable* m_table;
    QLabel* m_none;
    QPushButton* m_acknowledge;
    QPushButton* m_all;
};

} // namespace ringhold
