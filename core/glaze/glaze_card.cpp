#include "core/glaze/glaze_card.h"

namespace ringhold {

std::vector<std::string> glazeNames(std::string_view piecesGlaze) {
    std::vector<std::string> names;
    while (!piecesGlaze.empty()) {
        const auto end = std::min(piecesGlaze.find_first_of("+,;"), piecesGlaze.size());
        const auto name = piecesGlaze.substr(0, end);
        const auto first = name.find_first_not_of(' ');
        if (first != name.npos)
            names.emplace_back(name.substr(first, name.find_last_not_of(' ') - first + 1));
        piecesGlaze.remove_prefix(std::min(end + 1, piecesGlaze.size()));
    }
    return names;
}

} // namespace ringhold
