#include "ui/glaze/growth_words.h"

#include "ui/session/preferences.h"

#include <QCoreApplication>

namespace ringhold {

namespace {

constexpr double mmAcrossPerHour = 2 * 60 / 1000.0; ///< of a µm/min of radius

QString tr(const char* words) {
    return QCoreApplication::translate("GrowthWords", words);
}

QString counted(int count, const char* one, const char* many) {
    return count == 1 ? tr(one) : tr(many).arg(count);
}

QString degrees(double depth_C, const Preferences& preferences) {
    return preferences.difference(TemperatureDifference::fromCelsius(depth_C), 0, false);
}

/// Without the unit.
QString bare(double depth_C, const Preferences& preferences) {
    return QString::number(preferences.shown(TemperatureDifference::fromCelsius(depth_C)), 'f', 0);
}

QString figure(double value, int decimals = 0) {
    return QString::number(value, 'f', decimals);
}

QString publishedWords() {
    const GrowthRate published = publishedGrowthRate();
    return tr("Until then the range of published growth rates is used, dashed here: %1 to %2 µm/min at "
              "best, whatever the glaze.")
        .arg(figure(published.low_um_per_min), figure(published.high_um_per_min));
}

QString missingWords(const GlazeGrowth& growth) {
    if (growth.pieces < fewestGrownPieces || growth.firings < fewestGrownFirings)
        return tr("Not enough yet: %1. It takes %2 pieces from %3 firings, with their largest crystal or, "
                  "better, the radii of their rings.")
            .arg(growth.pieces == 0 ? tr("nothing was measured") : grownFromWords(growth))
            .arg(fewestGrownPieces)
            .arg(fewestGrownFirings);
    return tr("Not enough yet: %1, but they leave the rate unsure by more than a factor of %2.")
        .arg(grownFromWords(growth))
        .arg(widestToldRate);
}

} // namespace

QString grownFromWords(const GlazeGrowth& growth) {
    QString words = tr("%1 from %2")
                        .arg(counted(growth.pieces, "1 piece", "%1 pieces"),
                             counted(growth.firings, "1 firing", "%1 firings"));
    if (growth.rings > 0)
        words += QStringLiteral(", ") + counted(growth.rings, "1 ring", "%1 rings");
    return words;
}

QString growthWords(const GlazeGrowth& growth, const Preferences& preferences) {
    if (!growth.told || !growth.fit)
        return missingWords(growth) + QLatin1Char(' ') + publishedWords();
    const GrowthRate& rate = growth.fit->rate();
    const Bounds best = growth.fit->best90_C();
    const auto at = [&](double celsius) {
        return preferences.temperatureFigure(Temperature::fromCelsius(celsius));
    };
    return tr("Crystals grow fastest at %1 (%2 to %3): %4 µm/min there (%5 to %6), which is %7 mm across in "
              "an hour. From %8; 90 % intervals. The probes’ offsets are taken off, and what is unsure of "
              "them is in the intervals.")
        .arg(preferences.temperature(rate.window.best), at(best.low), at(best.high),
             figure(rate.best_um_per_min), figure(rate.low_um_per_min), figure(rate.high_um_per_min),
             figure(rate.best_um_per_min * mmAcrossPerHour, 1), grownFromWords(growth));
}

QString visibleWords(const VisibleBand& visible, const Preferences& preferences) {
    const QString range =
        tr("%1 (%2 to %3)")
            .arg(degrees(visible.likely_C, preferences), bare(visible.likely90_C.low, preferences),
                 bare(visible.likely90_C.high, preferences));
    const QString answers = counted(visible.answers, "1 answer", "%1 answers");
    if (!visible.told)
        return tr("Which sags show in it is not known yet: %1 so far. At unloading say for each sag whether "
                  "it "
                  "is to be seen. Until then, as an assumption for any glaze, sags of %2 show as often as "
                  "not.")
            .arg(visible.answers == 0 ? tr("no answer") : answers, range);
    return tr("Sags of %1 show in it as often as not, from %2; of those under %3 no more than one in five "
              "shows: ± %3 is the band to alarm on.")
        .arg(range, answers, degrees(visible.offered_C, preferences));
}

} // namespace ringhold
