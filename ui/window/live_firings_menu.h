// The menu by which the potter goes from one live firing to another.
#pragma once

#include <QObject>

class QAction;
class QMenu;

namespace ringhold {

class FiringPages;
class Notebook;

/// Ctrl+Tab and Ctrl+Shift+Tab go round, Ctrl+1 to Ctrl+9 go straight there. Notebook, pages and menu outlive
/// it.
class LiveFiringsMenu : public QObject {
    Q_OBJECT

  public:
    LiveFiringsMenu(Notebook& notebook, FiringPages& pages, QMenu& menu, QObject* parent);

  private:
    void refresh();

    Notebook& m_notebook;
    FiringPages& m_pages;
    QList<QAction*> m_firings; ///< by place
};

} // namespace ringhold
