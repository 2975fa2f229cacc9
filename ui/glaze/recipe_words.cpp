#include "ui/glaze/recipe_words.h"

#include "core/glaze/zinc.h"

#include <QCoreApplication>
#include <QStringList>

namespace ringhold {

namespace {

QString tr(const char* words) {
    return QCoreApplication::translate("RecipeWords", words);
}

QString warningWords(RecipeWarning warning) {
    switch (warning) {
    case RecipeWarning::littleSilica:
        return tr("SiO₂ to ZnO is below 2.7.");
    case RecipeWarning::muchSilica:
        return tr("SiO₂ to ZnO is above 3.0.");
    case RecipeWarning::muchAlumina:
        return tr("Al₂O₃ is above 0.05 in the unity formula.");
    case RecipeWarning::stiffAlumina:
        return tr("Al₂O₃ is above 0.15 in the unity formula: too stiff for crystals to grow.");
    case RecipeWarning::noZinc:
        return tr("There is no zinc in it: no zinc silicate can grow.");
    }
    return {};
}

QString sums(const std::vector<RecipeLine>& lines) {
    double hundred = 0, onTop = 0;
    for (const auto& line : lines)
        (line.addition ? onTop : hundred) += line.percent;
    return onTop > 0 ? tr("%1 % and %2 % on top.").arg(hundred, 0, 'g', 5).arg(onTop, 0, 'g', 4)
                     : tr("%1 %.").arg(hundred, 0, 'g', 5);
}

QString moles(const RecipeFigures& figures) {
    QStringList words;
    const auto part = [&](const char* oxide, const QString& shown) {
        if (const auto found = figures.moles.find(oxide); found != figures.moles.end())
            words << QCoreApplication::translate("RecipeWords", "%1 mol %2")
                         .arg(found->second, 0, 'f', 3)
                         .arg(shown);
    };
    part("ZnO", QStringLiteral("ZnO"));
    part("SiO2", QStringLiteral("SiO₂"));
    QString told = words.isEmpty() ? QString() : tr("In 100 g: %1.").arg(words.join(QStringLiteral(", ")));
    const bool whole = figures.unknown.empty(); // a ratio without some of its lines would mislead
    if (whole && figures.silicaToZinc)
        told += QLatin1Char(' ') + tr("SiO₂ to ZnO %1 by mole.").arg(*figures.silicaToZinc, 0, 'f', 2);
    if (whole && figures.unityAlumina)
        told += QLatin1Char(' ') + tr("Al₂O₃ %1 in the unity formula.").arg(*figures.unityAlumina, 0, 'f', 3);
    if (!figures.unknown.empty()) {
        QStringList names;
        for (const auto& name : figures.unknown)
            names << QString::fromStdString(name);
        told += QLatin1Char(' ') +
                tr("Without %1, whose formula is not known.").arg(names.join(QStringLiteral(", ")));
    }
    return told.trimmed();
}

} // namespace

RecipeTold tellRecipe(const std::vector<RecipeLine>& lines) {
    if (lines.empty())
        return {tr("No recipe yet."), {}};
    std::vector<RecipePart> parts;
    for (const auto& line : lines)
        parts.push_back({line.material, line.percent, line.addition, materialOf(line)});
    const auto figures = recipeFigures(parts);
    if (!figures)
        return {sums(lines), QString::fromStdString(figures.error().text())};
    QStringList warnings;
    if (figures->unknown.empty())
        for (const auto warning : figures->warnings)
            warnings << warningWords(warning);
    if (!warnings.isEmpty())
        warnings << tr(
            "Usual by practice: SiO₂ to ZnO 2.7 to 3.0, little Al₂O₃. Glazes outside of it work too.");
    return {(sums(lines) + QLatin1Char(' ') + moles(*figures)).trimmed(), warnings.join(QLatin1Char(' '))};
}

} // namespace ringhold
