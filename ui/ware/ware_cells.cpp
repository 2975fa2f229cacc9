#include "ui/ware/ware_cells.h"

#include "ui/ware/outcome_words.h"

#include <QCoreApplication>

#include <array>

namespace ringhold {

namespace {

constexpr std::array allCrystals{Crystals::none, Crystals::few, Crystals::many, Crystals::covered};
constexpr double widest_mm = 1000; ///< no pot is wider
constexpr double thickest_g_per_cm2 = 2;

QString tr(const char* words) {
    return QCoreApplication::translate("WareModel", words);
}

std::string* textField(WareColumn column, WareRow& row) {
    switch (column) {
    case WareColumn::piece:
        return &row.piece.name;
    case WareColumn::form:
        return &row.piece.form;
    case WareColumn::clay:
        return &row.piece.clay;
    case WareColumn::glaze:
        return &row.piece.glaze;
    case WareColumn::shelf:
        return &row.piece.shelf;
    case WareColumn::crystalColour:
        return &row.outcome.crystalColour;
    case WareColumn::groundColour:
        return &row.outcome.groundColour;
    case WareColumn::grade:
        return &row.outcome.grade;
    case WareColumn::note:
        return &row.outcome.note;
    default:
        return nullptr;
    }
}

std::string* pickedField(WareColumn column, WareRow& row) {
    return column == WareColumn::crystalColour  ? &row.outcome.crystalPicked
           : column == WareColumn::groundColour ? &row.outcome.groundPicked
                                                : nullptr;
}

std::optional<double> number(QString text) {
    bool isNumber = false;
    const double value = text.replace(QLatin1Char(','), QLatin1Char('.')).toDouble(&isNumber);
    return isNumber ? std::optional(value) : std::nullopt;
}

std::optional<Crystals> crystalsMeant(const QVariant& value) {
    bool isNumber = false;
    const int meant = value.toInt(&isNumber);
    for (std::size_t i = 0; i < allCrystals.size(); ++i)
        if (isNumber ? meant == static_cast<int>(i) : value.toString() == crystalsWords(allCrystals[i]))
            return allCrystals[i];
    return std::nullopt;
}

QString putCrystals(const QVariant& value, Outcome& outcome) {
    const auto meant = crystalsMeant(value);
    if (!meant && !value.toString().isEmpty())
        return tr("Crystals are 0 none, 1 few, 2 many or 3 covered.");
    outcome.crystals = meant;
    return {};
}

QString putDiameter(const QString& text, std::optional<double>& diameter) {
    const auto size = number(text);
    if (!text.isEmpty() && (!size || !(*size >= 0 && *size <= widest_mm)))
        return tr("A crystal’s diameter is a number of mm, 0 to 1000.");
    diameter = size;
    return {};
}

QString putRings(const QString& text, Outcome& outcome) {
    bool isNumber = false;
    const int rings = text.toInt(&isNumber);
    if (!text.isEmpty() && (!isNumber || rings < 0 || rings > 99))
        return tr("Rings are a count, 0 to 99.");
    outcome.rings = text.isEmpty() ? std::nullopt : std::optional(rings);
    return {};
}

/// "0.12", or a weight by an area: "24/200".
QString putApplication(const QString& text, Piece& piece) {
    const QStringList parts = text.split(QLatin1Char('/'));
    auto weight = number(parts.first());
    const auto area = parts.size() == 2 ? number(parts[1]) : std::optional(1.0);
    const bool sound = parts.size() <= 2 && weight && area && *area > 0 && *weight > 0 &&
                       *weight / *area <= thickest_g_per_cm2;
    if (!text.isEmpty() && !sound)
        return tr("The application is dry glaze in g/cm², as 0.12, or weight by area, as 24/200.");
    piece.application_g_per_cm2 = text.isEmpty() ? std::nullopt : std::optional(*weight / *area);
    return {};
}

QString putClean(const QVariant& value, Outcome& outcome) {
    const QString text = value.toString().trimmed();
    if (text.isEmpty())
        outcome.catcherClean.reset();
    else if (text == cleanWords(true) || text == QStringLiteral("1") || text == QStringLiteral("y"))
        outcome.catcherClean = true;
    else if (text == cleanWords(false) || text == QStringLiteral("0") || text == QStringLiteral("n"))
        outcome.catcherClean = false;
    else
        return tr("The catcher came off clean, 1, or not, 0.");
    return {};
}

/// Fields that are more than a text.
QString putValue(const QVariant& value, WareColumn column, WareRow& row) {
    const QString text = value.toString().trimmed();
    switch (column) {
    case WareColumn::catcher:
        row.piece.catcher = value.toBool();
        return {};
    case WareColumn::sagger:
        row.piece.sagger = value.toBool();
        return {};
    case WareColumn::application:
        return putApplication(text, row.piece);
    case WareColumn::crystals:
        return putCrystals(value, row.outcome);
    case WareColumn::largest:
        return putDiameter(text, row.outcome.largest_mm);
    case WareColumn::typical:
        return putDiameter(text, row.outcome.typical_mm);
    case WareColumn::rings:
        return putRings(text, row.outcome);
    case WareColumn::runOff:
        return putRunOff(text, row.outcome) ? QString() : tr("No glaze runs that many mm.");
    case WareColumn::catcherClean:
        return putClean(value, row.outcome);
    case WareColumn::faults:
        putFaults(text, row.outcome);
        return {};
    default:
        return {};
    }
}

QString figure(const std::optional<double>& value) {
    return value ? QString::number(*value, 'g', 4) : QString();
}

} // namespace

QString cleanWords(bool clean) {
    return clean ? tr("clean") : tr("not clean");
}

QString cellText(const WareRow& row, WareColumn column) {
    const auto& outcome = row.outcome;
    switch (column) {
    case WareColumn::application:
        return figure(row.piece.application_g_per_cm2);
    case WareColumn::crystals:
        return outcome.crystals ? crystalsWords(*outcome.crystals) : QString();
    case WareColumn::largest:
        return figure(outcome.largest_mm);
    case WareColumn::typical:
        return figure(outcome.typical_mm);
    case WareColumn::rings:
        return outcome.rings ? QString::number(*outcome.rings) : QString();
    case WareColumn::runOff:
        return runOffText(outcome);
    case WareColumn::catcherClean:
        return outcome.catcherClean ? cleanWords(*outcome.catcherClean) : QString();
    case WareColumn::faults:
        return faultsText(outcome);
    default:
        break;
    }
    WareRow copy = row;
    const std::string* field = textField(column, copy);
    return field ? QString::fromStdString(*field) : QString();
}

std::string pickedColour(const WareRow& row, WareColumn column) {
    WareRow copy = row;
    const std::string* field = pickedField(column, copy);
    return field ? *field : std::string();
}

void pickColour(const std::string& colour, WareColumn column, WareRow& row) {
    if (std::string* field = pickedField(column, row))
        *field = colour;
}

bool sameWare(const WareRow& row, const WareRow& other) {
    bool same = row.piece.catcher == other.piece.catcher && row.piece.sagger == other.piece.sagger &&
                row.piece.spot == other.piece.spot;
    for (int i = 0; same && i < wareColumns; ++i) {
        const auto column = static_cast<WareColumn>(i);
        same = cellText(row, column) == cellText(other, column) &&
               pickedColour(row, column) == pickedColour(other, column);
    }
    return same;
}

QString putIntoCell(const QVariant& value, WareColumn column, WareRow& row) {
    std::string* field = textField(column, row);
    if (!field)
        return putValue(value, column, row);
    const QString text = value.toString().trimmed();
    if (column == WareColumn::piece && text.isEmpty())
        return tr("A piece has a name. To take one out of the load, use “Take out”.");
    *field = text.toStdString();
    return {};
}

} // namespace ringhold
