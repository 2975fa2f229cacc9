// What is gone through before the kiln is lit: the usual lines, the potter's own, and the caution.
#pragma once

#include <QWidget>

#include <vector>

class QCheckBox;
class QVBoxLayout;

namespace ringhold {

class FreshWhenSeen;
class Notebook;

/// The potter's own lines are those of the book's checklist, which is edited on the ware page. The notebook
/// outlives it.
class BeforeLighting : public QWidget {
    Q_OBJECT

  public:
    explicit BeforeLighting(Notebook& notebook, QWidget* parent = nullptr);

    /// For another firing.
    void untick();

  private:
    void showOwn();

    Notebook& m_notebook;
    std::vector<QCheckBox*> m_usual;
    std::vector<QCheckBox*> m_own;
    QVBoxLayout* m_ownColumn;
    FreshWhenSeen* m_fresh;
};

} // namespace ringhold
