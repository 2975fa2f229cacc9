// The practice potter beside a live practice firing: looks at the cones, writes what is seen and answers
// alarms, as a person who stays at the kiln would.
#pragma once

#include "core/instrument/practice_instrument.h"
#include "core/kiln/practice_potter.h"
#include "ui/session/firing_session.h"

#include <QObject>

namespace ringhold {

/// Lives in the window's thread. The session owns the instrument and outlives this.
class PracticeHand : public QObject {
    Q_OBJECT

  public:
    PracticeHand(FiringSession& session, PracticeInstrument& instrument, PotterHabits habits,
                 std::uint64_t seed, QObject* parent = nullptr);

  private:
    void goToTheKiln();
    void answerAlarms(Instant now);

    FiringSession& m_session;
    PracticeInstrument& m_instrument;
    PracticePotter m_potter;
};

} // namespace ringhold
