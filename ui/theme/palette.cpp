#include "ui/theme/palette.h"

#include <QFile>
#include <QJsonDocument>
#include <QJsonObject>
#include <QJsonParseError>

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

constexpr PaletteRole roles[] = {
    {"table", &Palette::table},
    {"page", &Palette::page},
    {"edge", &Palette::edge},
    {"ink", &Palette::ink},
    {"soft", &Palette::soft},
    {"faint", &Palette::faint},
    {"grid", &Palette::grid},
    {"kiln", &Palette::kiln},
    {"plan", &Palette::plan},
    {"band", &Palette::band},
    {"forecast", &Palette::forecast},
    {"forecastWindow", &Palette::forecastWindow},
    {"forecastText", &Palette::forecastText},
    {"warning", &Palette::warning},
    {"warningGround", &Palette::warningGround},
    {"cone", &Palette::cone},
    {"coneOutline", &Palette::coneOutline},
    {"plaque", &Palette::plaque},
    {"rim", &Palette::rim},
    {"glowHeart", &Palette::glowHeart},
    {"glow", &Palette::glow},
    {"glowEdge", &Palette::glowEdge},
    {"glowText", &Palette::glowText},
    {"hotCone", &Palette::hotCone},
    {"hotConeOutline", &Palette::hotConeOutline},
    {"hotPlaque", &Palette::hotPlaque},
    {"hotGhost", &Palette::hotGhost},
};

Error bad(const QString& what) {
    return {ErrorKind::badInput, what.toStdString()};
}

Result<Palette> paletteFrom(const QJsonObject& colours, const QString& theme) {
    Palette palette;
    for (const auto& role : roles) {
        const QString roleName = QString::fromLatin1(role.name);
        const QString text = colours.value(roleName).toString();
        const QColor colour(text);
        if (!colour.isValid() || !text.startsWith(u'#'))
            return bad(QStringLiteral("%1 has no colour for \"%2\"").arg(theme, roleName));
        palette.*role.colour = colour;
    }
    for (const auto& key : colours.keys())
        if (std::ranges::none_of(roles, [&](const auto& role) { return key == QLatin1String(role.name); }))
            return bad(QStringLiteral("%1 has a colour that nothing uses: \"%2\"").arg(theme, key));
    return palette;
}

double luminance(const QColor& colour) {
    const auto linear = [](double part) {
        return part <= 0.03928 ? part / 12.92 : std::pow((part + 0.055) / 1.055, 2.4);
    };
    return 0.2126 * linear(colour.redF()) + 0.7152 * linear(colour.greenF()) +
           0.0722 * linear(colour.blueF());
}

Palettes loadBuiltIn() {
    QFile file(QStringLiteral(":/palette.json"));
    const bool there = file.open(QIODevice::ReadOnly);
    Q_ASSERT(there); // it is linked in
    auto palettes = parsePalettes(there ? file.readAll() : QByteArray());
    Q_ASSERT(palettes.ok()); // tested
    return palettes.ok() ? *palettes : Palettes{};
}

} // namespace

std::span<const PaletteRole> paletteRoles() {
    return roles;
}

Result<Palettes> parsePalettes(const QByteArray& json) {
    QJsonParseError error;
    const auto document = QJsonDocument::fromJson(json, &error);
    if (!document.isObject())
        return bad(QStringLiteral("no palette file: %1").arg(error.errorString()));
    const auto themes = document.object();
    auto paper = paletteFrom(themes.value(u"paper").toObject(), QStringLiteral("paper"));
    if (!paper.ok())
        return paper.error();
    auto ember = paletteFrom(themes.value(u"ember").toObject(), QStringLiteral("ember"));
    if (!ember.ok())
        return ember.error();
    return Palettes{*paper, *ember};
}

const Palettes& builtInPalettes() {
    static const Palettes palettes = loadBuiltIn();
    return palettes;
}

double contrast(const QColor& one, const QColor& other) {
    const auto [darker, lighter] = std::minmax({luminance(one), luminance(other)});
    return (lighter + 0.05) / (darker + 0.05);
}

} // namespace ringhold
