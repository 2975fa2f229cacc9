#include "core/instrument/line_fields.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

namespace ringhold {

namespace {

constexpr std::size_t longestLabel = 40;

bool isDigit(char c) {
    return c >= '0' && c <= '9';
}

bool isLetter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

bool isBlank(char c) {
    return c == ' ' || c == '\t';
}

char lower(char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

bool equalIgnoringCase(std::string_view a, std::string_view b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                      [](char x, char y) { return lower(x) == lower(y); });
}

/// A number as it was written, and how its decimals were marked.
struct WrittenNumber {
    double value = 0;
    char mark = 0; ///< '.', ',' or 0 when there are no decimals
    std::size_t wholeDigits = 0;
    std::size_t decimals = 0;
};

/// Reads a line from left to right. Every take...() either takes what it is named for, or leaves all as it
/// was.
class Scanner {
  public:
    explicit Scanner(std::string_view text) : m_text(text) {}

    bool atEnd() const { return m_at == m_text.size(); }
    char peek(std::size_t ahead = 0) const {
        return m_at + ahead < m_text.size() ? m_text[m_at + ahead] : '\0';
    }

    bool takeBlanks() {
        const auto from = m_at;
        while (isBlank(peek()))
            ++m_at;
        return m_at > from;
    }

    template <class Is>
    std::string_view takeWhile(Is is) {
        const auto from = m_at;
        while (!atEnd() && is(m_text[m_at]))
            ++m_at;
        return m_text.substr(from, m_at - from);
    }

    bool take(std::string_view word) {
        if (m_text.substr(m_at, word.size()) != word)
            return false;
        m_at += word.size();
        return true;
    }

    std::string_view takeLabel();
    std::optional<WrittenNumber> takeNumber();
    std::optional<LineUnit> takeUnit();
    bool takeOpen();
    bool takeSeparator();

  private:
    bool atBoundary() const { return atEnd() || isBlank(peek()) || peek() == ',' || peek() == ';'; }
    void takeDegreeSign();
    bool leadsToLabel();
    std::size_t takeExponent();

    std::string_view m_text;
    std::size_t m_at = 0;
};

std::string_view Scanner::takeLabel() {
    const auto from = m_at;
    const auto isPart = [](char c) {
        return isLetter(c) || isDigit(c) || c == ' ' || c == '_' || c == '-' || c == '.' || c == '/' ||
               c == '#';
    };
    if (isLetter(peek())) {
        auto label = takeWhile(isPart);
        while (!label.empty() && label.back() == ' ')
            label.remove_suffix(1);
        takeBlanks();
        if ((take("=") || take(":")) && label.size() <= longestLabel) {
            takeBlanks();
            return label;
        }
    }
    m_at = from;
    return {};
}

std::size_t Scanner::takeExponent() {
    const auto from = m_at;
    if (take("e") || take("E")) {
        if (peek() == '+' || peek() == '-')
            ++m_at;
        if (takeWhile(isDigit).empty())
            m_at = from;
    }
    return m_at - from;
}

std::optional<WrittenNumber> Scanner::takeNumber() {
    const auto from = m_at;
    const bool plus = take("+");
    if (!plus)
        take("-");
    WrittenNumber number;
    number.wholeDigits = takeWhile(isDigit).size();
    if (peek() == '.' || (peek() == ',' && isDigit(peek(1)))) {
        number.mark = peek();
        ++m_at;
        number.decimals = takeWhile(isDigit).size();
    }
    takeExponent();
    std::string written(m_text.substr(from, m_at - from));
    std::replace(written.begin(), written.end(), ',', '.');
    const char* begin = written.data() + (plus ? 1 : 0);
    const char* end = written.data() + written.size();
    const auto [stopped, error] = std::from_chars(begin, end, number.value);
    const bool sound =
        number.wholeDigits > 0 && error == std::errc() && stopped == end && std::isfinite(number.value);
    if (sound)
        return number;
    m_at = from;
    return std::nullopt;
}

void Scanner::takeDegreeSign() {
    if (take("\xC2\xB0") || take("\xB0") || take("deg"))
        takeBlanks();
}

std::optional<LineUnit> Scanner::takeUnit() {
    const auto from = m_at;
    takeBlanks();
    const auto sign = m_at;
    takeDegreeSign();
    const bool withSign = m_at > sign;
    const auto unit = lineUnitNamed(takeWhile(isLetter));
    const bool ofDegrees = unit == LineUnit::celsius || unit == LineUnit::fahrenheit;
    if (unit && (ofDegrees || !withSign) && atBoundary() && !leadsToLabel())
        return unit;
    m_at = from;
    return std::nullopt;
}

/// Whether what was just read as a unit is the label of the next field: "1043.2 C = 5".
bool Scanner::leadsToLabel() {
    const auto from = m_at;
    takeBlanks();
    const bool leads = peek() == '=' || peek() == ':';
    m_at = from;
    return leads;
}

bool Scanner::takeOpen() {
    const auto from = m_at;
    if (equalIgnoringCase(takeWhile(isLetter), "open") && atBoundary())
        return true;
    m_at = from;
    return false;
}

bool Scanner::takeSeparator() {
    const bool blanks = takeBlanks();
    const bool mark = take(",") || take(";");
    takeBlanks();
    return blanks || mark;
}

/// In automatic reading a decimal comma must not be open to another reading: grouped thousands ("1,043"), or,
/// in a number by itself, two values ("1043,25").
bool isClear(const WrittenNumber& number, bool byItself, DecimalMark mark) {
    if (number.mark == ',' && mark == DecimalMark::automatic) {
        const bool thousands = number.decimals == 3 && number.wholeDigits <= 3;
        return !thousands && !(byItself && number.decimals != 1);
    }
    const char forbidden = mark == DecimalMark::comma ? '.' : mark == DecimalMark::point ? ',' : '\0';
    return number.mark == '\0' || number.mark != forbidden;
}

class FieldReader {
  public:
    FieldReader(std::string_view line, DecimalMark mark) : m_scanner(line), m_mark(mark) {}

    std::optional<std::vector<LineField>> readAll() {
        std::vector<LineField> fields;
        m_scanner.takeBlanks();
        while (!m_scanner.atEnd()) {
            auto field = readOne();
            if (!field || (!m_scanner.takeSeparator() && !m_scanner.atEnd()))
                return std::nullopt;
            fields.push_back(std::move(*field));
        }
        const bool bothMarks = m_points && m_commas;
        return fields.empty() || bothMarks ? std::nullopt : std::optional(std::move(fields));
    }

  private:
    std::optional<LineField> readOne() {
        LineField field;
        field.label = m_scanner.takeLabel();
        if (m_scanner.takeOpen())
            return field;
        const auto number = m_scanner.takeNumber();
        if (!number)
            return std::nullopt;
        field.number = number->value;
        const auto unit = m_scanner.takeUnit();
        field.unit = unit.value_or(LineUnit::none);
        m_points = m_points || number->mark == '.';
        m_commas = m_commas || number->mark == ',';
        const bool byItself = field.label.empty() && !unit;
        return isClear(*number, byItself, m_mark) ? std::optional(std::move(field)) : std::nullopt;
    }

    Scanner m_scanner;
    DecimalMark m_mark;
    bool m_points = false;
    bool m_commas = false;
};

} // namespace

std::optional<LineUnit> lineUnitNamed(std::string_view word) {
    struct Named {
        std::string_view word;
        LineUnit unit;
    };
    static constexpr std::array units{Named{"C", LineUnit::celsius}, Named{"F", LineUnit::fahrenheit},
                                      Named{"mV", LineUnit::millivolts}, Named{"V", LineUnit::volts},
                                      Named{"A", LineUnit::amps}};
    for (const auto& named : units)
        if (equalIgnoringCase(named.word, word))
            return named.unit;
    return std::nullopt;
}

std::optional<std::vector<LineField>> fieldsOf(std::string_view line, DecimalMark mark) {
    return FieldReader(line, mark).readAll();
}

} // namespace ringhold
