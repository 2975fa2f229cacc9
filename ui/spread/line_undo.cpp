#include "ui/spread/line_undo.h"

#include "ui/spread/log_model.h"

#include <algorithm>

namespace ringhold {

namespace {

template <class T>
std::optional<T> taken(std::vector<T>& from) {
    if (from.empty())
        return std::nullopt;
    T last = std::move(from.back());
    from.pop_back();
    return last;
}

} // namespace

void LineUndo::see(const std::vector<PageLine>& lines) {
    m_struck.clear();
    for (const auto& line : lines) {
        std::vector<LineKey> fresh;
        for (const auto& key : line.keys) {
            if (line.struck)
                m_struck.push_back(key);
            if (std::ranges::count(m_known, key) == 0)
                fresh.push_back(key);
        }
        if (fresh.empty())
            continue;
        m_known.insert(m_known.end(), fresh.begin(), fresh.end());
        m_written.push_back(std::move(fresh));
        m_undone.clear();
    }
}

bool LineUndo::stands(const std::vector<LineKey>& keys) const {
    return std::ranges::any_of(keys,
                               [&](const LineKey& key) { return std::ranges::count(m_struck, key) == 0; });
}

std::optional<std::vector<LineKey>> LineUndo::undo() {
    while (auto last = taken(m_written)) {
        if (!stands(*last))
            continue; // struck by hand already
        m_undone.push_back(*last);
        return last;
    }
    return std::nullopt;
}

std::optional<std::vector<LineKey>> LineUndo::redo() {
    auto last = taken(m_undone);
    if (last)
        m_written.push_back(*last);
    return last;
}

} // namespace ringhold
