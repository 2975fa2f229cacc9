// The colours of a theme, each by the part it plays. They come from one file: resources/palette.json.
#pragma once

#include "core/base/result.h"

#include <QColor>

#include <span>

class QByteArray;

namespace ringhold {

/// Soft, forecastText, warning and ink may carry words on any ground of their theme: contrast at least 4.5:1.
struct Palette {
    QColor table, page, edge;                   ///< what the notebook lies on, its paper, the lines around
    QColor ink, soft, faint, grid;              ///< words, lesser words, marks, the curve's grid
    QColor kiln, plan, band;                    ///< what the kiln did, what it should do, a hold's band
    QColor forecast, forecastWindow;            ///< its line, its interval
    QColor forecastText;                        ///< words about it
    QColor warning, warningGround;              ///< words of an alarm, what they stand on
    QColor cone, coneOutline, plaque;           ///< a cone on paper
    QColor rim;                                 ///< around the spyhole
    QColor glowHeart, glow, glowEdge, glowText; ///< inside it, from its middle out; words there
    QColor hotCone, hotConeOutline, hotPlaque, hotGhost; ///< a cone in the glow

    /// Whether words are lighter than the paper.
    bool isDark() const { return ink.lightness() > page.lightness(); }
};

/// A colour's name in the file, and where it goes.
struct PaletteRole {
    const char* name;
    QColor Palette::*colour;
};
std::span<const PaletteRole> paletteRoles();

/// Both themes: paper for daylight and print, ember for a dark kiln shed.
struct Palettes {
    Palette paper;
    Palette ember;
};

/// badInput names what is missing, unknown or no colour ("#rrggbb").
Result<Palettes> parsePalettes(const QByteArray& json);
/// The file built into the program.
const Palettes& builtInPalettes();

/// Contrast of two opaque colours, 1 to 21: (L1 + 0.05) / (L2 + 0.05) of their relative luminances, as the
/// Web Content Accessibility Guidelines 2.1 define it.
double contrast(const QColor& one, const QColor& other);

} // namespace ringhold
