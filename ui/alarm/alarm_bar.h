// The alarms across every page: there while there are any.
#pragma once

#include <QFrame>

class QLabel;
class QPushButton;

namespace ringhold {

class FiringSession;
class LiveAlarms;
class Preferences;
class Theme;

/// Tells the loudest in full, the others by name. Those that are acknowledged and go on stay as one calm
/// line. Its arguments outlive it.
class AlarmBar : public QFrame {
    Q_OBJECT

  public:
    AlarmBar(LiveAlarms& alarms, const Preferences& preferences, const Theme& theme,
             QWidget* parent = nullptr);

    /// Answers the one that is told in full.
    void acknowledge();
    QString words() const;

  Q_SIGNALS:
    void listWanted();
    void spyholeWanted(FiringSession* session);

  private:
    void refresh();
    void tellLoudest();
    void tellCalm();
    QString othersWords(std::size_t from) const;
    void dress();

    LiveAlarms& m_alarms;
    const Preferences& m_preferences;
    const Theme& m_theme;
    QLabel* m_level;
    QLabel* m_title;
    QLabel* m_evidence;
    QLabel* m_others;
    QPushButton* m_look;
    QPushButton* m_acknowledge;
    QPushButton* m_list;
    QString m_toldAloud; ///< to a screen reader, last
};

} // namespace ringhold
