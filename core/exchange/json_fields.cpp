#include "core/exchange/json_fields.h"

#include "core/exchange/stamp.h"
#include "core/exchange/text_decoding.h"

#include <algorithm>
#include <limits>

namespace ringhold {

using nlohmann::json;

namespace {

std::string kindOf(const json& value) {
    switch (value.type()) {
    case json::value_t::null:
        return "null or missing";
    case json::value_t::string:
        return "a text";
    case json::value_t::boolean:
        return "true or false";
    case json::value_t::array:
        return "a list";
    case json::value_t::object:
        return "an object";
    default:
        return "a number";
    }
}

/// How deep lists and objects stand in each other.
std::size_t depthOf(std::string_view text) {
    std::size_t depth = 0;
    std::size_t deepest = 0;
    bool quoted = false;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        if (c == '\\')
            ++i;
        else if (c == '"')
            quoted = !quoted;
        else if (!quoted && (c == '[' || c == '{'))
            deepest = std::max(deepest, ++depth);
        else if (!quoted && (c == ']' || c == '}') && depth > 0)
            --depth;
    }
    return deepest;
}

constexpr std::size_t greatestDepth = 64; // far more than any firing has, far less than a stack holds

} // namespace

void refuseJson(std::string what, std::optional<long> line) {
    throw JsonRefusal{{ErrorKind::badInput, std::move(what), "", line}};
}

json parsedJson(std::string_view text) {
    if (text.find_first_not_of(" \t\r\n") == std::string_view::npos)
        refuseJson("is empty", 1);
    if (depthOf(text) > greatestDepth)
        refuseJson("has lists within lists deeper than makes sense");
    try {
        return json::parse(text);
    } catch (const json::parse_error& error) {
        const std::size_t read = std::min(error.byte, text.size());
        const bool cut = error.byte > text.size();
        refuseJson(cut ? "the JSON text ends too early" : "this is not JSON",
                   lineAt(text, read == 0 ? 0 : read - 1));
    } catch (const json::exception&) {
        refuseJson("holds a number that is too large");
    }
}

JsonFields::JsonFields(const json& object, std::string path) : m_object(object), m_path(std::move(path)) {
    if (!object.is_object())
        refuseJson((m_path.empty() ? "the file" : m_path) + " must be an object, not " + kindOf(object));
}

const json& JsonFields::find(const char* key) const {
    static const json nothing;
    const auto found = m_object.find(key);
    return found == m_object.end() ? nothing : *found;
}

std::string JsonFields::pathOf(const char* key) const {
    return m_path.empty() ? key : m_path + "." + key;
}

void JsonFields::refuse(const char* key, const char* wanted) const {
    refuseJson(pathOf(key) + " must be " + wanted + ", not " + kindOf(find(key)));
}

std::string JsonFields::text(const char* key) const {
    const json& value = find(key);
    if (!value.is_string())
        refuse(key, "a text");
    return value.get<std::string>();
}

double JsonFields::number(const char* key) const {
    const json& value = find(key);
    if (!value.is_number())
        refuse(key, "a number");
    return value.get<double>();
}

std::int64_t JsonFields::integer(const char* key) const {
    const json& value = find(key);
    if (!value.is_number())
        refuse(key, "a whole number");
    constexpr auto largest = static_cast<std::uint64_t>(std::numeric_limits<std::int64_t>::max());
    if (!value.is_number_integer() || (value.is_number_unsigned() && value.get<std::uint64_t>() > largest))
        refuseJson(pathOf(key) + " must be a whole number, not " + value.dump());
    return value.get<std::int64_t>();
}

bool JsonFields::truth(const char* key) const {
    const json& value = find(key);
    if (!value.is_boolean())
        refuse(key, "true or false");
    return value.get<bool>();
}

Instant JsonFields::instant(const char* key) const {
    const std::string written = text(key);
    const auto stamp = parseStamp(written);
    if (!stamp || !stamp->offset)
        refuseJson(pathOf(key) + " must be a time such as 2026-03-01T20:41:00Z");
    return stamp->civil - *stamp->offset;
}

const json& JsonFields::list(const char* key) const {
    const json& value = find(key);
    if (!value.is_array())
        refuse(key, "a list");
    return value;
}

JsonFields JsonFields::object(const char* key) const {
    return JsonFields(find(key), pathOf(key));
}

} // namespace ringhold
