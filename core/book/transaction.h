// Several changes that come into the book together or not at all.
#pragma once

#include "core/base/result.h"

#include <memory>

namespace ringhold {

class Book;

/// Rolls back unless committed. One at a time for an open book; everything that BookWriter does meanwhile
/// belongs to it. The book must outlive it.
class WriteTransaction {
  public:
    /// Holds the book for writing from now on; failed when another program has it.
    static Result<WriteTransaction> begin(const Book& book);
    WriteTransaction(WriteTransaction&&) noexcept;
    WriteTransaction& operator=(WriteTransaction&&) noexcept;
    ~WriteTransaction();

    /// Everything is on the disk when this succeeds; nothing is in the book when it fails.
    Status commit();

  private:
    struct Parts;
    explicit WriteTransaction(std::unique_ptr<Parts> parts);
    std::unique_ptr<Parts> m_parts;
};

} // namespace ringhold
