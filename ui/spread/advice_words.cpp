#include "ui/spread/advice_words.h"

#include "core/report/words.h"
#include "ui/common/word_style.h"
#include "ui/cones/cone_words.h"

#include <QCoreApplication>
#include <QStringList>

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

struct Advice {
    Q_DECLARE_TR_FUNCTIONS(Advice)
};

QString hourInWords(double hour) {
    return QString::fromStdString(hourWords(std::round(hour * 2) / 2));
}

/// " (1½ to 2½)"; nothing when it is all the same.
QString between(const Interval<double>& hour) {
    const QString low = hourOnButton(hour.p05), high = hourOnButton(hour.p95);
    return low == high ? QString() : Advice::tr(" (%1 to %2)").arg(low, high);
}

/// Minutes where both are, else as spans.
QString spanOf(Duration length, const Preferences& preferences) {
    return preferences.span(std::max(length, Duration(0)));
}

QString minutesOf(Duration length) {
    return QString::number(std::lround(std::max(0.0, inMinutes(length))));
}

} // namespace

QString holdingWords(const std::string& cone, const std::optional<TimeInterval>& down, Instant now,
                     const Preferences& preferences) {
    const QString name = QString::fromStdString(cone);
    if (!down || !down->p05)
        return Advice::tr("Cone %1 is not down within a day.").arg(name);
    const bool hours = inMinutes((down->p95 ? *down->p95 : *down->p05) - now) >= 60;
    const auto figure = [&](Instant at) {
        return hours ? spanOf(at - now, preferences) : minutesOf(at - now);
    };
    if (!down->median)
        return Advice::tr("Cone %1 is hardly down within a day, not before %2.")
            .arg(name, preferences.clockTime(*down->p05));
    if (*down->median <= now)
        return Advice::tr("Cone %1 should be down already: look.").arg(name);
    const QString range = down->p95 ? Advice::tr("%1 to %2").arg(figure(*down->p05), figure(*down->p95))
                                    : Advice::tr("%1 or longer").arg(figure(*down->p05));
    return Advice::tr("Cone %1 is down in %2 (%3).")
        .arg(name, spanOf(*down->median - now, preferences), range);
}

QString climbingWords(const std::optional<Interval<Rate>>& climb, const Preferences& preferences) {
    const auto style = styleOf(preferences);
    if (!climb)
        return Advice::tr("No climb up to %1 does it.")
            .arg(QString::fromStdString(rateWords(fastestRate(), style)));
    if (climb->p95.celsiusPerHour() < 1)
        return Advice::tr("Staying as it is does it.");
    const auto figure = [&](Rate rate) { return std::lround(preferences.shown(rate)); };
    return Advice::tr("Climb at %1 (%2 to %3).")
        .arg(QString::fromStdString(rateWords(climb->median, style)))
        .arg(figure(climb->p05))
        .arg(figure(climb->p95));
}

QString stayingWords(const std::string& cone, const std::optional<Interval<double>>& hour) {
    const QString name = QString::fromStdString(cone);
    if (!hour)
        return {};
    const QString words = hourInWords(hour->median);
    if (words.startsWith(QLatin1String("at ")))
        return Advice::tr("Cone %1 would come to %2%3.").arg(name, words.mid(3), between(*hour));
    return Advice::tr("Cone %1 would be %2%3.").arg(name, words, between(*hour));
}

QString droppingWords(const std::vector<ConeAfterDrop>& cones) {
    QStringList moved, still;
    for (const auto& cone : cones) {
        const QString name = QString::fromStdString(cone.cone);
        const QString from = hourOnButton(cone.now.median), to = hourInWords(cone.after.median);
        if (from == hourOnButton(cone.after.median))
            still << Advice::tr("%1 stays %2%3").arg(name, to, between(cone.after));
        else
            moved << Advice::tr("cooling takes %1 from %2 to %3%4")
                         .arg(name, from, to.startsWith(QLatin1String("at ")) ? to.mid(3) : to,
                              between(cone.after));
    }
    QString words = (moved + still).join(QStringLiteral("; "));
    if (words.isEmpty())
        return Advice::tr("No cone is left to move.");
    words[0] = words[0].toUpper();
    return words + QLatin1Char('.');
}

QString earliestDropWords(const std::string& cone, const std::optional<DropAdvice>& advice, Instant now,
                          const Preferences& preferences) {
    const QString name = QString::fromStdString(cone);
    if (!advice || !advice->drop.p05 || !advice->drop.median)
        return {};
    const auto clock = [&](Instant at) { return preferences.clockTime(at); };
    if (*advice->drop.median <= now)
        return Advice::tr("Dropped now, cone %1 would likely still go down while the kiln cools.").arg(name);
    const QString range = advice->drop.p95
                              ? Advice::tr("%1 to %2").arg(clock(*advice->drop.p05), clock(*advice->drop.p95))
                              : Advice::tr("%1 or later").arg(clock(*advice->drop.p05));
    QString words = Advice::tr("Dropped from %1 on (%2), cone %3 still goes down while the kiln cools")
                        .arg(clock(*advice->drop.median), range, name);
    if (advice->down.median)
        words += Advice::tr("; kept on, it is down at %1").arg(clock(*advice->down.median));
    return words + QLatin1Char('.');
}

} // namespace ringhold
