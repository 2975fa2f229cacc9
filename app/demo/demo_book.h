// The demo book: the notebook of an invented studio, written by practice kilns.
#pragma once

#include "app/demo/demo_studio.h"
#include "core/base/result.h"
#include "core/book/book.h"

#include <cstddef>
#include <cstdint>
#include <functional>
#include <string>

namespace ringhold {

/// What is told while the book is written: after each firing, its title and how many there are yet to come.
using DemoProgress = std::function<void(const std::string& title, std::size_t left)>;

/// Writes the whole studio into an open book that has no firing yet, all of it or none. badInput for a book
/// with firings. Equal studio and seed, equal book, but for the book's own id; the seed picks noise, looks
/// and ware. Some seconds.
Status writeDemoBook(const Book& book, DemoStudio studio, std::uint64_t seed,
                     const DemoProgress& progress = {});

} // namespace ringhold
