#include "core/exchange/csv_rows.h"

namespace ringhold {

CsvRows::CsvRows(std::string_view text, char separator, long line)
    : m_text(text), m_separator(separator), m_line(line), m_rowLine(line) {}

bool CsvRows::next(std::vector<std::string_view>& cells) {
    while (m_at < m_text.size()) {
        m_rowLine = m_line;
        const std::size_t start = m_at;
        if (!row(cells))
            return false;
        const bool blank = cells.size() == 1 && cells[0].find_first_not_of(" \t") == std::string_view::npos;
        if (!blank || m_text[start] == '"')
            return true;
    }
    return false;
}

bool CsvRows::row(std::vector<std::string_view>& cells) {
    cells.clear();
    m_unescaped.clear();
    while (true) {
        const auto found = cell();
        if (!found)
            return false;
        cells.push_back(*found);
        if (cells.size() > mostCells) {
            fail("the row has more than " + std::to_string(mostCells) + " cells", m_rowLine);
            return false;
        }
        if (m_at >= m_text.size())
            return true;
        if (m_text[m_at] != m_separator) {
            endLine();
            return true;
        }
        ++m_at;
    }
}

std::optional<std::string_view> CsvRows::cell() {
    std::size_t first = m_at;
    while (first < m_text.size() && m_text[first] == ' ')
        ++first;
    if (first == m_text.size() || m_text[first] != '"')
        return plainCell();
    m_at = first + 1;
    return quotedCell();
}

bool CsvRows::atCellEnd() const {
    if (m_at >= m_text.size())
        return true;
    const char c = m_text[m_at];
    return c == m_separator || c == '\n' || c == '\r';
}

std::optional<std::string_view> CsvRows::plainCell() {
    const std::size_t start = m_at;
    while (!atCellEnd())
        ++m_at;
    if (m_at - start > longestCell)
        return fail("a cell is longer than any that makes sense", m_line);
    return m_text.substr(start, m_at - start);
}

/// From behind the opening quote to behind the closing one.
std::optional<std::string_view> CsvRows::quotedCell() {
    const long opened = m_line;
    const std::size_t start = m_at;
    bool doubled = false;
    while (true) {
        if (m_at >= m_text.size())
            return fail("a quote is opened here and never closed", opened);
        if (m_at - start > longestCell)
            return fail("a quoted cell is longer than any that makes sense: is the quote closed?", opened);
        const char c = m_text[m_at];
        if (c == '\n' || c == '\r') {
            endLine();
            continue;
        }
        ++m_at;
        if (c != '"')
            continue;
        if (m_at >= m_text.size() || m_text[m_at] != '"')
            break;
        doubled = true;
        ++m_at;
    }
    const std::string_view inside = m_text.substr(start, m_at - 1 - start);
    while (m_at < m_text.size() && m_text[m_at] == ' ')
        ++m_at;
    if (!atCellEnd())
        return fail("there is text behind a closing quote", m_line);
    if (!doubled)
        return inside;
    std::string& text = m_unescaped.emplace_back();
    for (std::size_t i = 0; i < inside.size(); ++i) {
        text += inside[i];
        i += inside[i] == '"';
    }
    return text;
}

void CsvRows::endLine() {
    const bool pair = m_text.substr(m_at).starts_with("\r\n");
    m_at += pair ? 2 : 1;
    ++m_line;
}

std::nullopt_t CsvRows::fail(std::string what, long line) {
    m_error = Error{ErrorKind::badInput, std::move(what), "", line};
    m_at = m_text.size();
    return std::nullopt;
}

namespace {

std::string_view firstLine(std::string_view text) {
    return text.substr(0, text.find_first_of("\r\n"));
}

std::string_view afterFirstLine(std::string_view text) {
    text.remove_prefix(firstLine(text).size());
    if (!text.empty())
        text.remove_prefix(text.starts_with("\r\n") ? 2 : 1);
    return text;
}

bool isPreamble(std::string_view line) {
    const auto start = line.find_first_not_of(" \t");
    return start == std::string_view::npos || line[start] == '#';
}

/// How many cells the first two rows have with this separator; nothing where there is no such row.
struct Cut {
    std::size_t header = 0;
    std::optional<std::size_t> row;
};

Cut cutBy(char separator, std::string_view text) {
    CsvRows rows(text, separator);
    std::vector<std::string_view> cells;
    Cut cut;
    if (rows.next(cells))
        cut.header = cells.size();
    if (rows.next(cells))
        cut.row = cells.size();
    return cut;
}

char separatorOf(std::string_view text) {
    char likely = 0;
    for (const char separator : {'\t', ';', ','}) {
        const Cut cut = cutBy(separator, text);
        if (cut.header < 2)
            continue;
        if (!cut.row || *cut.row == cut.header)
            return separator;
        if (!likely)
            likely = separator;
    }
    return likely ? likely : ',';
}

} // namespace

CsvLayout layoutOf(std::string_view text) {
    CsvLayout layout{text};
    const auto pass = [&] {
        layout.text = afterFirstLine(layout.text);
        ++layout.line;
    };
    while (!layout.text.empty() && isPreamble(firstLine(layout.text)))
        pass();
    const std::string_view line = firstLine(layout.text);
    if (line.size() == 5 && line.starts_with("sep=")) {
        layout.separator = line[4];
        pass();
    } else {
        layout.separator = separatorOf(layout.text);
    }
    return layout;
}

} // namespace ringhold
