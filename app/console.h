// Where a verb speaks: results on standard output, complaints on standard error, a line each.
#pragma once

#include "core/base/result.h"

#include <mutex>
#include <ostream>
#include <string>

namespace ringhold {

/// complain() may be called from any thread; `out` belongs to one at a time.
class Console {
  public:
    Console(std::ostream& output, std::ostream& error) : out(output), m_error(error) {}

    /// One line "ringhold: ...", whatever the text holds. A complaint said twice in a row is heard once.
    void complain(std::string text);
    void complain(const Error& error) { complain(error.text()); }

    std::ostream& out;

  private:
    std::mutex m_mutex;
    std::ostream& m_error;
    std::string m_last;
};

} // namespace ringhold
