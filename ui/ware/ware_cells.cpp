#include "ui/ware/ware_cells.h"

#include <QCoreApplication>

#include <array>

namespace ringhold {

namespace {

constexpr std::array allCrystals{Crystals::none, Crystals::few, Crystals::many, Crystals::covered};
constexpr double widest_mm = 1000; ///< no pot is wider

QString tr(const char* words) {
    return QCoreApplication::translate("WareModel", words);
}

QString of(const std::string& text) {
    return QString::fromStdString(text);
}

std::string* textField(WareColumn column, Piece& piece, Outcome& outcome) {
    switch (column) {
    case WareColumn::piece:
        return &piece.name;
    case WareColumn::glaze:
        return &piece.glaze;
    case WareColumn::shelf:
        return &piece.shelf;
    case WareColumn::faults:
        return &outcome.faults;
    case WareColumn::grade:
        return &outcome.grade;
    case WareColumn::note:
        return &outcome.note;
    default:
        return nullptr;
    }
}

std::optional<Crystals> crystalsMeant(const QVariant& value) {
    bool isNumber = false;
    const int number = value.toInt(&isNumber);
    for (std::size_t i = 0; i < allCrystals.size(); ++i)
        if (isNumber ? number == static_cast<int>(i) : value.toString() == crystalsWords(allCrystals[i]))
            return allCrystals[i];
    return std::nullopt;
}

QString putCrystals(const QVariant& value, Outcome& outcome) {
    if (value.toString().isEmpty()) {
        outcome.crystals.reset();
        return {};
    }
    const auto meant = crystalsMeant(value);
    if (!meant)
        return tr("Crystals are 0 none, 1 few, 2 many or 3 covered.");
    outcome.crystals = meant;
    return {};
}

QString putLargest(QString text, Outcome& outcome) {
    if (text.isEmpty()) {
        outcome.largest_mm.reset();
        return {};
    }
    bool isNumber = false;
    const double size = text.replace(QLatin1Char(','), QLatin1Char('.')).toDouble(&isNumber);
    if (!isNumber || !(size >= 0 && size <= widest_mm))
        return tr("The largest crystal is a number of mm, 0 to 1000.");
    outcome.largest_mm = size;
    return {};
}

QString putRings(const QString& text, Outcome& outcome) {
    if (text.isEmpty()) {
        outcome.rings.reset();
        return {};
    }
    bool isNumber = false;
    const int rings = text.toInt(&isNumber);
    if (!isNumber || rings < 0 || rings > 99)
        return tr("Rings are a count, 0 to 99.");
    outcome.rings = rings;
    return {};
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

bool isJudged(const Outcome& outcome) {
    return outcome.crystals || outcome.largest_mm || outcome.rings || !outcome.faults.empty() ||
           !outcome.grade.empty() || !outcome.note.empty();
}

QString cellText(const Piece& piece, const Outcome& outcome, WareColumn column) {
    switch (column) {
    case WareColumn::crystals:
        return outcome.crystals ? crystalsWords(*outcome.crystals) : QString();
    case WareColumn::largest:
        return outcome.largest_mm ? QString::number(*outcome.largest_mm) : QString();
    case WareColumn::rings:
        return outcome.rings ? QString::number(*outcome.rings) : QString();
    default:
        break;
    }
    Piece pieceCopy = piece;
    Outcome outcomeCopy = outcome;
    const std::string* field = textField(column, pieceCopy, outcomeCopy);
    return field ? of(*field) : QString();
}

bool sameCells(const Piece& piece, const Outcome& outcome, const Piece& other, const Outcome& otherOutcome) {
    bool same = piece.catcher == other.catcher && piece.sagger == other.sagger;
    for (int column = 0; same && column < wareColumns; ++column)
        same = cellText(piece, outcome, static_cast<WareColumn>(column)) ==
               cellText(other, otherOutcome, static_cast<WareColumn>(column));
    return same;
}

QString putIntoCell(const QVariant& value, WareColumn column, Piece& piece, Outcome& outcome) {
    const QString text = value.toString().trimmed();
    switch (column) {
    case WareColumn::catcher:
        piece.catcher = value.toBool();
        return {};
    case WareColumn::sagger:
        piece.sagger = value.toBool();
        return {};
    case WareColumn::crystals:
        return putCrystals(value, outcome);
    case WareColumn::largest:
        return putLargest(text, outcome);
    case WareColumn::rings:
        return putRings(text, outcome);
    case WareColumn::piece:
        if (text.isEmpty())
            return tr("A piece has a name. To take one out of the load, use “Take out”.");
        break;
    default:
        break;
    }
    *textField(column, piece, outcome) = text.toStdString();
    return {};
}

} // namespace ringhold
