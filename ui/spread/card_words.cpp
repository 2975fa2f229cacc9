#include "ui/spread/card_words.h"

#include "ui/common/forecast_words.h"
#include "ui/cones/cone_words.h"
#include "ui/session/firing_session.h"
#include "ui/session/preferences.h"
#include "ui/spread/advice_words.h"
#include "ui/spread/hold_card.h"
#include "ui/spread/look_reminder.h"
#include "ui/spread/ring_words.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

constexpr qsizetype conesTold = 2;
const Rate fallingFrom = Rate::fromCelsiusPerHour(-30); ///< slower is no drop

struct Card {
    Q_DECLARE_TR_FUNCTIONS(Card)
};

/// "from 3 looks and 5 firings"
QString sourceWords(const FiringSession& session) {
    const auto looks = std::ranges::count(session.record().looks, false, &Look::struck);
    const int firings = session.priors().empty() ? 0 : session.priors().front().firings;
    const QString byLooks = looks == 0   ? Card::tr("no look yet")
                            : looks == 1 ? Card::tr("one look")
                                         : Card::tr("%1 looks").arg(looks);
    return firings == 0 ? byLooks
                        : Card::tr("%1 and %2")
                              .arg(byLooks, firings == 1 ? Card::tr("one firing")
                                                         : Card::tr("%1 firings").arg(firings));
}

/// By the plan's step, or by the curve.
bool isFalling(const FiringSession& session) {
    if (const auto* follower = session.follower(); follower && follower->position()) {
        const auto& step = follower->plan().steps[follower->position()->step];
        if (std::holds_alternative<Drop>(step) || std::holds_alternative<Cool>(step))
            return true;
    }
    const auto climb = session.climbShown();
    return climb && climb->rate < fallingFrom;
}

CardWords heatWords(const FiringSession& session, const Preferences& preferences) {
    CardWords words;
    words.title = Card::tr("Heat work");
    if (!session.forecast() || session.forecast()->packs.empty()) {
        words.main = Card::tr("No forecast yet");
        words.lines << (session.record().packs.empty() ? Card::tr("This firing has no cone pack.")
                                                       : Card::tr("It begins with the second reading."));
        return words;
    }
    const auto& pack = session.forecast()->packs.front();
    QStringList standing;
    for (const auto& cone : pack.cones)
        standing << coneInWords(QString::fromStdString(cone.cone), std::round(cone.hourNow.median * 2) / 2);
    words.main = standing.join(QStringLiteral(", "));
    if (isFalling(session))
        words.lines << droppingWords(FiringAdvice(*session.forecaster(), session.follower()).afterDropNow());
    else
        for (const auto& cone : pack.cones)
            if (!cone.isDown && words.lines.size() < conesTold)
                words.lines << coneDownSentence(cone, session, preferences);
    if (const auto& levelsOff = session.forecast()->levelsOff)
        words.lines
            << Card::tr("The climb dies away: the kiln %1.").arg(levelsOffWords(*levelsOff, preferences));
    if (const auto look = nextLookOf(session, preferences); look && look->at > session.now())
        words.lines << nextLookWords(*look, preferences);
    words.lines << Card::tr("Probe reads %1, from %2.")
                       .arg(offsetWords(pack.offset, preferences), sourceWords(session));
    return words;
}

/// The dwell under way, or the way to the next.
CardWords ringsWords(const RingClock& clock, const Preferences& preferences) {
    const QString title = ringTitle(clock);
    CardWords words{title.left(1).toUpper() + title.mid(1), ringLeftWords(clock), {}, {}};
    words.lines << (clock.dwelling() ? Card::tr("Dwell at %1.") : Card::tr("To %1."))
                       .arg(preferences.temperature(clock.level));
    words.lines << ringNextWords(clock, preferences);
    return words;
}

QStringList warningsOf(const FiringSession& session, const Preferences& preferences) {
    QStringList warnings;
    for (const auto& doubt : session.lookDoubts())
        warnings << doubtHeading(doubt, preferences);
    return warnings;
}

/// The one under way, or that which the plan's step has begun with.
std::optional<HoldUnderWay> holdShown(const FiringSession& session) {
    if (const auto* hold = session.watch().holdToKeep())
        return *hold;
    const auto* follower = session.follower();
    const auto position = follower ? follower->position() : std::nullopt;
    const auto* step = position ? std::get_if<Hold>(&follower->plan().steps[position->step]) : nullptr;
    return step ? std::optional(
                      HoldUnderWay{{step->at, step->band}, position->since, HoldSource::plan, step->length})
                : std::nullopt;
}

} // namespace

CardWords cardWords(const FiringSession& session, const Preferences& preferences) {
    if (const auto ring = ringClockOf(session))
        return ringsWords(*ring, preferences);
    if (const auto hold = holdShown(session))
        return holdCard(session, preferences, *hold);
    auto words = heatWords(session, preferences);
    if (const auto& steady = session.watch().holdUnderWay())
        words.lines << steadyLine(session, preferences, *steady);
    words.warnings = warningsOf(session, preferences);
    return words;
}

} // namespace ringhold
