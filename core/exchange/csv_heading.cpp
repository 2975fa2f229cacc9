#include "core/exchange/csv_heading.h"

#include "core/exchange/csv_text.h"

#include <algorithm>
#include <array>

namespace ringhold {

namespace {

bool isUpper(char c) {
    return c >= 'A' && c <= 'Z';
}

bool isDigit(char c) {
    return c >= '0' && c <= '9';
}

/// Letters beyond ASCII are letters too.
bool isLetter(char c) {
    return isUpper(c) || (c >= 'a' && c <= 'z') || static_cast<unsigned char>(c) >= 0x80;
}

/// A character that is written in several bytes and stands for a word or a gap.
struct Sign {
    std::string_view bytes;
    std::string_view degree; ///< "deg" or nothing
    std::string_view letter; ///< of the unit, where it is part of the character
};

constexpr std::array signs{Sign{"\u00B0", "deg", ""},  Sign{"\u00BA", "deg", ""},  Sign{"\u02DA", "deg", ""},
                           Sign{"\u2103", "deg", "c"}, Sign{"\u2109", "deg", "f"}, Sign{"\u00A0", "", ""}};

const Sign* signAt(std::string_view text) {
    for (const Sign& sign : signs)
        if (text.starts_with(sign.bytes))
            return &sign;
    return nullptr;
}

/// Where the word that starts at `begin` ends: at a mark, or where a capital follows small letters or a digit
/// ("lineV", "T1C", but not "mV").
std::size_t wordEnd(std::string_view text, std::size_t begin) {
    std::size_t at = begin;
    for (; at < text.size(); ++at) {
        if ((!isLetter(text[at]) && !isDigit(text[at])) || signAt(text.substr(at)))
            break;
        if (at == begin || !isUpper(text[at]) || isUpper(text[at - 1]))
            continue;
        if (isDigit(text[at - 1]) || (at - begin >= 2 && !isUpper(text[at - 2])))
            break;
    }
    return at;
}

std::vector<HeadingWord> wordsOf(std::string_view text) {
    std::vector<HeadingWord> words;
    for (std::size_t at = 0; at < text.size();) {
        if (const Sign* sign = signAt(text.substr(at))) {
            const std::size_t end = at + sign->bytes.size();
            for (const auto word : {sign->degree, sign->letter})
                if (!word.empty())
                    words.push_back({std::string(word), at, end});
            at = end;
            continue;
        }
        const std::size_t end = wordEnd(text, at);
        if (end > at)
            words.push_back({lowered(text.substr(at, end - at)), at, end});
        at = std::max(end, at + 1);
    }
    return words;
}

} // namespace

std::string lowered(std::string_view text) {
    std::string lower(text);
    for (char& c : lower)
        if (isUpper(c))
            c = static_cast<char>(c - 'A' + 'a');
    return lower;
}

ColumnHeading::ColumnHeading(std::string text) : m_text(std::move(text)), m_words(wordsOf(m_text)) {}

bool ColumnHeading::has(std::string_view word) const {
    return any([&](const std::string& own) { return own == word; });
}

bool ColumnHeading::any(const std::function<bool(const std::string&)>& test) const {
    return std::any_of(m_words.begin(), m_words.end(),
                       [&](const HeadingWord& word) { return test(word.text); });
}

bool ColumnHeading::all(const std::function<bool(const std::string&)>& test) const {
    return !m_words.empty() && std::all_of(m_words.begin(), m_words.end(),
                                           [&](const HeadingWord& word) { return test(word.text); });
}

bool ColumnHeading::followsDegree(std::size_t word) const {
    return word > 0 && (m_words[word - 1].text == "deg" || m_words[word - 1].text == "degrees");
}

bool ColumnHeading::isBracketed(std::size_t word) const {
    const std::size_t begin = m_words[followsDegree(word) ? word - 1 : word].begin;
    const auto before = begin == 0 ? std::string::npos : m_text.find_last_not_of(' ', begin - 1);
    const auto after = m_text.find_first_not_of(' ', m_words[word].end);
    return before != std::string::npos && after != std::string::npos &&
           std::string_view("([{").find(m_text[before]) != std::string_view::npos &&
           std::string_view(")]}").find(m_text[after]) != std::string_view::npos;
}

bool ColumnHeading::isSetOff(std::size_t word) const {
    const std::size_t begin = m_words[word].begin;
    return m_words.size() == 1 || isBracketed(word) ||
           (begin > 0 && std::string_view("_/[(").find(m_text[begin - 1]) != std::string_view::npos);
}

bool ColumnHeading::isClear(std::size_t word) const {
    return m_words[word].text.size() > 2 || followsDegree(word) || isBracketed(word);
}

std::optional<std::size_t> ColumnHeading::unitAmong(const std::vector<std::string_view>& units) const {
    std::optional<std::size_t> last;
    for (std::size_t i = 0; i < m_words.size(); ++i) {
        const std::string& word = m_words[i].text;
        if (std::find(units.begin(), units.end(), word) == units.end())
            continue;
        if (isClear(i))
            return i;
        if (i + 1 == m_words.size())
            last = i;
    }
    return last;
}

std::string ColumnHeading::without(std::size_t word) const {
    const bool last = word + 1 == m_words.size();
    if (!last)
        return m_text;
    const std::string before = m_text.substr(0, m_words[followsDegree(word) ? word - 1 : word].begin);
    const auto end = before.find_last_not_of(" \t([{_-/,;:.");
    return std::string(
        trimmedCell(std::string_view(before).substr(0, end == std::string::npos ? 0 : end + 1)));
}

} // namespace ringhold
