// What stands in one row of the book, for rows*.cpp alone. All throw: SQLite::Exception, or
// std::runtime_error for a text that stands for nothing.
#pragma once

#include "core/book/record_text.h"
#include "core/book/rows.h"

#include <stdexcept>

namespace ringhold::rows {

using sql::flagIn;
using sql::idIn;
using sql::instantIn;
using sql::maybeDoubleIn;
using sql::maybeInstantIn;
using Row = SQLite::Statement;

inline SQLite::Column at(Row& row, int column) {
    return row.getColumn(column);
}

inline std::string textIn(Row& row, int column) {
    return at(row, column).getString();
}

/// Throws std::runtime_error when there is no value.
template <class T>
T known(const std::optional<T>& value, const std::string& text) {
    if (!value)
        throw std::runtime_error("the book says \"" + text + "\", which stands for nothing known");
    return *value;
}

template <class Id>
std::optional<Id> maybeIdIn(const SQLite::Column& column) {
    return column.isNull() ? std::nullopt : std::optional(idIn<Id>(column));
}

/// A text that is one of a few words.
template <class Enum>
Enum wordIn(Row& row, int column, std::optional<Enum> (*named)(std::string_view)) {
    const std::string text = textIn(row, column);
    return known(named(text), text);
}

/// From this column and the next.
inline std::optional<MapSpot> spotIn(Row& row, int column) {
    const auto x = maybeDoubleIn(at(row, column));
    const auto y = maybeDoubleIn(at(row, column + 1));
    return x && y ? std::optional(MapSpot{*x, *y}) : std::nullopt;
}

inline std::optional<Temperature> maybeCelsiusIn(Row& row, int column) {
    const auto degrees = maybeDoubleIn(at(row, column));
    return degrees ? std::optional(Temperature::fromCelsius(*degrees)) : std::nullopt;
}

} // namespace ringhold::rows
