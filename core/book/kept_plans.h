// The potter's own plans, kept in the book in the order that the potter gave them.
#pragma once

#include "core/base/result.h"
#include "core/plan/plan.h"

#include <span>
#include <vector>

namespace ringhold {

class BookReader;
class BookWriter;

/// None in a new book. Plans that do not pass check() are among them, as they were left. unreadable: what the
/// book holds is no list of plans; nothing should then be kept over it.
Result<std::vector<Plan>> keptPlans(const BookReader& reader);

/// These instead of all that were kept before. badInput: a plan has a value that is not finite.
Status keepPlans(BookWriter& writer, std::span<const Plan> plans);

} // namespace ringhold
