#include "ui/ware/ring_words.h"

#include <QCoreApplication>
#include <QRegularExpression>
#include <QStringList>

#include <algorithm>

namespace ringhold {

namespace {

constexpr double rulerSd_mm = 0.3;
constexpr double widest_mm = 500;

QString tr(const char* words) {
    return QCoreApplication::translate("RingWords", words);
}

QString figureOf(double mm) {
    return QString::number(mm, 'g', 4);
}

bool isDash(const QString& word) {
    return word == QStringLiteral("-") || word == QStringLiteral("–");
}

RingRadius radiusFor(int ring, double radius_mm, const std::vector<RingRadius>& before) {
    const auto old = std::ranges::find(before, ring, &RingRadius::ring);
    const bool same = old != before.end() && figureOf(old->radius_mm) == figureOf(radius_mm);
    return same ? *old : RingRadius{{}, ring, radius_mm, rulerSd_mm};
}

} // namespace

QString ringsText(const std::vector<RingRadius>& rings) {
    QStringList words;
    for (const auto& ring : rings) {
        while (words.size() < ring.ring)
            words << QStringLiteral("–");
        words << figureOf(ring.radius_mm);
    }
    return words.join(QStringLiteral("  "));
}

Result<std::vector<RingRadius>> ringsTyped(const QString& text, const std::vector<RingRadius>& before) {
    static const QRegularExpression between(QStringLiteral("[\\s;]+|,\\s+"));
    std::vector<RingRadius> rings;
    int ring = 0;
    for (QString word : text.split(between, Qt::SkipEmptyParts)) {
        if (!isDash(word)) {
            bool isNumber = false;
            const double mm = word.replace(QLatin1Char(','), QLatin1Char('.')).toDouble(&isNumber);
            if (!isNumber || !(mm > 0 && mm <= widest_mm))
                return Error{ErrorKind::badInput,
                             tr("A ring’s radius is a number of mm above 0, or – where it cannot be seen.")
                                 .toStdString()};
            if (!rings.empty() && mm <= rings.back().radius_mm)
                return Error{ErrorKind::badInput,
                             tr("Rings are written from the innermost outwards: each radius is larger than "
                                "the one before.")
                                 .toStdString()};
            rings.push_back(radiusFor(ring, mm, before));
        }
        ++ring;
    }
    return rings;
}

} // namespace ringhold
