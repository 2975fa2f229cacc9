// Says that it is quiet by the potter's own choice, as long as it is.
#pragma once

#include <QFrame>

class QLabel;

namespace ringhold {

class LiveAlarms;
class Preferences;

/// Its arguments outlive it.
class QuietBar : public QFrame {
    Q_OBJECT

  public:
    QuietBar(LiveAlarms& alarms, const Preferences& preferences, QWidget* parent = nullptr);

  private:
    void refresh();

    LiveAlarms& m_alarms;
    const Preferences& m_preferences;
    QLabel* m_words;
};

} // namespace ringhold
