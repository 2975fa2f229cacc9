// What the card beside the cones says: heat work, or the hold.
#pragma once

#include <QString>
#include <QStringList>

namespace ringhold {

class FiringSession;
class Preferences;

struct CardWords {
    QString title; ///< "Heat work", "Hold 1 076 °C"
    QString main;  ///< "9 nearly down, 10 just leaning"
    QStringList lines;
    QStringList warnings; ///< looks that do not fit
};

/// Hold words while the kiln is held, heat-work words else and while nobody told a hold and the firing cone
/// is still to go down.
CardWords cardWords(const FiringSession& session, const Preferences& preferences);

} // namespace ringhold
