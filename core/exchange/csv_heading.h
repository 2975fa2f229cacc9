// One cell of a CSV's header, taken to words.
#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace ringhold {

/// A piece of a heading between blanks, brackets and other marks, in lower case ("lineV" has two); a degree
/// sign is the word "deg".
struct HeadingWord {
    std::string text;
    std::size_t begin = 0; ///< bytes within the heading
    std::size_t end = 0;
};

class ColumnHeading {
  public:
    explicit ColumnHeading(std::string text);

    const std::string& text() const { return m_text; }
    const std::vector<HeadingWord>& words() const { return m_words; }

    bool has(std::string_view word) const;
    bool any(const std::function<bool(const std::string&)>& test) const;
    bool all(const std::function<bool(const std::string&)>& test) const; ///< and there is at least one

    /// True when the word, known for a unit, can be nothing else: behind a degree sign, alone in brackets, or
    /// longer than a letter or two.
    bool isClear(std::size_t word) const;

    /// Where the heading gives one of these words as a unit: clearly, or as its last word.
    std::optional<std::size_t> unitAmong(const std::vector<std::string_view>& units) const;

    /// True when the word stands in brackets, behind an underscore or alone: a letter that is surely a unit.
    bool isSetOff(std::size_t word) const;

    /// The heading without that unit when it stands at the end ("top (left)_C": "top (left)"), else all of
    /// it.
    std::string without(std::size_t word) const;

  private:
    bool isBracketed(std::size_t word) const;
    bool followsDegree(std::size_t word) const;

    std::string m_text;
    std::vector<HeadingWord> m_words;
};

/// In lower case, ASCII letters only.
std::string lowered(std::string_view text);

} // namespace ringhold
