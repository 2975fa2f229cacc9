// A file that is looked at before it is brought into the book: what it says, what the potter says of it, and
// what would come of it.
#pragma once

#include "core/book/reader.h"
#include "core/exchange/brought_file.h"
#include "core/exchange/csv_preview.h"

#include <filesystem>
#include <optional>
#include <string>

namespace ringhold {

/// Nothing is written. Change what is said, then reckon().
class FileDraft {
  public:
    /// Reads the file whole; errors as readFile(), and badInput for a CSV that cannot even be shown.
    static Result<FileDraft> open(const std::filesystem::path& file);

    const std::filesystem::path& file() const { return m_file; }
    bool isJson() const { return m_json; }

    /// What the potter says, of a CSV and of either.
    CsvOptions options{};
    BroughtAs as{};

    /// What comes of it with all that is said, and whether the book has it already.
    void reckon(const Book& book);

    const CsvPreview& preview() const { return m_preview; }
    /// Nothing while trouble() says why.
    const std::optional<BroughtFile>& brought() const { return m_brought; }
    const std::optional<Error>& trouble() const { return m_trouble; }
    /// The same firing in the book.
    const std::optional<FiringSummary>& known() const { return m_known; }

  private:
    std::filesystem::path m_file;
    std::string m_bytes;
    bool m_json = false;
    CsvPreview m_preview{};
    std::optional<BroughtFile> m_brought;
    std::optional<Error> m_trouble;
    std::optional<FiringSummary> m_known;
};

} // namespace ringhold
