// The makers of the verbs, one a file.
#pragma once

#include "app/verbs/verb.h"

namespace ringhold {

std::unique_ptr<Verb> makeEmfVerb();

} // namespace ringhold
