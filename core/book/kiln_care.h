// What the book keeps of service, and of the list that is gone through before lighting a kiln.
#pragma once

#include "core/base/result.h"
#include "core/firing/kiln_records.h"

#include <span>
#include <vector>

namespace ringhold {

class Book;

/// Reads and writes in an open book, under the rules of BookReader and BookWriter.
class KilnCare {
  public:
    explicit KilnCare(const Book& book) : m_book(&book) {}

    Result<std::vector<ServiceEntry>> services(KilnId kiln) const; ///< in time order
    Result<ServiceId> add(const ServiceEntry& entry);
    Status alter(const ServiceEntry& entry);
    Status remove(ServiceId entry);
    Status restore(const ServiceEntry& entry); ///< a removed one, under its old id

    /// How many looks at cold packs a firing has that are not struck.
    Result<int> coldLooks(FiringId firing) const;

    Result<std::vector<ChecklistItem>> checklist() const; ///< by position; empty in a new book
    /// These instead of all that were there. Ids and positions are given anew, in the order of the list.
    Status setChecklist(std::span<const ChecklistItem> items);

  private:
    const Book* m_book;
};

} // namespace ringhold
