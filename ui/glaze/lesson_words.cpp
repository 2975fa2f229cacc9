#include "ui/glaze/lesson_words.h"

#include "ui/session/preferences.h"

#include <QCoreApplication>
#include <QStringList>

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

constexpr double leastChanceTold = 0.001;

QString tr(const char* words) {
    return QCoreApplication::translate("LessonWords", words);
}

QString behind(const Lesson& lesson) {
    const QString pieces = lesson.pieces == 1 ? tr("1 piece") : tr("%1 pieces").arg(lesson.pieces);
    const QString firings = lesson.firings == 1 ? tr("1 firing") : tr("%1 firings").arg(lesson.firings);
    return tr("%1 from %2").arg(pieces, firings);
}

QString shortfallWords(const Lesson& lesson) {
    if (!lesson.shortfall)
        return {};
    switch (*lesson.shortfall) {
    case Shortfall::tooFewFirings:
        return isOfFiring(lesson.cause) ? tr("too few firings.")
                                        : tr("too few pieces that stood in one firing.");
    case Shortfall::allAlike:
        return tr("it was nearly the same in all of them.");
    case Shortfall::temperaturesUnsure:
        return tr("the probes’ offsets are less sure than the temperatures differ.");
    case Shortfall::unclear:
        return tr("something may be there, or may not.");
    }
    return {};
}

QString size(double value, Judged judged) {
    return judged == Judged::largest ? tr("%1 mm").arg(value, 0, 'f', 0)
                                     : tr("%1 steps").arg(value, 0, 'f', 1);
}

QString changeWords(const Claim& claim, Judged judged) {
    const double low = std::min(std::abs(claim.change90.low), std::abs(claim.change90.high));
    const double high = std::max(std::abs(claim.change90.low), std::abs(claim.change90.high));
    const int decimals = judged == Judged::largest ? 0 : 1;
    const QString from = QString::number(low, 'f', decimals), to = QString::number(high, 'f', decimals);
    return from == to ? size(std::abs(claim.change), judged)
                      : tr("%1 (%2 to %3)").arg(size(std::abs(claim.change), judged), from, to);
}

QString betterWords(Judged judged, bool more) {
    switch (judged) {
    case Judged::largest:
        return more ? tr("larger crystals") : tr("smaller crystals");
    case Judged::grade:
        return more ? tr("better grades") : tr("worse grades");
    case Judged::crystals:
        return more ? tr("more crystals") : tr("fewer crystals");
    }
    return {};
}

QString positionClaim(const Lesson& lesson, Judged judged) {
    const auto name = [](const PositionEffect& effect) { return QString::fromStdString(effect.position); };
    return tr("%1 on %2 than on %3: %4.")
        .arg(betterWords(judged, true), name(lesson.positions.front()), name(lesson.positions.back()),
             changeWords(*lesson.claim, judged));
}

QString claimWords(const Lesson& lesson, Judged judged, const Preferences& preferences) {
    const Claim& claim = *lesson.claim;
    const auto value = [&](double cause) { return causeValue(lesson.cause, cause, preferences); };
    if (claim.trend == Trend::differs)
        return positionClaim(lesson, judged);
    if (claim.trend == Trend::rises || claim.trend == Trend::falls)
        return tr("%1 the higher it is: %2 from %3 to %4.")
            .arg(betterWords(judged, claim.trend == Trend::rises), changeWords(claim, judged),
                 value(claim.from), value(claim.to));
    const QString at = claim.bestAt ? value(*claim.bestAt) : tr("a value in between");
    const QString within =
        claim.bestAt90 ? tr(" (%1 to %2)").arg(value(claim.bestAt90->low), value(claim.bestAt90->high))
                       : QString();
    return tr("%1 at %2%3 than at the ends that were tried: %4.")
        .arg(betterWords(judged, claim.trend == Trend::best), at, within, changeWords(claim, judged));
}

QString upperFirst(QString words) {
    if (!words.isEmpty())
        words[0] = words[0].toUpper();
    return words;
}

QString halfWords(const Confounder& confounder) {
    QStringList words;
    if (!confounder.upperHalfOn.empty())
        words << tr("all of the upper half stood on %1").arg(QString::fromStdString(confounder.upperHalfOn));
    if (!confounder.lowerHalfOn.empty())
        words << tr("all of the lower half stood on %1").arg(QString::fromStdString(confounder.lowerHalfOn));
    return words.isEmpty() ? QString() : QStringLiteral(": ") + words.join(QStringLiteral(", "));
}

/// "peak 1 268 °C (1 262 to 1 274 °C)".
QString suggestedWords(const SuggestedValue& suggested, const Preferences& preferences) {
    const auto value = [&](double v) { return causeValue(suggested.cause, v, preferences); };
    return tr("%1 %2 (%3 to %4)")
        .arg(causeWords(suggested.cause), value(suggested.value), value(suggested.low),
             value(suggested.high));
}

} // namespace

QString causeWords(Cause cause) {
    switch (cause) {
    case Cause::growthHold:
        return tr("growth hold");
    case Cause::holdTime:
        return tr("time in the growth hold");
    case Cause::peak:
        return tr("peak");
    case Cause::application:
        return tr("application");
    case Cause::position:
        return tr("place in the kiln");
    }
    return {};
}

QString judgedWords(Judged judged) {
    switch (judged) {
    case Judged::largest:
        return tr("largest crystal");
    case Judged::grade:
        return tr("grade");
    case Judged::crystals:
        return tr("crystals");
    }
    return {};
}

QString causeValue(Cause cause, double value, const Preferences& preferences) {
    switch (cause) {
    case Cause::growthHold:
    case Cause::peak:
        return preferences.temperature(Temperature::fromCelsius(value));
    case Cause::holdTime:
        return tr("%1 h").arg(value, 0, 'f', 1);
    case Cause::application:
        return tr("%1 g/cm²").arg(value, 0, 'g', 2);
    case Cause::position:
        break;
    }
    return {};
}

QString lessonWords(const Lesson& lesson, Judged judged, const Preferences& preferences) {
    switch (lesson.verdict) {
    case Verdict::notEnough:
        return tr("Not enough to say (%1): %2").arg(behind(lesson), shortfallWords(lesson));
    case Verdict::nothingSeen:
        return tr("No difference to be seen beyond what pieces differ anyway (%1).").arg(behind(lesson));
    case Verdict::claimed:
        break;
    }
    if (!lesson.claim || (lesson.claim->trend == Trend::differs && lesson.positions.empty()))
        return tr("Not enough to say (%1).").arg(behind(lesson));
    QString words = upperFirst(claimWords(lesson, judged, preferences)) + QLatin1Char(' ') +
                    tr("%1, 90 % intervals.").arg(behind(lesson));
    if (lesson.chance && *lesson.chance < leastChanceTold)
        words += QLatin1Char(' ') + tr("Chance alone would show so much in less than 0.1 % of glazes.");
    else if (lesson.chance)
        words +=
            QLatin1Char(' ') +
            tr("Chance alone would show so much in %1 % of glazes.").arg(*lesson.chance * 100, 0, 'g', 1);
    return words;
}

QString offsetsWords(const Lesson& lesson, const Preferences& preferences) {
    const bool temperature = lesson.cause == Cause::growthHold || lesson.cause == Cause::peak;
    if (!temperature || lesson.pieces == 0)
        return {};
    constexpr double z90 = 1.645;
    const auto half = [&](double sd_C) {
        return preferences.difference(TemperatureDifference::fromCelsius(sd_C * z90), 0, false);
    };
    return tr("Temperatures are those of the ware: each probe’s offset is taken off, unsure by ± %1 from "
              "firing "
              "to firing and ± %2 in common. Firings whose probe is not named are left out.")
        .arg(half(lesson.ownSd_C), half(lesson.sharedSd_C));
}

QString confoundingWords(const Lesson& lesson, const Preferences&) {
    QStringList sentences;
    for (const auto& confounder : lesson.confounders) {
        QString sentence = tr("%1 went along with it (%2 % in common)%3")
                               .arg(upperFirst(causeWords(confounder.with)))
                               .arg(confounder.shared * 100, 0, 'f', 0)
                               .arg(halfWords(confounder));
        if (confounder.standsBesides.value_or(false))
            sentence += tr("; with that counted in, the claim still stands.");
        else
            sentence += tr("; which of the two it was cannot be told.");
        sentences << sentence;
    }
    return sentences.join(QLatin1Char(' '));
}

QString experimentWords(const NextExperiment& next, const Preferences& preferences) {
    QStringList values;
    for (const auto& suggested : next.values)
        values << suggestedWords(suggested, preferences);
    QString words =
        tr("The next firing that would tell most: %1. Any value within the brackets tells nearly as "
           "much; temperatures are those of the ware.")
            .arg(values.join(QStringLiteral(", ")));
    if (next.bestSdNow_C && next.bestSdThen_C)
        words +=
            QLatin1Char(' ') +
            tr("The best growth hold is known to %1 now, and would be to %2.")
                .arg(
                    preferences.difference(TemperatureDifference::fromCelsius(*next.bestSdNow_C), 0, false),
                    preferences.difference(TemperatureDifference::fromCelsius(*next.bestSdThen_C), 0, false));
    if (!next.alsoOn.empty())
        words +=
            QLatin1Char(' ') + tr("Put pieces of it on %1 too: so far shelf and growth hold went together.")
                                   .arg(QString::fromStdString(next.alsoOn));
    return words;
}

} // namespace ringhold
