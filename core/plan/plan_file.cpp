#include "core/plan/plan_file.h"

#include "core/plan/plan_check.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <set>
#include <vector>

namespace ringhold {

namespace {

using nlohmann::json;

constexpr std::size_t largestFile_bytes = 1'000'000;

/// Thrown and caught within this file only: why a text is not a plan.
struct Refusal {
    std::string what;
    std::optional<long> line{};
};

/// Text of the file in an error message: quoted, on one line, and not too long.
std::string inQuotes(const std::string& text) {
    std::string shown = json(text).dump(-1, ' ', true, json::error_handler_t::replace);
    if (shown.size() > 40)
        shown = shown.substr(0, 36) + "...\"";
    return shown;
}

/// Reads the text through once for what the JSON library does not tell otherwise: the line of a mistake, and
/// keys that stand twice.
class FirstReading : public nlohmann::json_sax<json> {
  public:
    explicit FirstReading(std::string_view text) : m_text(text) {}
    std::optional<Refusal> refusal() const { return m_refusal; }

    bool null() override { return true; }
    bool boolean(bool) override { return true; }
    bool number_integer(number_integer_t) override { return true; }
    bool number_unsigned(number_unsigned_t) override { return true; }
    bool number_float(number_float_t, const string_t&) override { return true; }
    bool string(string_t&) override { return true; }
    bool binary(binary_t&) override { return true; }
    bool start_array(std::size_t) override { return true; }
    bool end_array() override { return true; }

    bool start_object(std::size_t) override {
        m_keys.emplace_back();
        return true;
    }
    bool end_object() override {
        m_keys.pop_back();
        return true;
    }
    bool key(string_t& key) override {
        if (m_keys.back().insert(key).second)
            return true;
        m_refusal = Refusal{"the key " + inQuotes(key) + " stands twice in one place"};
        return false;
    }
    bool parse_error(std::size_t position, const std::string& lastToken,
                     const json::exception& error) override {
        constexpr int numberTooLarge = 406; // json.exception.out_of_range.406
        position = std::min(position, m_text.size());
        const long line = 1 + std::ranges::count(m_text.substr(0, position), '\n');
        if (error.id == numberTooLarge)
            m_refusal = Refusal{inQuotes(lastToken) + " is too large a number", line};
        else if (position == m_text.size())
            m_refusal = Refusal{"the JSON text ends too early", line};
        else
            m_refusal = Refusal{"this is not JSON, near: " + surroundings(position), line};
        return false;
    }

  private:
    /// A few characters of the line on either side of a position, made printable.
    std::string surroundings(std::size_t position) const {
        constexpr std::size_t reach = 12;
        const auto lineBegin = m_text.substr(0, position).rfind('\n') + 1;
        const auto begin = std::max(lineBegin, position - std::min(position, reach));
        const auto end = std::min(m_text.find_first_of("\r\n", position), position + reach);
        std::string shown(m_text.substr(begin, end - begin));
        for (char& c : shown)
            if (c < ' ' || c > '~')
                c = '?';
        return shown;
    }

    std::string_view m_text;
    std::vector<std::set<std::string>> m_keys;
    std::optional<Refusal> m_refusal;
};

/// The text as JSON, or a Refusal.
json parsed(std::string_view text) {
    if (text.find_first_not_of(" \t\r\n") == std::string_view::npos)
        throw Refusal{"the file is empty"};
    if (text.find('\0') != std::string_view::npos)
        throw Refusal{"this is not a text file"};
    FirstReading first(text);
    if (!json::sax_parse(text, &first))
        throw first.refusal().value_or(Refusal{"this is not JSON"});
    return json::parse(text);
}

const char* kindOf(const json& value) {
    switch (value.type()) {
    case json::value_t::null:
        return "null";
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

/// An object of which exactly these keys are expected. Every getter is a Refusal when the value is of another
/// kind.
class Fields {
  public:
    Fields(const json& object, const std::string& what, std::initializer_list<const char*> keys)
        : m_object(object) {
        if (!object.is_object())
            throw Refusal{what + " must be an object, not " + kindOf(object)};
        for (const char* key : keys)
            if (!object.contains(key))
                throw Refusal{fmt::format("{} needs {}", what, key)};
        for (const auto& item : object.items())
            if (std::ranges::none_of(keys, [&](const char* key) { return item.key() == key; }))
                throw Refusal{fmt::format("unknown key {} in {}", inQuotes(item.key()), what)};
    }

    const json& list(const char* key) const { return ofKind(key, m_object[key].is_array(), "a list"); }
    std::string text(const char* key) const { return ofKind(key, m_object[key].is_string(), "a text"); }
    double number(const char* key) const { return ofKind(key, m_object[key].is_number(), "a number"); }

    int wholeNumber(const char* key) const {
        const double value = number(key);
        ofKind(key, value == std::trunc(value), "a whole number");
        return static_cast<int>(std::clamp(value, -1e6, 1e6)); // beyond that check() refuses it in any case
    }
    Temperature temperature(const char* key) const { return Temperature::fromCelsius(number(key)); }
    Rate rate() const { return Rate::fromCelsiusPerHour(number("rate_C_per_h")); }
    std::optional<Rate> rateOrNone() const {
        return m_object["rate_C_per_h"].is_null() ? std::nullopt : std::optional(rate());
    }
    Duration minutes(const char* key) const {
        return durationFromMinutes(std::clamp(number(key), -1e6, 1e6)); // beyond that check() refuses it
    }

  private:
    const json& ofKind(const char* key, bool right, const char* kind) const {
        const json& value = m_object[key];
        if (!right)
            throw Refusal{fmt::format("{} must be {}, not {}", key, kind,
                                      value.is_number() ? value.dump() : std::string(kindOf(value)))};
        return value;
    }

    const json& m_object;
};

Step climb(const json& body) {
    const Fields f(body, "climb", {"to_C", "rate_C_per_h"});
    return Climb{f.temperature("to_C"), f.rate()};
}

Step hold(const json& body) {
    const Fields f(body, "hold", {"at_C", "minutes", "band_C"});
    return Hold{f.temperature("at_C"), f.minutes("minutes"),
                TemperatureDifference::fromCelsius(f.number("band_C"))};
}

Step coneWait(const json& body) {
    const Fields f(body, "cone_wait", {"cone", "rate_C_per_h", "set_C", "ceiling_C", "longest_soak_min"});
    return ConeWait{f.text("cone"), f.rate(), f.temperature("set_C"), f.temperature("ceiling_C"),
                    f.minutes("longest_soak_min")};
}

Step drop(const json& body) {
    const Fields f(body, "drop", {"to_C", "rate_C_per_h"});
    return Drop{f.temperature("to_C"), f.rateOrNone()};
}

Step rings(const json& body) {
    const Fields f(body, "rings", {"count", "low_C", "low_min", "high_C", "high_min"});
    return Rings{f.wholeNumber("count"), f.temperature("low_C"), f.minutes("low_min"),
                 f.temperature("high_C"), f.minutes("high_min")};
}

Step cool(const json& body) {
    const Fields f(body, "cool", {"to_C", "rate_C_per_h"});
    return Cool{f.temperature("to_C"), f.rateOrNone()};
}

Step stepFrom(const json& object) {
    static constexpr std::pair<const char*, Step (*)(const json&)> kinds[] = {
        {"climb", climb}, {"hold", hold},   {"cone_wait", coneWait},
        {"drop", drop},   {"rings", rings}, {"cool", cool}};
    static constexpr const char* choice = "climb, hold, cone_wait, drop, rings or cool";
    if (!object.is_object() || object.size() != 1)
        throw Refusal{fmt::format("a step is an object with one key: {}", choice)};
    const auto item = object.begin();
    for (const auto& [name, from] : kinds)
        if (item.key() == name)
            return from(item.value());
    throw Refusal{fmt::format("{} is no step: {}", inQuotes(item.key()), choice)};
}

Plan planFrom(const json& object) {
    const Fields fields(object, "the plan", {"name", "steps"});
    Plan plan{fields.text("name"), {}};
    for (const json& step : fields.list("steps")) {
        try {
            plan.steps.push_back(stepFrom(step));
        } catch (const Refusal& refusal) {
            throw Refusal{fmt::format("step {}: {}", plan.steps.size() + 1, refusal.what)};
        }
    }
    return plan;
}

} // namespace

Result<Plan> parsePlanDraft(std::string_view text, const std::string& fileName) {
    try {
        return planFrom(parsed(text));
    } catch (const Refusal& refusal) {
        return Error{ErrorKind::badInput, refusal.what, fileName, refusal.line};
    }
}

Result<Plan> parsePlan(std::string_view text, const std::string& fileName) {
    auto plan = parsePlanDraft(text, fileName);
    if (!plan)
        return plan;
    if (const Status status = check(*plan); !status)
        return Error{ErrorKind::badInput, status.error().what, fileName};
    return plan;
}

Result<Plan> readPlan(const std::filesystem::path& path) {
    std::error_code error;
    const auto status = std::filesystem::status(path, error);
    if (!std::filesystem::exists(status))
        return Error{ErrorKind::notFound, "there is no such file", path.string()};
    if (std::filesystem::is_directory(status))
        return Error{ErrorKind::badInput, "this is a folder, not a plan file", path.string()};
    std::ifstream in(path, std::ios::binary);
    std::string text(largestFile_bytes + 1, '\0');
    in.read(text.data(), static_cast<std::streamsize>(text.size()));
    if (in.bad() || (in.fail() && !in.eof()))
        return Error{ErrorKind::unreadable, "the file cannot be read", path.string()};
    text.resize(static_cast<std::size_t>(in.gcount()));
    if (text.size() > largestFile_bytes)
        return Error{ErrorKind::badInput, "the file is far too large for a plan", path.string()};
    return parsePlan(text, path.string());
}

} // namespace ringhold
