// Reminds of the next reading where the potter writes them by hand.
#pragma once

#include "ui/spread/reminder_bar.h"

namespace ringhold {

/// Since when a reading by hand is due; nothing while an instrument gives them or the last is younger than
/// the preference's interval. The first is due at once.
std::optional<Instant> readingDueSince(const FiringSession& session, const Preferences& preferences,
                                       Instant now);

/// Session and preferences outlive it.
class ReadingReminder : public ReminderBar {
    Q_OBJECT

  public:
    ReadingReminder(const FiringSession& session, const Preferences& preferences, QWidget* parent = nullptr);
};

} // namespace ringhold
