// A kiln and its firings in a book, as verbs that write need them.
#pragma once

#include "core/book/book.h"
#include "core/book/reader.h"
#include "core/book/writer.h"

#include <string>

namespace ringhold {

/// The kiln of that name; a new one when the book has none.
Result<Kiln> kilnFor(const Book& book, const std::string& name);

/// The kiln's open firing, or a new one that begins at that instant.
Result<Firing> openFiringFor(const Book& book, const Kiln& kiln, Instant now);

} // namespace ringhold
