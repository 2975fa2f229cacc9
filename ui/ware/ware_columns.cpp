#include "ui/ware/ware_columns.h"

#include <QCoreApplication>

#include <array>

namespace ringhold {

namespace {

QString tr(const char* words) {
    return QCoreApplication::translate("WareModel", words);
}

} // namespace

const std::vector<WareColumn>& columnsOf(WareSheet sheet) {
    using enum WareColumn;
    static const std::vector<WareColumn> load{piece, form, clay, glaze, application, shelf, catcher, sagger};
    static const std::vector<WareColumn> outcome{piece,         crystals,     largest, typical,      rings,
                                                 crystalColour, groundColour, runOff,  catcherClean, faults,
                                                 grade,         note,         photos};
    static const std::vector<WareColumn> past{piece, glaze,  shelf, crystals, largest,
                                              rings, faults, grade, note};
    return sheet == WareSheet::load ? load : sheet == WareSheet::outcome ? outcome : past;
}

QString headingOf(WareColumn column) {
    static constexpr std::array headings{QT_TRANSLATE_NOOP("WareModel", "piece"),
                                         QT_TRANSLATE_NOOP("WareModel", "form"),
                                         QT_TRANSLATE_NOOP("WareModel", "clay"),
                                         QT_TRANSLATE_NOOP("WareModel", "glaze"),
                                         QT_TRANSLATE_NOOP("WareModel", "g/cm²"),
                                         QT_TRANSLATE_NOOP("WareModel", "shelf"),
                                         QT_TRANSLATE_NOOP("WareModel", "catcher"),
                                         QT_TRANSLATE_NOOP("WareModel", "sagger"),
                                         QT_TRANSLATE_NOOP("WareModel", "crystals"),
                                         QT_TRANSLATE_NOOP("WareModel", "largest, mm"),
                                         QT_TRANSLATE_NOOP("WareModel", "typical, mm"),
                                         QT_TRANSLATE_NOOP("WareModel", "rings"),
                                         QT_TRANSLATE_NOOP("WareModel", "crystals’ colour"),
                                         QT_TRANSLATE_NOOP("WareModel", "ground’s colour"),
                                         QT_TRANSLATE_NOOP("WareModel", "run-off"),
                                         QT_TRANSLATE_NOOP("WareModel", "catcher off"),
                                         QT_TRANSLATE_NOOP("WareModel", "faults"),
                                         QT_TRANSLATE_NOOP("WareModel", "grade"),
                                         QT_TRANSLATE_NOOP("WareModel", "note"),
                                         QT_TRANSLATE_NOOP("WareModel", "photos")};
    static_assert(headings.size() == wareColumns);
    return tr(headings[static_cast<std::size_t>(column)]);
}

QString hintOf(WareColumn column) {
    switch (column) {
    case WareColumn::glaze:
        return tr("One glaze, or several parted by + or a comma");
    case WareColumn::application:
        return tr("Dry glaze on the surface in g/cm²: 0.12, or weight by area, 24/200");
    case WareColumn::crystals:
        return tr("0 none, 1 few, 2 many, 3 covered");
    case WareColumn::largest:
        return tr("Diameter of the largest crystal, mm");
    case WareColumn::typical:
        return tr("Diameter of a typical crystal, mm");
    case WareColumn::rings:
        return tr("Rings seen");
    case WareColumn::crystalColour:
    case WareColumn::groundColour:
        return tr("In words; F4 picks a colour");
    case WareColumn::runOff:
        return tr("In words, with mm below the foot where it was measured: to the foot, 3 mm");
    case WareColumn::catcherClean:
        return tr("Came off clean: 1 or y yes, 0 or n no");
    case WareColumn::faults:
        return tr(
            "Parted by commas: crawled, pinholes, no crystals, too many seeds, dunting, stuck, dull, or your "
            "own words");
    default:
        return {};
    }
}

bool isTick(WareColumn column) {
    return column == WareColumn::catcher || column == WareColumn::sagger;
}

bool isFigure(WareColumn column) {
    using enum WareColumn;
    return column == application || column == largest || column == typical || column == rings;
}

bool isRepeated(WareColumn column) {
    using enum WareColumn;
    return column == form || column == clay || column == glaze || column == shelf ||
           column == crystalColour || column == groundColour || column == runOff || column == faults ||
           column == grade;
}

} // namespace ringhold
