// What undo and redo on the spread are about: the lines in the order in which they were written, which is not
// that of their times.
#pragma once

#include "core/firing/line_key.h"

#include <optional>
#include <vector>

namespace ringhold {

struct PageLine;

/// Nothing is erased by it: undo strikes a line, redo takes the strike back.
class LineUndo {
  public:
    /// The log as it stands. What was not there before was written last; the first time, lines count as
    /// written in the order of the log. A new line ends what could be redone.
    void see(const std::vector<PageLine>& lines);

    /// To be struck: the part written last that still stands. Nothing when all is struck.
    std::optional<std::vector<LineKey>> undo();
    /// To be restored: the part that undo() gave last.
    std::optional<std::vector<LineKey>> redo();

  private:
    bool stands(const std::vector<LineKey>& keys) const;

    std::vector<LineKey> m_known;
    std::vector<LineKey> m_struck;
    std::vector<std::vector<LineKey>> m_written; ///< looks of one visit at one time are one part
    std::vector<std::vector<LineKey>> m_undone;
};

} // namespace ringhold
