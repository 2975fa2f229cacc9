// Takes a firing that was handed on into a book, with all that belongs to it.
#pragma once

#include "core/base/result.h"
#include "core/book/reader.h"

#include <optional>
#include <string>
#include <vector>

namespace ringhold {

class Book;

/// What became of a firing that was taken in.
struct TakenFiring {
    FiringId firing{};
    bool newKiln = false;
    /// Glazes whose card the book had already: the book's own stands.
    std::vector<std::string> keptCards{};
    /// It had no end; a firing handed on is over, so it ends with the last thing written in it.
    std::optional<Instant> endedWith{};
};

/// Writes the firing under new ids, all of it or none, in a transaction of its own unless one is open. The
/// kiln is the one of that name, which stays as the book has it; a probe is the kiln's of the same label,
/// type, position and fitting; what is not there yet is made. Errors as BookWriter.
Result<TakenFiring> takeIn(const Book& book, const FiringRecord& record);

/// The firing of the book that is the same one: it has nine in ten of the temperatures at the same instants,
/// to a twentieth of a degree, whatever its kiln and title are now. Of firings without temperatures: the same
/// title, kiln and instant of lighting.
Result<std::optional<FiringSummary>> sameFiring(const Book& book, const FiringRecord& record);

} // namespace ringhold
