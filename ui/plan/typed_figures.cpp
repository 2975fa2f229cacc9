#include "ui/plan/typed_figures.h"

#include "ui/plan/plan_words.h"
#include "ui/session/preferences.h"

#include <cmath>

namespace ringhold {

namespace {

constexpr double longest_min = 1e5;

/// Without the zeros and the point that say nothing.
QString trimmedFigure(double value, int decimals) {
    QString text = QString::number(value, 'f', decimals);
    if (text.contains(QLatin1Char('.'))) {
        while (text.endsWith(QLatin1Char('0')))
            text.chop(1);
        if (text.endsWith(QLatin1Char('.')))
            text.chop(1);
    }
    return text == QStringLiteral("-0") ? QStringLiteral("0") : text;
}

bool isFigureSign(QChar c) {
    return (c >= QLatin1Char('0') && c <= QLatin1Char('9')) || c == QLatin1Char('.') || c == QLatin1Char(',');
}

/// What is typed, without blanks of any kind, in small letters.
QString squeezed(QStringView text) {
    QString kept;
    for (const QChar c : text)
        if (!c.isSpace() && c != QChar(0x202f) && c != QChar(0x00a0))
            kept += c == QChar(0x2212) ? QChar(QLatin1Char('-')) : c.toLower();
    return kept;
}

/// Takes the figure that `text` begins with off it.
std::optional<double> takeFigure(QStringView& text) {
    qsizetype length = text.startsWith(QLatin1Char('-')) || text.startsWith(QLatin1Char('+')) ? 1 : 0;
    while (length < text.size() && isFigureSign(text[length]))
        ++length;
    QString figure = text.first(length).toString();
    text = text.mid(length);
    const auto comma = figure.indexOf(QLatin1Char(','));
    if (comma >= 0 && figure.size() - comma == 4)
        return std::nullopt;
    figure.replace(QLatin1Char(','), QLatin1Char('.'));
    bool understood = false;
    const double value = figure.toDouble(&understood);
    return understood && std::isfinite(value) ? std::optional(value) : std::nullopt;
}

/// "c", "°c", "f" ... or nothing: whether the figure is in °F.
std::optional<bool> inFahrenheit(QStringView unit, const Preferences& preferences) {
    if (unit.startsWith(QChar(0x00b0)) || unit.startsWith(QChar(0x00ba)))
        unit = unit.mid(1);
    if (unit.isEmpty())
        return preferences.unit() == TemperatureUnit::fahrenheit;
    if (unit == QStringLiteral("c") || unit == QStringLiteral("f"))
        return unit == QStringLiteral("f");
    return std::nullopt;
}

struct Degrees {
    double figure = 0;
    bool fahrenheit = false;
};

std::optional<Degrees> typedDegrees(QStringView text, const Preferences& preferences,
                                    QStringView ending = {}) {
    const QString all = squeezed(text);
    QStringView rest = all;
    if (!ending.isEmpty() && rest.endsWith(ending))
        rest.chop(ending.size());
    const auto figure = takeFigure(rest);
    const auto fahrenheit = inFahrenheit(rest, preferences);
    if (!figure || !fahrenheit)
        return std::nullopt;
    return Degrees{*figure, *fahrenheit};
}

std::optional<double> minutesIn(QStringView unit) {
    for (const auto& [word, minutes] : {std::pair("", 1.0),
                                        {"min", 1.0},
                                        {"minutes", 1.0},
                                        {"m", 1.0},
                                        {"h", 60.0},
                                        {"hour", 60.0},
                                        {"hours", 60.0},
                                        {"s", 1 / 60.0}})
        if (unit == QLatin1String(word))
            return minutes;
    return std::nullopt;
}

/// Figures and units in turn, added up: "1h30".
std::optional<double> sumOfTimes(QStringView text) {
    double total = 0;
    do {
        const auto figure = takeFigure(text);
        qsizetype letters = 0;
        while (letters < text.size() && text[letters].isLetter())
            ++letters;
        const auto factor = minutesIn(text.first(letters));
        text = text.mid(letters);
        if (!figure || !factor)
            return std::nullopt;
        total += *figure * *factor;
    } while (!text.isEmpty());
    return total;
}

} // namespace

QString typedForm(Temperature t, const Preferences& preferences) {
    return trimmedFigure(preferences.shown(t), 1);
}

QString typedForm(TemperatureDifference d, const Preferences& preferences) {
    return trimmedFigure(preferences.shown(d), 1);
}

QString typedForm(Rate r, const Preferences& preferences) {
    return trimmedFigure(preferences.shown(r), 1);
}

QString typedForm(Duration d) {
    const double minutes = inMinutes(d);
    if (minutes != std::trunc(minutes) || minutes < 60)
        return PlanWords::tr("%1 min").arg(trimmedFigure(minutes, 2));
    const auto whole = static_cast<qint64>(minutes);
    return PlanWords::tr("%1 h %2").arg(whole / 60).arg(whole % 60, 2, 10, QLatin1Char('0'));
}

std::optional<Temperature> typedTemperature(QStringView text, const Preferences& preferences) {
    const auto typed = typedDegrees(text, preferences);
    if (!typed)
        return std::nullopt;
    return typed->fahrenheit ? Temperature::fromFahrenheit(typed->figure)
                             : Temperature::fromCelsius(typed->figure);
}

std::optional<TemperatureDifference> typedDifference(QStringView text, const Preferences& preferences) {
    const QString all = squeezed(text);
    QStringView rest = all;
    if (rest.startsWith(QChar(0x00b1)))
        rest = rest.mid(1);
    const auto typed = typedDegrees(rest, preferences);
    if (!typed)
        return std::nullopt;
    return typed->fahrenheit ? TemperatureDifference::fromFahrenheit(typed->figure)
                             : TemperatureDifference::fromCelsius(typed->figure);
}

std::optional<Rate> typedRate(QStringView text, const Preferences& preferences) {
    const auto typed = typedDegrees(text, preferences, QStringLiteral("/h"));
    if (!typed)
        return std::nullopt;
    return typed->fahrenheit ? Rate::fromFahrenheitPerHour(typed->figure)
                             : Rate::fromCelsiusPerHour(typed->figure);
}

std::optional<Duration> typedTime(QStringView text) {
    QString all = squeezed(text);
    if (all.count(QLatin1Char(':')) == 1)
        all.replace(QLatin1Char(':'), QLatin1Char('h'));
    const auto minutes = sumOfTimes(all);
    if (!minutes || std::abs(*minutes) > longest_min)
        return std::nullopt;
    return durationFromMinutes(*minutes);
}

std::optional<int> typedCount(QStringView text) {
    bool understood = false;
    const int count = squeezed(text).toInt(&understood);
    return understood ? std::optional(count) : std::nullopt;
}

QString grouped(const QString& figure) {
    const qsizetype first = figure.startsWith(QLatin1Char('-')) ? 1 : 0;
    qsizetype end = first;
    while (end < figure.size() && figure[end].isDigit())
        ++end;
    QString text = figure;
    if (end - first > 3)
        text.insert(end - 3, QChar(0x202f));
    if (first == 1)
        text[0] = QChar(0x2212);
    return text;
}

} // namespace ringhold
