#include "core/glaze/formula.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <charconv>
#include <utility>

namespace ringhold {

namespace {

constexpr auto weights = std::to_array<std::pair<std::string_view, double>>({
    {"Ag", 107.87}, {"Al", 26.982}, {"As", 74.922}, {"Au", 196.97}, {"B", 10.81},   {"Ba", 137.33},
    {"Be", 9.0122}, {"Bi", 208.98}, {"C", 12.011},  {"Ca", 40.078}, {"Cd", 112.41}, {"Ce", 140.12},
    {"Cl", 35.45},  {"Co", 58.933}, {"Cr", 51.996}, {"Cu", 63.546}, {"Er", 167.26}, {"F", 18.998},
    {"Fe", 55.845}, {"H", 1.008},   {"K", 39.098},  {"La", 138.91}, {"Li", 6.94},   {"Mg", 24.305},
    {"Mn", 54.938}, {"Mo", 95.95},  {"N", 14.007},  {"Na", 22.990}, {"Nb", 92.906}, {"Nd", 144.24},
    {"Ni", 58.693}, {"O", 15.999},  {"P", 30.974},  {"Pb", 207.2},  {"Pr", 140.91}, {"Rb", 85.468},
    {"S", 32.06},   {"Sb", 121.76}, {"Se", 78.971}, {"Si", 28.085}, {"Sn", 118.71}, {"Sr", 87.62},
    {"Ti", 47.867}, {"V", 50.942},  {"W", 183.84},  {"Y", 88.906},  {"Zn", 65.38},  {"Zr", 91.224},
});

constexpr std::string_view separators = ".,+* ";
constexpr std::string_view raisedDot = "\u00b7";

bool isDigit(char c) {
    return c >= '0' && c <= '9';
}

/// Reads one formula from front to back.
class FormulaReader {
  public:
    explicit FormulaReader(std::string_view text) : m_text(text), m_left(text) {}

    Result<ElementCounts> read() {
        skipSeparators();
        if (m_left.empty())
            return Error{ErrorKind::badInput, "the formula is empty"};
        while (!m_left.empty()) {
            const double moles = isDigit(m_left.front()) ? takeNumber(true) : 1.0;
            while (m_left.starts_with(' '))
                m_left.remove_prefix(1);
            const auto before = m_left.size();
            if (!readGroups(moles, 0) || m_left.size() == before || moles <= 0)
                return Error{ErrorKind::badInput, "cannot read the formula " + std::string(m_text) +
                                                      " at \"" + std::string(m_left.substr(0, 8)) + "\""};
            skipSeparators();
        }
        return m_counts;
    }

  private:
    /// Elements and brackets, up to a separator, a closing bracket or the end.
    bool readGroups(double factor, int depth) {
        while (!m_left.empty() && m_left.front() != ')' && !atSeparator()) {
            if (m_left.front() == '(') {
                if (!readBracket(factor, depth))
                    return false;
            } else if (!readElement(factor)) {
                return false;
            }
        }
        return depth > 0 || m_left.empty() || m_left.front() != ')';
    }

    bool readBracket(double factor, int depth) {
        constexpr int deepest = 4;
        const auto inside = m_left.substr(1);
        const auto close = closingOf(inside);
        if (depth >= deepest || close == std::string_view::npos)
            return false;
        m_left = inside.substr(close + 1);
        const double times = takeSubscript();
        const auto behind = m_left;
        m_left = inside.substr(0, close);
        const bool good = readGroups(factor * times, depth + 1) && m_left.empty() && close > 0 && times > 0;
        m_left = good ? behind : inside;
        return good;
    }

    static std::size_t closingOf(std::string_view inside) {
        int open = 1;
        for (std::size_t i = 0; i < inside.size(); ++i) {
            open += inside[i] == '(' ? 1 : inside[i] == ')' ? -1 : 0;
            if (open == 0)
                return i;
        }
        return std::string_view::npos;
    }

    bool readElement(double factor) {
        const bool two = m_left.size() > 1 && std::islower(static_cast<unsigned char>(m_left[1]));
        const auto symbol = m_left.substr(0, two ? 2 : 1);
        if (!atomicWeight(symbol))
            return false;
        m_left.remove_prefix(symbol.size());
        const double times = takeSubscript();
        m_counts[std::string(symbol)] += factor * times;
        return times > 0;
    }

    double takeSubscript() {
        if (m_left.empty() || !isDigit(m_left.front()))
            return 1;
        return takeNumber(m_left.starts_with("0."));
    }

    /// The number at the front, which begins with a digit.
    double takeNumber(bool decimals) {
        std::size_t length = 0;
        bool dot = false;
        for (; length < m_left.size(); ++length) {
            const bool point = decimals && !dot && m_left[length] == '.' && length + 1 < m_left.size() &&
                               isDigit(m_left[length + 1]);
            if (!isDigit(m_left[length]) && !point)
                break;
            dot = dot || point;
        }
        double number = 0;
        std::from_chars(m_left.data(), m_left.data() + length, number);
        m_left.remove_prefix(length);
        return number;
    }

    bool atSeparator() const {
        return separators.find(m_left.front()) != std::string_view::npos || m_left.starts_with(raisedDot);
    }

    void skipSeparators() {
        while (!m_left.empty() && atSeparator())
            m_left.remove_prefix(m_left.starts_with(raisedDot) ? raisedDot.size() : 1);
    }

    std::string_view m_text;
    std::string_view m_left;
    ElementCounts m_counts;
};

} // namespace

std::optional<double> atomicWeight(std::string_view element) {
    const auto found = std::ranges::find(weights, element, &std::pair<std::string_view, double>::first);
    return found == weights.end() ? std::nullopt : std::optional(found->second);
}

Result<ElementCounts> parseFormula(std::string_view text) {
    return FormulaReader(text).read();
}

double molarMass(const ElementCounts& counts) {
    double mass = 0;
    for (const auto& [element, count] : counts)
        mass += count * atomicWeight(element).value_or(0);
    return mass;
}

} // namespace ringhold
