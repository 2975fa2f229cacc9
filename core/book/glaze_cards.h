// The glaze cards in the book.
#pragma once

#include "core/base/result.h"
#include "core/glaze/glaze_card.h"

#include <optional>
#include <string_view>
#include <vector>

namespace ringhold {

class Book;

/// Reads and writes cards in an open book, under the rules of BookReader and BookWriter.
class GlazeCards {
  public:
    explicit GlazeCards(const Book& book) : m_book(&book) {}

    Result<std::vector<GlazeCard>> all() const; ///< by name
    /// Upper and lower case of unaccented letters are the same.
    Result<std::optional<GlazeCard>> named(std::string_view name) const;

    /// The id in the card is not looked at; the new one is given back. badInput: a card of that name is
    /// there.
    Result<GlazeCardId> add(const GlazeCard& card);
    Status alter(const GlazeCard& card);
    Status remove(GlazeCardId card);       ///< pieces keep the glaze's name
    Status restore(const GlazeCard& card); ///< a removed one, under its old id

  private:
    const Book* m_book;
};

} // namespace ringhold
