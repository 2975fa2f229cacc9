#include "ui/alarm/alarm_phrases.h"

#include "ui/session/firing_session.h"
#include "ui/session/preferences.h"

#include <QCoreApplication>

namespace ringhold {

namespace {

struct Phrase {
    Q_DECLARE_TR_FUNCTIONS(Alarm)
};

} // namespace

QString levelWords(AlarmLevel level) {
    return level == AlarmLevel::urgent    ? Phrase::tr("Urgent")
           : level == AlarmLevel::warning ? Phrase::tr("Warning")
                                          : Phrase::tr("Notice");
}

QString titleWords(const Alarm& alarm) {
    const auto title = causeTitle(alarm.cause);
    return QString::fromUtf8(title.data(), static_cast<qsizetype>(title.size()));
}

QString kilnWords(const FiringSession& session) {
    return QString::fromStdString(session.record().kiln.name);
}

QString sinceWords(const Alarm& alarm, Instant now, const Preferences& preferences) {
    const QString first = preferences.clockTime(alarm.first);
    QString words = alarm.over()
                        ? Phrase::tr("%1 to %2, over").arg(first, preferences.clockTime(*alarm.ended))
                        : Phrase::tr("since %1, %2").arg(first, preferences.span(now - alarm.first));
    if (alarm.times > 1)
        words += Phrase::tr(", %1 times").arg(alarm.times);
    return words;
}

QString answerWords(const Alarm& alarm, const Preferences& preferences) {
    if (!alarm.acknowledged)
        return alarm.over() ? Phrase::tr("over, nobody has seen it") : Phrase::tr("nobody has answered");
    const QString by =
        Phrase::tr("acknowledged by %1 at %2")
            .arg(QString::fromStdString(alarm.acknowledgedBy), preferences.clockTime(*alarm.acknowledged));
    return quietOnceAcknowledged(alarm.cause) ? by : by + Phrase::tr("; calls until somebody looks");
}

} // namespace ringhold
