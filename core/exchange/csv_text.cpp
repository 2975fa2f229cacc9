#include "core/exchange/csv_text.h"

namespace ringhold {

namespace {

constexpr std::string_view noBreakSpace = "\u00A0";

/// True when the text behind its apostrophes is a formula, so that one more apostrophe must guard it.
bool needsGuard(std::string_view text) {
    const auto start = text.find_first_not_of('\'');
    return start != std::string_view::npos && looksLikeFormula(text.substr(start));
}

} // namespace

std::string_view trimmedCell(std::string_view cell) {
    while (true) {
        if (cell.starts_with(' ') || cell.starts_with('\t'))
            cell.remove_prefix(1);
        else if (cell.ends_with(' ') || cell.ends_with('\t'))
            cell.remove_suffix(1);
        else if (cell.starts_with(noBreakSpace))
            cell.remove_prefix(noBreakSpace.size());
        else if (cell.ends_with(noBreakSpace))
            cell.remove_suffix(noBreakSpace.size());
        else
            return cell;
    }
}

std::string shownCell(std::string_view cell) {
    constexpr std::size_t longest = 40;
    std::size_t shown = cell.size();
    if (shown > longest) {
        shown = longest;
        while ((static_cast<unsigned char>(cell[shown]) & 0xC0u) == 0x80u) // not within a UTF-8 character
            --shown;
    }
    std::string text = "\"";
    for (const char c : cell.substr(0, shown))
        text += c == '\n' || c == '\r' || c == '\t' ? ' ' : c;
    return text + (shown < cell.size() ? "…\"" : "\"");
}

bool looksLikeFormula(std::string_view cell) {
    return !cell.empty() && std::string_view("=+-@\t\r").find(cell.front()) != std::string_view::npos;
}

std::string textCell(std::string_view text) {
    std::string cell = needsGuard(text) ? "'" : "";
    cell += text;
    if (cell.find_first_of(",;\t\"\r\n") == std::string::npos && trimmedCell(cell).size() == cell.size())
        return cell;
    std::string quoted = "\"";
    for (const char c : cell)
        quoted += c == '"' ? std::string("\"\"") : std::string(1, c);
    return quoted + "\"";
}

std::string_view plainText(std::string_view cell) {
    if (cell.starts_with('\'') && needsGuard(cell.substr(1)))
        cell.remove_prefix(1);
    return cell;
}

} // namespace ringhold
