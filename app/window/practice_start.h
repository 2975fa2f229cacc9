// Begins a firing on a practice kiln in the window's notebook.
#pragma once

#include "core/base/result.h"

#include <cstdint>

namespace ringhold {

class FiringSession;
class Notebook;
class PracticeInstrument;

struct WindowPractice {
    std::uint64_t seed = 1; ///< which practice kiln
    double speed = 240;     ///< kiln seconds in a second
};

struct PracticeStarted {
    FiringSession* session = nullptr;
    PracticeInstrument* kiln = nullptr; ///< the session owns it
};

/// The practice kiln of that seed is in the book afterwards; a firing of it that was broken off is ended. The
/// hand that looks at the cones belongs to the session.
Result<PracticeStarted> beginPractice(Notebook& notebook, const WindowPractice& practice);

} // namespace ringhold
