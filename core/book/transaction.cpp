#include "core/book/transaction.h"

#include "core/book/book.h"
#include "core/book/sql.h"

namespace ringhold {

struct WriteTransaction::Parts {
    explicit Parts(const Book& book)
        : file(book.file()), transaction(book.database(), SQLite::TransactionBehavior::IMMEDIATE) {}
    std::filesystem::path file;
    SQLite::Transaction transaction;
};

WriteTransaction::WriteTransaction(std::unique_ptr<Parts> parts) : m_parts(std::move(parts)) {}
WriteTransaction::WriteTransaction(WriteTransaction&&) noexcept = default;
WriteTransaction& WriteTransaction::operator=(WriteTransaction&&) noexcept = default;
WriteTransaction::~WriteTransaction() = default;

Result<WriteTransaction> WriteTransaction::begin(const Book& book) {
    return sql::guarded(book.file(), [&]() -> Result<WriteTransaction> {
        return WriteTransaction(std::make_unique<Parts>(book));
    });
}

Status WriteTransaction::commit() {
    return sql::guarded(m_parts->file, [&]() -> Status {
        m_parts->transaction.commit();
        return {};
    });
}

} // namespace ringhold
