// Takes JSON apart into values, with errors that say which field is wrong. For use within core/exchange:
// unlike the rest of core these throw, and whoever uses them catches.
#pragma once

#include "core/base/result.h"
#include "core/units/time.h"

#include <nlohmann/json.hpp>

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace ringhold {

/// Thrown: why a JSON text is not what it should be.
struct JsonRefusal {
    Error error;
};

/// A JsonRefusal of kind badInput.
[[noreturn]] void refuseJson(std::string what, std::optional<long> line = std::nullopt);

/// The text as JSON; refused with its line when it is none.
nlohmann::json parsedJson(std::string_view text);

/// One object, by the names of its fields. A field that is not there counts as null.
class JsonFields {
  public:
    /// `path` is how errors call the object: "looks[3]", or nothing for the outermost.
    JsonFields(const nlohmann::json& object, std::string path);

    std::string text(const char* key) const;
    double number(const char* key) const;
    std::int64_t integer(const char* key) const;
    bool truth(const char* key) const;
    Instant instant(const char* key) const;
    const nlohmann::json& list(const char* key) const;
    JsonFields object(const char* key) const;

    std::optional<double> maybeNumber(const char* key) const { return maybe(key, &JsonFields::number); }
    std::optional<std::int64_t> maybeInteger(const char* key) const {
        return maybe(key, &JsonFields::integer);
    }
    std::optional<bool> maybeTruth(const char* key) const { return maybe(key, &JsonFields::truth); }
    std::optional<Instant> maybeInstant(const char* key) const { return maybe(key, &JsonFields::instant); }
    std::optional<std::string> maybeText(const char* key) const { return maybe(key, &JsonFields::text); }

    bool has(const char* key) const { return !find(key).is_null(); }
    const nlohmann::json& raw(const char* key) const { return find(key); }
    /// "looks[3].hour"
    std::string pathOf(const char* key) const;

  private:
    template <class T>
    std::optional<T> maybe(const char* key, T (JsonFields::*get)(const char*) const) const {
        return has(key) ? std::optional<T>((this->*get)(key)) : std::nullopt;
    }
    const nlohmann::json& find(const char* key) const;
    [[noreturn]] void refuse(const char* key, const char* wanted) const;

    const nlohmann::json& m_object;
    std::string m_path;
};

} // namespace ringhold
