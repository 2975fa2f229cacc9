#include "app/verbs/kiln_book.h"

namespace ringhold {

Result<Kiln> kilnFor(const Book& book, const std::string& name) {
    auto known = BookReader(book).kilnNamed(name);
    if (!known)
        return known.error();
    if (*known)
        return std::move(**known);
    Kiln kiln;
    kiln.name = name;
    const auto id = BookWriter(book).add(kiln);
    if (!id)
        return id.error();
    kiln.id = *id;
    return kiln;
}

Result<Firing> openFiringFor(const Book& book, const Kiln& kiln, Instant now) {
    auto open = BookReader(book).openFiring(kiln.id);
    if (!open)
        return open.error();
    if (*open)
        return std::move(**open);
    Firing firing;
    firing.kiln = kiln.id;
    firing.title = kiln.name + ", " + formatInZone(now, localZone(), "%F");
    firing.began = now;
    const auto id = BookWriter(book).add(firing);
    if (!id)
        return id.error();
    firing.id = *id;
    return firing;
}

} // namespace ringhold
