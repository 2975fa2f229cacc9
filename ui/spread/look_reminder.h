// Reminds gently of the next look: there only when it is due.
#pragma once

#include "core/watch/next_look.h"
#include "ui/spread/reminder_bar.h"

#include <optional>

namespace ringhold {

/// The next look at the first pack, that which tells most of the firing cone; some milliseconds. Never sooner
/// after the last than the preference's interval.
std::optional<NextLook> nextLookOf(const FiringSession& session, const Preferences& preferences);
/// "Next look: cone 8 at about 20:41."
QString nextLookWords(const NextLook& look, const Preferences& preferences);

/// Session and preferences outlive it.
class LookReminder : public ReminderBar {
    Q_OBJECT

  public:
    LookReminder(const FiringSession& session, const Preferences& preferences, QWidget* parent = nullptr);
};

} // namespace ringhold
