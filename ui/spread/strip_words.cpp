#include "ui/spread/strip_words.h"

#include "ui/common/forecast_words.h"
#include "ui/session/firing_cone.h"
#include "ui/session/firing_session.h"
#include "ui/session/preferences.h"
#include "ui/spread/ring_words.h"

#include <QCoreApplication>

#include <cmath>

namespace ringhold {

namespace {

/// Where lupdate looks for the words of the free functions below.
struct StripTalk {
    Q_DECLARE_TR_FUNCTIONS(Strip)
};

const QString unknown = QStringLiteral("–");

QString ageWords(const LiveFiring& firing, Freshness freshness, Instant now, const Preferences& preferences) {
    const auto last = firing.lastReading();
    if (!last)
        return StripTalk::tr("no reading yet");
    const QString ago = StripTalk::tr("%1 ago").arg(preferences.span(std::max(Duration(0), now - last->at)));
    if (freshness == Freshness::open)
        return StripTalk::tr("probe open, last %1").arg(ago);
    return freshness == Freshness::stale ? StripTalk::tr("%1, no longer live").arg(ago) : ago;
}

void sayOffPlan(StripWords& words, const FiringSession& session, const Preferences& preferences) {
    const auto last = session.firing().lastReading();
    const auto* follower = session.follower();
    if (!follower || !follower->position() || !last)
        return;
    const auto off = last->temperature - follower->plannedAt(last->at);
    const double shown = std::round(preferences.shown(off));
    words.onPlan = shown == 0;
    words.offPlan = words.onPlan ? StripTalk::tr("on plan")
                                 : (shown < 0 ? StripTalk::tr("%1 under") : StripTalk::tr("%1 over"))
                                       .arg(preferences.difference(shown < 0 ? -off : off, 0, false));
}

/// Where no step of a plan is under way.
void sayUnplannedHold(StripWords& words, const FiringSession& session, const Preferences& preferences) {
    const auto& hold = session.watch().holdUnderWay();
    const auto last = session.firing().lastReading();
    if (!hold || !last || hold->source == HoldSource::plan)
        return;
    words.step = StripTalk::tr("hold %1").arg(preferences.temperature(hold->band.target));
    words.stepLeft =
        StripTalk::tr("for %1").arg(preferences.span(last->at - hold->from)); // nothing later is known
}

void sayStep(StripWords& words, const FiringSession& session, const Preferences& preferences) {
    const auto* follower = session.follower();
    const auto position = follower ? follower->position() : std::nullopt;
    if (!position) {
        words.step = follower && follower->finished() ? StripTalk::tr("plan done") : QString();
        sayUnplannedHold(words, session, preferences);
        return;
    }
    const auto& steps = follower->plan().steps;
    words.step = stepWords(steps[position->step], preferences);
    if (const auto ring = ringClockOf(session)) {
        words.step = ringTitle(*ring);
        words.stepLeft = ringLeftWords(*ring);
    }
    const bool waits = std::holds_alternative<ConeWait>(steps[position->step]);
    const auto left = position->expectedEnd - session.now();
    if (!position->ring && !waits && left > Duration(0))
        words.stepLeft = StripTalk::tr("%1 left").arg(preferences.span(left));
    if (position->step + 1 < steps.size()) {
        words.next = stepWords(steps[position->step + 1], preferences);
        for (const auto& planned : follower->ahead().steps)
            if (planned.step == position->step + 1 && !waits)
                words.nextWhen = StripTalk::tr("about %1").arg(preferences.clockTime(planned.start));
    }
}

void sayCone(StripWords& words, const FiringSession& session, const Preferences& preferences) {
    const auto* cone = firingConeForecast(session);
    if (!cone)
        return;
    const auto down = coneDownWords(*cone, session, preferences);
    words.coneCaption = StripTalk::tr("cone %1 down").arg(QString::fromStdString(cone->cone));
    words.coneWhen = down.when;
    words.coneBetween = down.between;
}

} // namespace

QString stepWords(const Step& step, const Preferences& preferences) {
    struct Teller {
        const Preferences& p;
        QString operator()(const Climb& s) const {
            return StripTalk::tr("climb to %1").arg(p.temperature(s.to));
        }
        QString operator()(const Hold& s) const { return StripTalk::tr("hold %1").arg(p.temperature(s.at)); }
        QString operator()(const ConeWait& s) const {
            return StripTalk::tr("cone wait · %1").arg(QString::fromStdString(s.cone));
        }
        QString operator()(const Drop& s) const {
            return StripTalk::tr("drop to %1").arg(p.temperature(s.to));
        }
        QString operator()(const Rings& s) const {
            return s.count == 1 ? StripTalk::tr("one ring") : StripTalk::tr("%1 rings").arg(s.count);
        }
        QString operator()(const Cool& s) const {
            return StripTalk::tr("cool to %1").arg(p.temperature(s.to));
        }
    };
    return std::visit(Teller{preferences}, step);
}

StripWords stripWords(const FiringSession& session, const Preferences& preferences) {
    StripWords words;
    const auto& record = session.record();
    words.firing = QString::fromStdString(record.kiln.name + " · " + record.firing.title);
    const auto& firing = session.firing();
    const auto last = firing.lastReading();
    words.temperature = last ? preferences.temperatureFigure(last->temperature) : unknown;
    words.unit = preferences.unitName();
    words.freshness = firing.freshness(session.now());
    words.age = ageWords(firing, words.freshness, session.now(), preferences);
    const auto climb = session.climbShown();
    words.climb = climb && words.freshness == Freshness::live ? preferences.rate(climb->rate) : unknown;
    sayOffPlan(words, session, preferences);
    sayStep(words, session, preferences);
    sayCone(words, session, preferences);
    if (!session.diskTrouble().isEmpty())
        words.trouble = StripTalk::tr("Not on the disk yet: %1").arg(session.diskTrouble());
    else if (session.linkState() == LinkState::lost)
        words.trouble = StripTalk::tr("Instrument lost: %1").arg(session.linkDetail());
    else if (const auto& alarms = session.alarms().alarms(); !alarms.empty())
        words.trouble = StripTalk::tr("Alarm: %1")
                            .arg(QString::fromStdString(std::string(causeTitle(alarms.front().cause))));
    return words;
}

} // namespace ringhold
