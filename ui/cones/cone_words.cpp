#include "ui/cones/cone_words.h"

#include "core/cones/bending.h"
#include "core/report/words.h"

#include <QCoreApplication>
#include <QRegularExpression>

#include <cmath>
#include <optional>

namespace ringhold {

namespace {

constexpr double justLeaning = 0.5;

struct ConeWords {
    Q_DECLARE_TR_FUNCTIONS(ConeWords)
};

QString hourFigure(double hour) {
    const int whole = static_cast<int>(hour);
    const QString half = hour > whole ? QStringLiteral("½") : QString();
    return QString::number(whole) + half;
}

double inHalves(double hour) {
    return std::round(2 * hour) / 2;
}

bool isFigure(double halves) {
    return halves > justLeaning && halves < hourDown;
}

std::optional<double> hourTyped(QString words) {
    if (words == QLatin1String("standing"))
        return hourStanding;
    if (words == QLatin1String("leaning") || words == QLatin1String("just leaning"))
        return justLeaning;
    if (words == QLatin1String("down"))
        return hourDown;
    words.replace(u',', u'.');
    if (words.endsWith(u'½'))
        words = (words.size() == 1 ? QStringLiteral("0") : words.chopped(1).trimmed()) + QStringLiteral(".5");
    bool isNumber = false;
    const double hour = words.toDouble(&isNumber);
    if (!isNumber)
        return std::nullopt;
    if (hour == 12)
        return hourStanding;
    const bool tellable = hour >= hourStanding && hour <= hourDown && inHalves(hour) == hour;
    return tellable ? std::optional(hour) : std::nullopt;
}

Error bad(const QString& what) {
    return {ErrorKind::badInput, what.toStdString()};
}

Result<TypedLook> parseLook(QString text) {
    static const QRegularExpression oClock(QStringLiteral("\\s*o.?clock$"));
    text = text.simplified().toLower().remove(oClock);
    const auto space = text.indexOf(u' ');
    if (space < 0)
        return bad(ConeWords::tr("\"%1\" needs an hour: cone, space, hour").arg(text));
    QString hourText = text.mid(space + 1);
    if (hourText.startsWith(QLatin1String("at ")))
        hourText.remove(0, 3);
    const auto hour = hourTyped(hourText);
    if (!hour)
        return bad(ConeWords::tr("\"%1\" is no hour: standing, 0.5 to 5.5 in halves, or down").arg(hourText));
    return TypedLook{text.left(space).toStdString(), *hour};
}

} // namespace

QString hourOnButton(double hour) {
    const double halves = inHalves(hour);
    return isFigure(halves) ? hourFigure(halves) : QString::fromStdString(hourWords(halves));
}

QString coneInWords(const QString& cone, double hour) {
    return QString::fromStdString(lookWords({{cone.toStdString(), hour}}));
}

Result<std::vector<TypedLook>> parseLooks(QStringView text) {
    static const QRegularExpression between(QStringLiteral(";|,(?=\\s|$)"));
    std::vector<TypedLook> looks;
    for (const auto& part : text.toString().split(between, Qt::SkipEmptyParts)) {
        if (part.trimmed().isEmpty())
            continue;
        auto look = parseLook(part);
        if (!look.ok())
            return look.error();
        looks.push_back(*look);
    }
    return looks;
}

} // namespace ringhold
