#include "core/instrument/line_decoder.h"

#include "core/instrument/line_fields.h"
#include "core/thermocouple/thermocouple.h"

#include <algorithm>
#include <array>
#include <string>

namespace ringhold {

namespace {

constexpr auto hottest = Temperature::fromCelsius(1800);
constexpr auto coldest = Temperature::fromCelsius(-50);
constexpr double mostVoltsOrAmps = 1000;

std::string_view trimmed(std::string_view line) {
    constexpr std::string_view blanks = " \t\r\n";
    const auto first = line.find_first_not_of(blanks);
    return first == std::string_view::npos ? ""
                                           : line.substr(first, line.find_last_not_of(blanks) - first + 1);
}

/// A label that, without a unit, names something else than a temperature: a time, a count, a unit.
bool namesSomethingElse(const std::string& label) {
    static constexpr std::array<std::string_view, 20> words{
        "time", "date", "s",     "sec", "secs", "second", "seconds", "ms",   "millis", "min",
        "n",    "nr",   "count", "no",  "seq",  "id",     "line",    "duty", "power",  "humidity"};
    std::string word = label;
    std::transform(word.begin(), word.end(), word.begin(),
                   [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
    return lineUnitNamed(label) || std::find(words.begin(), words.end(), word) != words.end();
}

Quantity quantityOf(LineUnit unit) {
    switch (unit) {
    case LineUnit::volts:
        return Quantity::lineVolts;
    case LineUnit::amps:
        return Quantity::lineAmps;
    default:
        return Quantity::temperature;
    }
}

/// A number by itself: it may stand alone on its line, not among others.
bool isNameless(const LineField& field) {
    return field.label.empty() && field.unit == LineUnit::none;
}

bool sameChannel(const LineField& a, const LineField& b) {
    return !isNameless(a) && !isNameless(b) && quantityOf(a.unit) == quantityOf(b.unit) && a.label == b.label;
}

/// A label for those that share a quantity without having one; false when two have the same label.
bool tellApart(std::vector<LineField>& fields) {
    const auto original = fields;
    std::size_t count[3] = {};
    for (std::size_t i = 0; i < fields.size(); ++i) {
        const auto twins = std::count_if(original.begin(), original.end(), [&](const LineField& other) {
            return sameChannel(other, original[i]);
        });
        if (twins > 1 && !original[i].label.empty())
            return false;
        if (twins > 1)
            fields[i].label = std::to_string(++count[static_cast<std::size_t>(quantityOf(fields[i].unit))]);
    }
    return true;
}

} // namespace

std::optional<Temperature> LineDecoder::temperatureOf(const LineField& field) const {
    const double number = *field.number;
    const bool fahrenheit = field.unit == LineUnit::fahrenheit ||
                            (field.unit == LineUnit::none && m_format.bareUnit == BareUnit::fahrenheit);
    auto temperature = fahrenheit ? Temperature::fromFahrenheit(number) : Temperature::fromCelsius(number);
    if (field.unit == LineUnit::millivolts) {
        if (!m_format.thermocouple)
            return std::nullopt;
        const auto hot = measured(*m_format.thermocouple, Millivolts{number}, m_format.coldJunction);
        if (!hot)
            return std::nullopt;
        temperature = *hot;
    }
    return temperature >= coldest && temperature <= hottest ? std::optional(temperature) : std::nullopt;
}

std::optional<LineDecoder::Meaning> LineDecoder::meaningOf(const LineField& field, bool amongOthers) const {
    if ((amongOthers && isNameless(field)) ||
        (field.unit == LineUnit::none && namesSomethingElse(field.label)))
        return std::nullopt;
    const auto quantity = quantityOf(field.unit);
    if (!field.number)
        return Meaning{quantity, std::nullopt};
    if (quantity == Quantity::temperature) {
        const auto temperature = temperatureOf(field);
        return temperature ? std::optional(Meaning{quantity, temperature->celsius()}) : std::nullopt;
    }
    const bool plausible = *field.number >= 0 && *field.number <= mostVoltsOrAmps;
    return plausible ? std::optional(Meaning{quantity, *field.number}) : std::nullopt;
}

DecodedLine LineDecoder::decode(std::string_view line, Instant at) const {
    const auto text = trimmed(line);
    if (text.empty())
        return {{}, true};
    if (line.size() > longestLine)
        return {};
    auto fields = fieldsOf(text, m_format.decimalMark);
    if (!fields || !tellApart(*fields))
        return {};
    DecodedLine decoded{{}, true};
    for (const auto& field : *fields) {
        if (const auto meaning = meaningOf(field, fields->size() > 1))
            decoded.samples.push_back({at, field.label, meaning->quantity, meaning->value});
        else
            decoded.understood = false;
    }
    return decoded;
}

} // namespace ringhold
