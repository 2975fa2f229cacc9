// A line above the writing line that reminds gently of something: there only when it is due.
#pragma once

#include "core/units/time.h"

#include <QFrame>
#include <QTimer>

#include <functional>
#include <optional>

class QLabel;

namespace ringhold {

class FiringSession;
class Preferences;

/// Put away, it comes again after the preference's interval if nothing was done. Session and preferences
/// outlive it.
class ReminderBar : public QFrame {
    Q_OBJECT

  public:
    /// What to remind of at that instant; empty: of nothing.
    using Ask = std::function<QString(Instant now)>;

    /// `act` is the word on the button that does what it reminds of.
    ReminderBar(const FiringSession& session, const Preferences& preferences, Ask ask, const QString& act,
                const QString& hint, QWidget* parent = nullptr);

    /// Asks the clock; done each second and whenever a reading or line comes.
    void refresh();

  Q_SIGNALS:
    void actWanted();

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    const FiringSession& m_session;
    const Preferences& m_preferences;
    Ask m_ask;
    QLabel* m_words;
    std::optional<Instant> m_quietUntil;
    QTimer m_tick;
};

} // namespace ringhold
