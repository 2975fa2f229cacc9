#include "core/book/sql.h"

#include <sqlite3.h>

#include <array>

namespace ringhold::sql {

namespace {

struct Plain {
    std::string_view ending; ///< of SQLite's own message
    std::string_view words;
};

constexpr std::array uniqueness{Plain{"kiln.name", "a kiln of that name is in the book already"},
                                Plain{"firing.kiln", "this kiln has an open firing already"},
                                Plain{"'channel_identity'", "this firing has such a channel already"},
                                Plain{"glaze_card.name", "a glaze card of that name is in the book already"},
                                Plain{"pack_cone.pack, pack_cone.cone", "a pack holds each cone once"}};

std::string inPlainWords(const SQLite::Exception& e) {
    const std::string_view message = e.what();
    const auto colon = message.find(": ");
    std::string detail(colon == message.npos ? message : message.substr(colon + 2));
    switch (e.getExtendedErrorCode()) {
    case SQLITE_CONSTRAINT_UNIQUE:
    case SQLITE_CONSTRAINT_PRIMARYKEY:
        for (const auto& plain : uniqueness)
            if (message.ends_with(plain.ending))
                return std::string(plain.words);
        return "that is in the book already (" + detail + ")";
    case SQLITE_CONSTRAINT_FOREIGNKEY:
        return "it refers to, or is referred to by, another line of the book";
    case SQLITE_CONSTRAINT_NOTNULL:
        return "a value is missing or not a number (" + detail + ")";
    default:
        return detail;
    }
}

ErrorKind ioKind(int extended) {
    switch (extended) {
    case SQLITE_IOERR_READ:
    case SQLITE_IOERR_SHORT_READ:
    case SQLITE_IOERR_CORRUPTFS:
        return ErrorKind::unreadable;
    default:
        return ErrorKind::unwritable;
    }
}

} // namespace

Error errorFrom(const SQLite::Exception& e, const std::filesystem::path& file) {
    const std::string name = file.string();
    const std::string message = e.what();
    switch (e.getErrorCode()) {
    case SQLITE_NOTADB:
        return {ErrorKind::foreign, "this is no book", name};
    case SQLITE_CORRUPT:
        return {ErrorKind::unreadable, "the book is damaged (" + message + ")", name};
    case SQLITE_FULL:
        return {ErrorKind::unwritable, "the disk is full", name};
    case SQLITE_READONLY:
    case SQLITE_PERM:
    case SQLITE_CANTOPEN:
        return {ErrorKind::unwritable, "the book cannot be written (" + message + ")", name};
    case SQLITE_IOERR:
        if (e.getExtendedErrorCode() == SQLITE_IOERR_SHMSIZE)
            return {ErrorKind::unwritable, "the disk is full", name};
        return {ioKind(e.getExtendedErrorCode()), "the disk fails (" + message + ")", name};
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
        return {ErrorKind::failed, "another program holds the book", name};
    case SQLITE_CONSTRAINT:
        return {ErrorKind::badInput, inPlainWords(e), name};
    default:
        return {ErrorKind::failed, message, name};
    }
}

} // namespace ringhold::sql
