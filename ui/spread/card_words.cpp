#include "ui/spread/card_words.h"

#include "core/watch/carried_offset.h"
#include "core/watch/hold_statistics.h"
#include "ui/common/forecast_words.h"
#include "ui/cones/cone_words.h"
#include "ui/session/firing_session.h"
#include "ui/session/preferences.h"
#include "ui/spread/advice_words.h"
#include "ui/spread/look_reminder.h"
#include "ui/spread/ring_words.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

constexpr double z90 = 1.645; ///< of a normal distribution, for 90 % in the middle
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
    CardWords words{Card::tr("Heat work"), {}, {}, {}};
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
    if (const auto look = nextLookOf(session, preferences); look && look->at > session.now())
        words.lines << nextLookWords(*look, preferences);
    words.lines << Card::tr("Probe reads %1, from %2.")
                       .arg(offsetWords(pack.offset, preferences), sourceWords(session));
    return words;
}

/// The offset that the cones told, as it is at the hold.
QString carriedWords(const FiringSession& session, Temperature at, const Preferences& preferences) {
    if (!session.forecast() || session.forecast()->packs.empty())
        return {};
    const auto carried = carriedOffset(session.record().packs.front(), session.forecast()->packs.front(), at);
    if (!carried)
        return {};
    const auto half = carried->sd * z90;
    return Card::tr("The probe likely reads %1 here, carried from the cones.")
        .arg(offsetWords({carried->mean - half, carried->mean, carried->mean + half}, preferences));
}

/// Since the present step began.
CardWords holdWords(const FiringSession& session, const Preferences& preferences, const Hold& hold,
                    Instant since) {
    CardWords words{Card::tr("Hold %1").arg(preferences.temperature(hold.at)), {}, {}, {}};
    const auto& curve = session.firing().controlCurve();
    if (curve.empty() || curve.back().at <= since)
        return words;
    const auto held = judgeHold(curve, {hold.at, hold.band}, {since, curve.back().at});
    words.main =
        Card::tr("mean %1, sd %2")
            .arg(preferences.temperature(held.mean, 1), QString::number(preferences.shown(held.sd), 'f', 1));
    words.lines << Card::tr("%1 of %2. In the band %3 % of the time.")
                       .arg(preferences.span(held.end - held.start), preferences.span(hold.length),
                            QString::number(held.insideShare * 100, 'f', 1));
    words.lines << Card::tr("From %1 to %2; longest out %3.")
                       .arg(preferences.temperature(held.min), preferences.temperature(held.max),
                            preferences.span(held.longestExcursion));
    if (const QString offset = carriedWords(session, hold.at, preferences); !offset.isEmpty())
        words.lines << offset;
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

} // namespace

CardWords cardWords(const FiringSession& session, const Preferences& preferences) {
    if (const auto ring = ringClockOf(session))
        return ringsWords(*ring, preferences);
    if (const auto* follower = session.follower(); follower && follower->position()) {
        const auto position = *follower->position();
        if (const auto* hold = std::get_if<Hold>(&follower->plan().steps[position.step]))
            return holdWords(session, preferences, *hold, position.since);
    }
    auto words = heatWords(session, preferences);
    words.warnings = warningsOf(session, preferences);
    return words;
}

} // namespace ringhold
