#include "ui/spread/ring_words.h"

#include "ui/session/firing_session.h"
#include "ui/session/preferences.h"

#include <QCoreApplication>

#include <cmath>
#include <cstdlib>

namespace ringhold {

namespace {

struct RingPhrase {
    Q_DECLARE_TR_FUNCTIONS(Ring)
};

bool lastDwell(const RingClock& clock) {
    return clock.ring >= clock.count && !clock.atLow;
}

/// Where the kiln goes when this dwell is over.
QString moveWords(const RingClock& clock) {
    return lastDwell(clock) ? RingPhrase::tr("the rings are done")
           : clock.atLow    ? RingPhrase::tr("up")
                            : RingPhrase::tr("down");
}

} // namespace

std::optional<RingClock> ringClockOf(const FiringSession& session) {
    return session.watch().ringClock(session.now());
}

QString countdown(Duration left) {
    const auto seconds = std::llabs(std::llround(inSeconds(left)));
    const QString tail = QStringLiteral("%1").arg(seconds % 60, 2, 10, QLatin1Char('0'));
    const auto minutes = seconds / 60;
    return minutes < 60 ? QStringLiteral("%1:%2").arg(minutes).arg(tail)
                        : QStringLiteral("%1:%2:%3")
                              .arg(minutes / 60)
                              .arg(minutes % 60, 2, 10, QLatin1Char('0'))
                              .arg(tail);
}

QString ringTitle(const RingClock& clock) {
    const QString ring = RingPhrase::tr("ring %1 of %2").arg(clock.ring).arg(clock.count);
    return ring + (clock.atLow ? RingPhrase::tr(", low") : RingPhrase::tr(", high"));
}

QString ringLeftWords(const RingClock& clock) {
    if (!clock.dwelling())
        return clock.motion == Motion::up ? RingPhrase::tr("on the way up")
                                          : RingPhrase::tr("on the way down");
    if (clock.left < Duration(0))
        return RingPhrase::tr("over by %1").arg(countdown(clock.left));
    return clock.cue ? RingPhrase::tr("%1, then %2").arg(countdown(clock.left), moveWords(clock))
                     : RingPhrase::tr("%1 left").arg(countdown(clock.left));
}

QString ringNextWords(const RingClock& clock, const Preferences& preferences) {
    if (!clock.dwelling())
        return RingPhrase::tr("There about %1.").arg(preferences.clockTime(clock.ends));
    if (clock.left < Duration(0))
        return RingPhrase::tr("Its time was over at %1: %2.")
            .arg(preferences.clockTime(clock.ends), moveWords(clock));
    return RingPhrase::tr("Then %1, about %2.").arg(moveWords(clock), preferences.clockTime(clock.ends));
}

} // namespace ringhold
