// The last stage of an alarm that nobody answers: over the whole window.
#pragma once

#include "ui/alarm/live_alarms.h"

#include <QFrame>
#include <QPointer>

class QLabel;
class QPushButton;

namespace ringhold {

class Preferences;
class Theme;

/// Covers its parent while an alarm is at the stage of the full window. It can be put aside for two minutes,
/// which answers nothing. Keys that were being typed do not answer it: only F8, Escape and its buttons do
/// anything, and no button has the keyboard at first. Its arguments outlive it.
class AlarmCurtain : public QFrame {
    Q_OBJECT

  public:
    AlarmCurtain(LiveAlarms& alarms, const Preferences& preferences, const Theme& theme, QWidget& window);

    void putAside();

  Q_SIGNALS:
    void spyholeWanted(FiringSession* session);

  protected:
    void keyPressEvent(QKeyEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    void refresh();
    void draw();
    void drop();
    void dress();
    /// Nothing when none is at that stage, or all that are were put aside.
    const LiveAlarm* shown() const;

    LiveAlarms& m_alarms;
    const Preferences& m_preferences;
    const Theme& m_theme;
    QLabel* m_level;
    QLabel* m_title;
    QLabel* m_since;
    QLabel* m_evidence;
    QPushButton* m_look;
    QPushButton* m_acknowledge;
    QPushButton* m_aside;
    std::vector<LiveAlarm> m_putAside;
    QTimer m_back;
    QPointer<QWidget> m_before; ///< had the keyboard
};

} // namespace ringhold
