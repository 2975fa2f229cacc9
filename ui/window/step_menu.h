// The potter's word on the step: the plan's steps as a menu.
#pragma once

#include <QObject>

class QMenu;

namespace ringhold {

class FiringPages;
class Preferences;

/// Fills the menu with the steps of the firing that is shown whenever it opens; choosing one corrects the
/// follower, as a line of the log. Its arguments outlive it.
class StepMenu : public QObject {
    Q_OBJECT

  public:
    StepMenu(FiringPages& pages, const Preferences& preferences, QMenu& menu, QObject* parent);

  Q_SIGNALS:
    void troubled(const QString& what);

  private:
    void fill();
    void correct(std::size_t step);

    FiringPages& m_pages;
    const Preferences& m_preferences;
    QMenu& m_menu;
};

} // namespace ringhold
