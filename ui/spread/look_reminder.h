// Reminds gently of the next look: there only when it is due.
#pragma once

#include "core/watch/next_look.h"

#include <QFrame>
#include <QTimer>

#include <optional>

class QLabel;

namespace ringhold {

class FiringSession;
class Preferences;

/// The next look at the first pack, never sooner after the last than the preference's interval.
std::optional<NextLook> nextLookOf(const FiringSession& session, const Preferences& preferences);
/// "Next look: cone 8 at about 20:41."
QString nextLookWords(const NextLook& look, const Preferences& preferences);

/// Put away, it comes again after the preference's interval if nobody has looked. Session and preferences
/// outlive it.
class LookReminder : public QFrame {
    Q_OBJECT

  public:
    LookReminder(const FiringSession& session, const Preferences& preferences, QWidget* parent = nullptr);

    /// Asks the clock; done each second and with each forecast.
    void refresh();

  Q_SIGNALS:
    void spyholeWanted();

  private:
    const FiringSession& m_session;
    const Preferences& m_preferences;
    QLabel* m_words;
    std::optional<Instant> m_quietUntil;
    QTimer m_tick;
};

} // namespace ringhold
