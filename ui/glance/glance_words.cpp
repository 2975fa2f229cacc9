#include "ui/glance/glance_words.h"

#include "ui/alarm/alarm_phrases.h"
#include "ui/session/firing_session.h"
#include "ui/session/preferences.h"
#include "ui/spread/strip_words.h"

#include <QCoreApplication>

#include <cmath>

namespace ringhold {

namespace {

struct Glance {
    Q_DECLARE_TR_FUNCTIONS(Glance)
};

const QString dot = QStringLiteral(" · ");

QString underOrOver(TemperatureDifference off, const Preferences& preferences) {
    const double shown = std::round(preferences.shown(off));
    return preferences.difference(shown < 0 ? -off : off, 0, false) +
           (shown < 0 ? Glance::tr(" under") : Glance::tr(" over"));
}

void sayHold(GlanceWords& words, const FiringSession& session, const HoldUnderWay& hold,
             Temperature temperature, const Preferences& preferences) {
    const QString held = preferences.span(std::max(Duration(0), session.now() - hold.from));
    words.step = Glance::tr("hold %1").arg(preferences.temperature(hold.band.target)) + dot +
                 (hold.planned ? Glance::tr("%1 of %2").arg(held, preferences.span(*hold.planned)) : held);
    const auto off = temperature - hold.band.target;
    const bool inside = std::abs(off.celsius()) <= hold.band.halfWidth.celsius();
    words.state = inside ? Glance::tr("in band") : Glance::tr("out of band");
    words.tone = inside ? GlanceTone::well : GlanceTone::warning;
    if (std::round(preferences.shown(off)) != 0)
        words.state += dot + underOrOver(off, preferences);
}

void sayNext(GlanceWords& words, const StripWords& strip, const FiringSession& session,
             const Preferences& preferences) {
    if (!strip.coneWhen.isEmpty()) {
        words.next = strip.coneCaption + QLatin1Char(' ') + strip.coneWhen;
        if (!strip.coneBetween.isEmpty())
            words.next += QStringLiteral(" (") + strip.coneBetween + QLatin1Char(')');
        return;
    }
    if (strip.next.isEmpty())
        return;
    words.next = Glance::tr("then %1").arg(strip.next);
    const auto* follower = session.follower();
    const auto position = follower ? follower->position() : std::nullopt;
    for (const auto& planned : position ? follower->ahead().steps : std::vector<PlannedStep>{})
        if (planned.step == position->step + 1 && planned.start > session.now())
            words.next += dot + preferences.clockTime(planned.start) + dot +
                          Glance::tr("in %1").arg(preferences.span(planned.start - session.now()));
}

void sayAlarms(GlanceWords& words, const FiringSession& session, const LiveAlarms& alarms,
               const Preferences& preferences) {
    int calling = 0;
    for (const auto& live : alarms.alarms()) {
        if (live.session != &session || !live.calls())
            continue;
        if (calling++ == 0) {
            words.alarm = levelWords(live.alarm.level).toUpper() + QStringLiteral(": ") +
                          titleWords(live.alarm) + dot + sinceWords(live.alarm, live.now, preferences);
            words.urgent = live.alarm.level == AlarmLevel::urgent;
        }
    }
    words.alarmsMore = std::max(0, calling - 1);
}

} // namespace

GlanceWords glanceWords(const FiringSession& session, const LiveAlarms& alarms,
                        const Preferences& preferences) {
    const auto strip = stripWords(session, preferences);
    GlanceWords words;
    words.kiln = kilnWords(session);
    words.temperature = strip.temperature;
    words.unit = strip.unit;
    words.live = strip.freshness == Freshness::live;
    words.age = strip.age;
    words.step = strip.step;
    if (!strip.stepLeft.isEmpty())
        words.step += dot + strip.stepLeft;
    words.state =
        strip.offPlan.isEmpty() || strip.onPlan ? strip.offPlan : Glance::tr("%1 plan").arg(strip.offPlan);
    const auto last = session.firing().lastReading();
    if (const auto* hold = session.watch().holdToKeep(); hold && last)
        sayHold(words, session, *hold, last->temperature, preferences);
    else if (words.live && strip.climb != QStringLiteral("–"))
        words.state += (words.state.isEmpty() ? QString() : dot) + strip.climb;
    if (!words.live) {
        words.state = last ? Glance::tr("not live") : Glance::tr("no reading yet");
        words.tone = last ? GlanceTone::warning : GlanceTone::plain;
    }
    sayNext(words, strip, session, preferences);
    sayAlarms(words, session, alarms, preferences);
    return words;
}

QString spokenWords(const GlanceWords& words) {
    QStringList parts{words.kiln,
                      words.temperature + QLatin1Char(' ') + words.unit,
                      words.age,
                      words.step,
                      words.state,
                      words.next,
                      words.alarm.isEmpty() ? Glance::tr("no alarm") : words.alarm};
    parts.removeAll(QString());
    return parts.join(QStringLiteral(", "));
}

} // namespace ringhold
