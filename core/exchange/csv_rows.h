// Cuts separated text into rows and cells, after RFC 4180 and a little beyond it: any separator, CR LF, LF or
// CR, blanks around quotes, blank lines passed over.
#pragma once

#include "core/base/result.h"

#include <cstddef>
#include <deque>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace ringhold {

class CsvRows {
  public:
    static constexpr std::size_t longestCell = 65'536; ///< bytes
    static constexpr std::size_t mostCells = 1'024;    ///< in a row

    /// The text (UTF-8) must outlive the rows; `line` is the number of its first line.
    CsvRows(std::string_view text, char separator, long line = 1);

    /// Puts the next row that is not blank into `cells`, which stay valid until the next call. False at the
    /// end and when the text is broken: see error().
    bool next(std::vector<std::string_view>& cells);

    /// The line that the row last given begins in.
    long line() const { return m_rowLine; }

    /// Why next() gave up, when it was not the end: a quote never closed, a cell or row beyond all measure.
    const std::optional<Error>& error() const { return m_error; }

  private:
    std::optional<std::string_view> plainCell();
    std::optional<std::string_view> quotedCell();
    std::optional<std::string_view> cell();
    bool row(std::vector<std::string_view>& cells);
    void endLine();
    std::nullopt_t fail(std::string what, long line);
    bool atCellEnd() const;

    std::string_view m_text;
    std::size_t m_at = 0;
    char m_separator;
    long m_line;
    long m_rowLine;
    std::deque<std::string> m_unescaped; ///< cells of this row that had doubled quotes
    std::optional<Error> m_error;
};

/// Where the header row begins and what parts the cells of a text.
struct CsvLayout {
    std::string_view text; ///< from the header row on
    long line = 1;         ///< of the header row
    char separator = ',';
};

/// Passes over blank lines, lines that begin with '#' and a spreadsheet's "sep=;" line, and tells separators
/// apart by which of tab, semicolon and comma cuts the header and the row below it alike.
CsvLayout layoutOf(std::string_view text);

} // namespace ringhold
