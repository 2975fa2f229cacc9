// The list that is gone through before a kiln is lit, to be shown on any page.
#pragma once

#include "core/firing/records.h"

#include <QWidget>

class QLabel;
class QListView;
class QPushButton;
class QUndoStack;

namespace ringhold {

class ChecklistModel;
class FreshWhenSeen;
class Notebook;
class Remark;

/// Space ticks, F2 or typing writes, Delete takes an own line out. Notebook and stack outlive it.
class Checklist : public QWidget {
    Q_OBJECT

  public:
    /// What is changed can be undone on the stack.
    Checklist(Notebook& notebook, QUndoStack& undo, QWidget* parent = nullptr);

    /// For a kiln that is about to be lit; ticks made for another firing are gone.
    void showFor(FiringId firing, bool flame);
    ChecklistModel& model() { return *m_model; }

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    void tell();
    void takeOut();

    Notebook& m_notebook;
    ChecklistModel* m_model;
    QListView* m_list;
    QLabel* m_words;
    QPushButton* m_takeOut;
    Remark* m_trouble;
    FreshWhenSeen* m_fresh;
};

} // namespace ringhold
