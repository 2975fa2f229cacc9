// Small values on their way into JSON and out of it, for core/exchange alone.
#pragma once

#include "core/exchange/json_fields.h"
#include "core/exchange/stamp.h"
#include "core/firing/records.h"

#include <nlohmann/json.hpp>

namespace ringhold {

template <class Id>
requires std::is_enum_v<Id> nlohmann::ordered_json numberOf(Id id) {
    return static_cast<std::int64_t>(id);
}

inline nlohmann::ordered_json stampOf(Instant at) {
    std::string text;
    appendStamp(text, at);
    return text;
}

template <class T, class Convert>
nlohmann::ordered_json orNull(const std::optional<T>& value, const Convert& convert) {
    return value ? nlohmann::ordered_json(convert(*value)) : nlohmann::ordered_json(nullptr);
}

template <class T>
nlohmann::ordered_json orNull(const std::optional<T>& value) {
    return value ? nlohmann::ordered_json(*value) : nlohmann::ordered_json(nullptr);
}

inline nlohmann::ordered_json degreesOrNull(const std::optional<Temperature>& temperature) {
    return orNull(temperature, [](Temperature t) { return t.celsius(); });
}

inline nlohmann::ordered_json toJson(const MapSpot& spot) {
    return {spot.x, spot.y};
}

template <class Id>
Id idIn(const JsonFields& fields, const char* key) {
    return Id{fields.integer(key)};
}

/// One of a few words; `named` gives nothing for any other.
template <class Enum>
Enum wordIn(const JsonFields& fields, const char* key, std::optional<Enum> (*named)(std::string_view)) {
    const std::string text = fields.text(key);
    const auto value = named(text);
    if (!value)
        refuseJson(fields.pathOf(key) + " is \"" + text + "\", which is not known");
    return *value;
}

inline bool isSet(const JsonFields& fields, const char* key) {
    return fields.maybeTruth(key).value_or(false);
}

inline std::string textOrNothing(const JsonFields& fields, const char* key) {
    return fields.maybeText(key).value_or("");
}

inline std::optional<Temperature> maybeDegrees(const JsonFields& fields, const char* key) {
    const auto celsius = fields.maybeNumber(key);
    return celsius ? std::optional(Temperature::fromCelsius(*celsius)) : std::nullopt;
}

/// A whole number from 0 to a million.
inline std::optional<int> maybeCount(const JsonFields& fields, const char* key, const char* ofWhat) {
    const auto count = fields.maybeInteger(key);
    if (count && (*count < 0 || *count > 1'000'000))
        refuseJson(fields.pathOf(key) + " is no " + ofWhat);
    return count ? std::optional(static_cast<int>(*count)) : std::nullopt;
}

inline int countIn(const JsonFields& fields, const char* key, const char* ofWhat) {
    const auto count = maybeCount(fields, key, ofWhat);
    return count ? *count : static_cast<int>(fields.integer(key));
}

/// Two numbers in a list.
inline std::pair<double, double> pairIn(const nlohmann::json& list, const std::string& path) {
    if (!list.is_array() || list.size() != 2 || !list[0].is_number() || !list[1].is_number())
        refuseJson(path + " must be a list of two numbers");
    return {list[0].get<double>(), list[1].get<double>()};
}

inline std::optional<MapSpot> maybeSpot(const JsonFields& fields, const char* key) {
    if (!fields.has(key))
        return std::nullopt;
    const auto [x, y] = pairIn(fields.raw(key), fields.pathOf(key));
    return MapSpot{x, y};
}

} // namespace ringhold
