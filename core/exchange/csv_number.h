// The number cells of a CSV.
#pragma once

#include "core/base/result.h"

#include <string_view>

namespace ringhold {

/// Reads the numbers of one file, which writes either a decimal point or a decimal comma, never both.
class CsvNumbers {
  public:
    /// Where the comma also parts the cells, "1,904" could be a thousand: it is refused, not guessed.
    explicit CsvNumbers(bool commaSeparated) : m_commaSeparated(commaSeparated) {}

    /// The cell (without blanks around it, not empty) as a finite number, or badInput saying why not.
    Result<double> read(std::string_view cell);

  private:
    Result<double> readWithComma(std::string_view cell);

    bool m_commaSeparated;
    char m_decimal = 0; ///< '.' or ',', once one was seen
};

} // namespace ringhold
