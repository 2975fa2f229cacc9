#include "ui/ware/outcome_words.h"

#include <QCoreApplication>
#include <QRegularExpression>

#include <array>
#include <optional>

namespace ringhold {

namespace {

constexpr double longestRun_mm = 1000;
constexpr std::array allFaults{WareFault::crawled,      WareFault::pinholes, WareFault::noCrystals,
                               WareFault::tooManySeeds, WareFault::dunting,  WareFault::stuck,
                               WareFault::dull};

QString tr(const char* words) {
    return QCoreApplication::translate("WareModel", words);
}

/// The only common word that begins so.
std::optional<WareFault> faultMeant(const QString& word) {
    std::optional<WareFault> meant;
    for (const auto fault : allFaults) {
        const QString common = faultWords(fault);
        if (common.compare(word, Qt::CaseInsensitive) == 0)
            return fault;
        if (word.size() < 2 || !common.startsWith(word, Qt::CaseInsensitive))
            continue;
        if (meant)
            return std::nullopt;
        meant = fault;
    }
    return meant;
}

} // namespace

QString crystalsWords(Crystals crystals) {
    switch (crystals) {
    case Crystals::none:
        return tr("none");
    case Crystals::few:
        return tr("few");
    case Crystals::many:
        return tr("many");
    case Crystals::covered:
        return tr("covered");
    }
    return {};
}

QString faultWords(WareFault fault) {
    switch (fault) {
    case WareFault::crawled:
        return tr("crawled");
    case WareFault::pinholes:
        return tr("pinholes");
    case WareFault::noCrystals:
        return tr("no crystals");
    case WareFault::tooManySeeds:
        return tr("too many seeds");
    case WareFault::dunting:
        return tr("dunting");
    case WareFault::stuck:
        return tr("stuck");
    case WareFault::dull:
        return tr("dull");
    }
    return {};
}

QStringList allFaultWords() {
    QStringList words;
    for (const auto fault : allFaults)
        words << faultWords(fault);
    return words;
}

QString faultsText(const Outcome& outcome) {
    QStringList words;
    for (const auto fault : outcome.knownFaults)
        words << faultWords(fault);
    if (!outcome.faults.empty())
        words << QString::fromStdString(outcome.faults);
    return words.join(QStringLiteral(", "));
}

void putFaults(const QString& text, Outcome& outcome) {
    outcome.knownFaults.clear();
    QStringList own;
    for (const QString& part : text.split(QLatin1Char(','), Qt::SkipEmptyParts)) {
        const QString word = part.trimmed();
        if (const auto fault = faultMeant(word))
            outcome.knownFaults.insert(*fault);
        else if (!word.isEmpty())
            own << word;
    }
    outcome.faults = own.join(QStringLiteral(", ")).toStdString();
}

QString runOffText(const Outcome& outcome) {
    QStringList parts;
    if (!outcome.runOff.empty())
        parts << QString::fromStdString(outcome.runOff);
    if (outcome.runOff_mm)
        parts << QStringLiteral("%1 mm").arg(*outcome.runOff_mm);
    return parts.join(QStringLiteral(", "));
}

bool putRunOff(const QString& text, Outcome& outcome) {
    static const QRegularExpression measured(
        QStringLiteral("^(.*?)[,;\\s]*(?<![\\w.])(\\d+(?:[.,]\\d+)?)\\s*mm$|^()(\\d+(?:[.,]\\d+)?)$"));
    const auto match = measured.match(text);
    if (!match.hasMatch()) {
        outcome.runOff = text.toStdString();
        outcome.runOff_mm.reset();
        return true;
    }
    const bool bare = match.captured(2).isEmpty();
    QString number = match.captured(bare ? 4 : 2);
    const double length = number.replace(QLatin1Char(','), QLatin1Char('.')).toDouble();
    if (length > longestRun_mm)
        return false;
    outcome.runOff = bare ? std::string() : match.captured(1).trimmed().toStdString();
    outcome.runOff_mm = length;
    return true;
}

bool isJudged(const Outcome& outcome) {
    return outcome.crystals || outcome.largest_mm || outcome.typical_mm || outcome.rings ||
           outcome.runOff_mm || outcome.catcherClean || !outcome.knownFaults.empty() ||
           !(outcome.faults + outcome.grade + outcome.note + outcome.crystalColour + outcome.crystalPicked +
             outcome.groundColour + outcome.groundPicked + outcome.runOff)
                .empty();
}

} // namespace ringhold
