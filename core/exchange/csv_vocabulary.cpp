#include "core/exchange/csv_vocabulary.h"

#include <algorithm>
#include <array>

namespace ringhold {

namespace {

using Words = std::vector<std::string_view>;
using namespace std::chrono_literals;

bool among(std::string_view word, const Words& words) {
    return std::find(words.begin(), words.end(), word) != words.end();
}

struct TimeUnit {
    Words words;
    Duration length;
};

const std::array<TimeUnit, 3>& timeUnits() {
    static const std::array<TimeUnit, 3> units{
        TimeUnit{{"s", "sec", "secs", "second", "seconds"}, 1s},
        TimeUnit{{"min", "mins", "minute", "minutes"}, 1min},
        TimeUnit{{"h", "hr", "hrs", "hour", "hours"}, 1h},
    };
    return units;
}

bool isTimeUnit(std::string_view word) {
    return std::any_of(timeUnits().begin(), timeUnits().end(),
                       [&](const TimeUnit& unit) { return among(word, unit.words); });
}

bool isColonWord(std::string_view word) {
    return among(word, {"h", "hh", "m", "mm", "s", "ss"});
}

bool isTimeWord(std::string_view word) {
    return among(
        word, {"time", "timestamp", "datetime", "date", "elapsed", "utc", "duration", "clock", "since", "t"});
}

bool isCount(std::string_view word) {
    return !word.empty() && word.find_first_not_of("0123456789") == std::string_view::npos;
}

struct UnitOf {
    Words words;
    Quantity quantity;
    Scale scale;
};

const std::array<UnitOf, 4>& valueUnits() {
    static const std::array<UnitOf, 4> units{
        UnitOf{{"c", "degc", "celsius", "centigrade"}, Quantity::temperature, Scale::asIs},
        UnitOf{{"f", "degf", "fahrenheit"}, Quantity::temperature, Scale::fahrenheit},
        UnitOf{{"v", "volt", "volts", "voltage"}, Quantity::lineVolts, Scale::asIs},
        UnitOf{{"a", "amp", "amps", "ampere", "amperes", "amperage"}, Quantity::lineAmps, Scale::asIs},
    };
    return units;
}

/// "phase A" and "sensor V" name things: a lone letter is an electrical unit only where that is plain.
bool isPlain(const ColumnHeading& heading, std::size_t word, Quantity quantity) {
    if (quantity == Quantity::temperature || heading.words()[word].text.size() > 1)
        return true;
    return heading.isSetOff(word) || heading.any([](const std::string& other) {
        return among(other, {"line", "mains", "supply", "volt", "volts", "voltage", "current", "amps"});
    });
}

struct Suffix {
    std::string_view text;
    Quantity quantity;
    Scale scale = Scale::asIs;
};

/// What Ringhold itself writes behind a label comes first, so that no label can be mistaken for a unit.
constexpr std::array suffixes{
    Suffix{"_C", Quantity::temperature},
    Suffix{"_F", Quantity::temperature, Scale::fahrenheit},
    Suffix{"_V", Quantity::lineVolts},
    Suffix{"_A", Quantity::lineAmps},
    Suffix{"_oxygen_mV", Quantity::oxygenMillivolts},
    Suffix{"_duty", Quantity::duty},
};

std::optional<ValueColumn> bySuffix(const std::string& heading) {
    for (const auto& [suffix, quantity, scale] : suffixes)
        if (heading.size() > suffix.size() && heading.ends_with(suffix))
            return ValueColumn{0, heading, heading.substr(0, heading.size() - suffix.size()), quantity,
                               scale};
    return std::nullopt;
}

/// "60 °C/h" is no temperature.
bool isPerTime(const ColumnHeading& heading, std::size_t unit) {
    const auto& words = heading.words();
    const bool followed =
        unit + 1 < words.size() && (isTimeUnit(words[unit + 1].text) || words[unit + 1].text == "per");
    return followed || heading.has("rate") || heading.has("ramp");
}

/// "temp (°F) of zone C" is in °F: what is surely a unit goes before what only stands last.
std::optional<ValueColumn> byUnit(const ColumnHeading& heading) {
    std::optional<ValueColumn> likely;
    for (const auto& [words, quantity, scale] : valueUnits()) {
        const auto unit = heading.unitAmong(words);
        if (!unit || !isPlain(heading, *unit, quantity) || isPerTime(heading, *unit))
            continue;
        ValueColumn column{0, heading.text(), heading.without(*unit), quantity, scale};
        if (heading.isClear(*unit))
            return column;
        if (!likely)
            likely = std::move(column);
    }
    return likely;
}

std::optional<ValueColumn> byName(const ColumnHeading& heading) {
    const std::string& text = heading.text();
    const bool ofOxygen = heading.any([](const std::string& word) {
        return among(word, {"oxygen", "o2", "lambda"});
    });
    if (ofOxygen && (heading.has("mv") || heading.has("millivolts")))
        return ValueColumn{0, text, text, Quantity::oxygenMillivolts};
    const bool percent = text.find('%') != std::string::npos || heading.has("percent") || heading.has("pct");
    if (heading.has("duty"))
        return ValueColumn{0, text, text, Quantity::duty, percent ? Scale::percent : Scale::asIs};
    return std::nullopt;
}

} // namespace

bool isTime(const ColumnHeading& heading) {
    if (heading.all([](const std::string& word) { return isTimeUnit(word) || isColonWord(word); }))
        return true;
    return heading.any([&](const std::string& word) {
        return isTimeWord(word) && (word != "t" || heading.text() == "t" || heading.any(isTimeUnit));
    });
}

bool isBareTemperature(const ColumnHeading& heading) {
    const auto named = [](const std::string& word) {
        const bool numbered = isCount(std::string_view(word).substr(std::min<std::size_t>(1, word.size())));
        return word.starts_with("temp") || word.starts_with("thermocouple") || word.starts_with("pyro") ||
               (word.front() == 't' && numbered) || word == "tc" ||
               (word.starts_with("tc") && isCount(word.substr(2)));
    };
    const auto probe = [](const std::string& word) { return word.starts_with("probe") || isCount(word); };
    return heading.any(named) || heading.text() == "T" || (heading.all(probe) && !heading.all(isCount));
}

std::optional<ValueColumn> valueColumn(const ColumnHeading& heading) {
    if (auto column = bySuffix(heading.text()))
        return column;
    if (auto column = byUnit(heading))
        return column;
    return byName(heading);
}

std::optional<ValueColumn> columnMeaning(const ColumnHeading& heading, ColumnMeaning meaning) {
    const auto as = [&](Quantity quantity, Scale scale) {
        const auto told = valueColumn(heading);
        const bool same = told && told->quantity == quantity;
        return ValueColumn{0, heading.text(), same ? told->label : heading.text(), quantity, scale};
    };
    switch (meaning) {
    case ColumnMeaning::celsius:
        return as(Quantity::temperature, Scale::asIs);
    case ColumnMeaning::fahrenheit:
        return as(Quantity::temperature, Scale::fahrenheit);
    case ColumnMeaning::volts:
        return as(Quantity::lineVolts, Scale::asIs);
    case ColumnMeaning::amps:
        return as(Quantity::lineAmps, Scale::asIs);
    case ColumnMeaning::oxygenMillivolts:
        return as(Quantity::oxygenMillivolts, Scale::asIs);
    case ColumnMeaning::dutyShare:
        return as(Quantity::duty, Scale::asIs);
    case ColumnMeaning::dutyPercent:
        return as(Quantity::duty, Scale::percent);
    case ColumnMeaning::leftOut:
        break;
    }
    return std::nullopt;
}

bool isSetPoint(const ValueColumn& column) {
    return ColumnHeading(column.label).any([](const std::string& word) {
        return among(word, {"set", "setpoint", "sp", "target"});
    });
}

ValueColumn bareColumn(const ColumnHeading& heading, TemperatureUnit unit) {
    const Scale scale = unit == TemperatureUnit::fahrenheit ? Scale::fahrenheit : Scale::asIs;
    return {0, heading.text(), heading.text(), Quantity::temperature, scale};
}

TimeColumn timeColumn(const ColumnHeading& heading) {
    TimeColumn time{
        0, heading.text(), {}, {}, heading.has("elapsed") || heading.has("since"), heading.has("utc")};
    const bool hours = heading.has("h") || heading.has("hh");
    const bool minutes = heading.has("mm") || heading.has("m");
    const bool seconds = heading.has("ss") || heading.has("s");
    if (minutes) { // "h:mm", "mm:ss": the form of a clock, no unit
        time.elapsed = true;
        time.colons = hours && !seconds   ? ColonForm::hoursMinutes
                      : !hours && seconds ? ColonForm::minutesSeconds
                                          : ColonForm::unsaid;
        return time;
    }
    for (const auto& [words, length] : timeUnits())
        if (heading.unitAmong(words))
            time.unit = length;
    if (time.unit)
        time.elapsed = true;
    if (time.unit == 1h)
        time.colons = ColonForm::hoursMinutes;
    if (time.unit == 1min)
        time.colons = ColonForm::minutesSeconds;
    return time;
}

std::string csvHeaderFor(Quantity quantity, const std::string& label) {
    const auto suffix = std::find_if(suffixes.begin(), suffixes.end(), [&](const Suffix& each) {
        return each.quantity == quantity && each.scale == Scale::asIs;
    });
    return label + std::string(suffix->text);
}

} // namespace ringhold
