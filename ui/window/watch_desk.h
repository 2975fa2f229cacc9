// All that the window has of alarms: bars above every page, sound, curtain, list, glance view, and their
// menu.
#pragma once

#include "ui/alarm/alarm_caller.h"
#include "ui/alarm/live_alarms.h"

#include <QObject>

class QMenu;
class QMenuBar;
class QWidget;

namespace ringhold {

class AlarmBar;
class AlarmList;
class FiringSession;
class GlanceView;
class Notebook;
class Theme;

/// Notebook, theme, sounder and window outlive it.
class WatchDesk : public QObject {
    Q_OBJECT

  public:
    WatchDesk(Notebook& notebook, const Theme& theme, Sounder& sounder, QWidget& window);

    /// To be placed above every page.
    QWidget* bars() const { return m_bars; }
    QMenu* addMenu(QMenuBar& bar);
    LiveAlarms& alarms() { return m_alarms; }

  Q_SIGNALS:
    void spyholeWanted(FiringSession* session);
    void troubled(const QString& what);

  private:
    void addQuietChoices(QMenu& menu);
    void addAttendanceChoices(QMenu& menu);

    Notebook& m_notebook;
    LiveAlarms m_alarms;
    AlarmCaller m_caller;
    QWidget* m_bars;
    AlarmBar* m_bar;
    AlarmList* m_list;
    GlanceView* m_glance;
};

} // namespace ringhold
