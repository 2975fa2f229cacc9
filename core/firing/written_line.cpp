#include "core/firing/written_line.h"

#include <algorithm>
#include <cctype>
#include <charconv>
#include <cmath>
#include <optional>

namespace ringhold {

namespace {

using Words = std::vector<std::string>;

Error notUnderstood(std::string what) {
    return {ErrorKind::badInput, std::move(what)};
}

std::string_view trimmed(std::string_view text) {
    const auto isBlank = [](char c) { return c == ' ' || c == '\t'; };
    while (!text.empty() && isBlank(text.front()))
        text.remove_prefix(1);
    while (!text.empty() && isBlank(text.back()))
        text.remove_suffix(1);
    return text;
}

Words wordsOf(std::string_view text) {
    Words words;
    for (text = trimmed(text); !text.empty(); text = trimmed(text)) {
        const auto end = std::min(text.find_first_of(" \t"), text.size());
        words.emplace_back(text.substr(0, end));
        text.remove_prefix(end);
    }
    return words;
}

std::string joined(const Words& words) {
    std::string text;
    for (const auto& word : words)
        text += (text.empty() ? "" : " ") + word;
    return text;
}

std::string lower(std::string_view text) {
    std::string result(text);
    std::ranges::transform(result, result.begin(),
                           [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return result;
}

/// All of the text as a number with decimal point or comma.
std::optional<double> number(std::string_view text) {
    std::string plain(text);
    std::ranges::replace(plain, ',', '.');
    double value = 0;
    const auto [end, error] = std::from_chars(plain.data(), plain.data() + plain.size(), value);
    const bool whole = error == std::errc() && end == plain.data() + plain.size();
    return whole && std::isfinite(value) ? std::optional(value) : std::nullopt;
}

} // namespace

std::optional<Instant> readClockTime(std::string_view text, Instant now, const std::string& zone) {
    const bool shape = (text.size() == 5 && text[2] == ':') || (text.size() == 4 && text[1] == ':');
    if (!shape || !std::ranges::all_of(text, [](char c) { return c == ':' || (c >= '0' && c <= '9'); }))
        return std::nullopt;
    const std::string clock = (text.size() == 4 ? "0" : "") + std::string(text);
    for (const int daysBack : {0, 1}) {
        const Instant day = now - std::chrono::hours(24 * daysBack);
        const auto at = parseIso8601(formatInZone(day, zone, "%Y-%m-%d") + "T" + clock, zone);
        if (at && *at <= now)
            return *at;
    }
    return std::nullopt;
}

namespace {

std::optional<Duration> unitOfTime(const std::string& word) {
    if (word == "min" || word == "mins" || word == "minute" || word == "minutes")
        return std::chrono::minutes(1);
    if (word == "h" || word == "hour" || word == "hours")
        return std::chrono::hours(1);
    if (word == "s" || word == "sec" || word == "seconds")
        return std::chrono::seconds(1);
    return std::nullopt;
}

/// Takes the words that say when off the line.
Instant takeWhen(Words& words, const WritingContext& context) {
    const auto n = words.size();
    if (n >= 4 && lower(words[n - 1]) == "ago") {
        const auto amount = number(words[n - 3]);
        const auto unit = unitOfTime(lower(words[n - 2]));
        if (amount && unit && *amount >= 0 && *amount <= 48 * 60) {
            words.resize(n - 3);
            return context.now - durationFromSeconds(*amount * inSeconds(*unit));
        }
    }
    if (n >= 3 && lower(words[n - 2]) == "at") {
        if (const auto at = readClockTime(words[n - 1], context.now, context.zone)) {
            words.resize(n - 2);
            return *at;
        }
    }
    if (n >= 2) {
        if (const auto at = readClockTime(words.front(), context.now, context.zone)) {
            words.erase(words.begin());
            return *at;
        }
    }
    return context.now;
}

Result<WrittenReading> readReading(const Words& words, const WritingContext& context) {
    std::string text;
    for (const auto& word : words)
        text += word;
    bool fahrenheit = context.fahrenheit;
    for (const auto& [ending, isF] :
         {std::pair{"°C", false}, {"°F", true}, {"C", false}, {"F", true}, {"c", false}, {"f", true}})
        if (text.ends_with(ending)) {
            text.erase(text.size() - std::string_view(ending).size());
            fahrenheit = isF;
            break;
        }
    const auto value = number(text);
    if (!value)
        return notUnderstood("a reading is a figure, with °C or °F if it is not the usual one: \"1201\"");
    const auto reading = fahrenheit ? Temperature::fromFahrenheit(*value) : Temperature::fromCelsius(*value);
    if (reading.celsius() < -50 || reading.celsius() > 1800)
        return notUnderstood("no kiln reads " + text + (fahrenheit ? " °F" : " °C"));
    return WrittenReading{reading};
}

Result<WrittenLooks> readLooks(std::string_view text, const WritingContext& context) {
    WrittenLooks result;
    while (!text.empty()) {
        // a comma parts two looks when a blank follows; "3,5" is an hour
        auto end = text.find(", ");
        auto words = wordsOf(text.substr(0, end));
        text = end == std::string_view::npos ? std::string_view() : text.substr(end + 2);
        if (words.size() > 2 && lower(words[1]) == "at")
            words.erase(words.begin() + 1);
        if (words.size() < 2)
            return notUnderstood("a look is a cone and an hour: \"10 3.5\"");
        if (std::ranges::count(context.cones, words[0]) == 0)
            return notUnderstood("cone " + words[0] + " is not in a pack of this firing");
        const auto hour = readHour(joined({words.begin() + 1, words.end()}));
        if (!hour)
            return hour.error();
        result.looks.push_back({words[0], *hour});
    }
    if (result.looks.empty())
        return notUnderstood("a look is a cone and an hour: \"10 3.5\"");
    return result;
}

Result<WrittenSetting> readSetting(const std::string& text) {
    const auto colon = text.find(": ");
    if (colon == std::string::npos || colon == 0 || trimmed(std::string_view(text).substr(colon + 1)).empty())
        return notUnderstood("a setting is a word, a colon and a value: \"damper: half open\"");
    return WrittenSetting{text.substr(0, colon),
                          std::string(trimmed(std::string_view(text).substr(colon + 1)))};
}

template <class What>
Result<WrittenLine> lineOf(Result<What> what, Instant at) {
    if (!what)
        return what.error();
    return WrittenLine{std::move(*what), at};
}

/// Whether the words by themselves are plainly a reading: one figure of three digits or more, or with its
/// unit.
bool looksLikeReading(const Words& words) {
    if (words.empty() || words.size() > 2)
        return false;
    const std::string text = joined(words);
    const bool unit = text.ends_with("C") || text.ends_with("F");
    const auto value = number(words[0]);
    return (words.size() == 1 && value && std::abs(*value) >= 100) ||
           (unit && std::isdigit(static_cast<unsigned char>(text[0])));
}

} // namespace

Result<double> readHour(std::string_view text) {
    std::string word = lower(trimmed(text));
    for (const std::string_view clock : {"o'clock", "o’clock", "oclock"})
        if (word.ends_with(clock))
            word = std::string(trimmed(std::string_view(word).substr(0, word.size() - clock.size())));
    if (word == "standing" || word == "12" || word == "up")
        return 0.0;
    if (word == "down")
        return 6.0;
    if (word == "leaning" || word == "just leaning")
        return 0.5;
    if (const auto half = word.find("½"); half != std::string::npos && half + 2 == word.size())
        word.replace(half, 2, half == 0 ? "0.5" : ".5");
    const auto hour = number(word);
    if (!hour || *hour < 0 || *hour > 6 || std::round(*hour * 2) != *hour * 2)
        return notUnderstood("an hour is 0 (standing) to 6 (down), halves allowed");
    return *hour;
}

Result<WrittenLine> readWrittenLine(std::string_view text, LineKind kind, const WritingContext& context) {
    Words words = wordsOf(text);
    if (words.empty())
        return notUnderstood("nothing is written");
    const Instant at = takeWhen(words, context);
    if (!words.empty() && words.back().ends_with(',')) // "10 1, 5 min ago"
        words.back().pop_back();
    const std::string rest = joined(words);
    switch (kind) {
    case LineKind::note:
        return WrittenLine{WrittenNote{rest}, at};
    case LineKind::reading:
        return lineOf(readReading(words, context), at);
    case LineKind::look:
        return lineOf(readLooks(rest, context), at);
    case LineKind::setting:
        return lineOf(readSetting(rest), at);
    case LineKind::open:
        break;
    }
    if (auto looks = lineOf(readLooks(rest, context), at))
        return looks;
    if (looksLikeReading(words))
        return lineOf(readReading(words, context), at);
    // one word before the colon: "Damper: half", but not "Opened the lid: all is well"
    if (words[0].ends_with(':'))
        if (auto setting = lineOf(readSetting(rest), at))
            return setting;
    return WrittenLine{WrittenNote{rest}, at};
}

} // namespace ringhold
