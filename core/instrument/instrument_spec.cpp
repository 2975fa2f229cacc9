#include "core/instrument/instrument_spec.h"

#include <algorithm>

namespace ringhold {

namespace {

Error badSpec(std::string_view text, const std::string& why) {
    return {ErrorKind::badInput, "the source \"" + std::string(text) + "\" " + why};
}

bool isScheme(std::string_view text) {
    const auto allowed = [](char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-'; };
    return !text.empty() && text.front() >= 'a' && std::all_of(text.begin(), text.end(), allowed);
}

/// Takes what stands before the next `mark` off the front of `rest`.
std::string_view takeUntil(std::string_view& rest, char mark) {
    const auto end = std::min(rest.find(mark), rest.size());
    const auto taken = rest.substr(0, end);
    rest.remove_prefix(std::min(end + 1, rest.size()));
    return taken;
}

} // namespace

Result<InstrumentSpec> parseInstrumentSpec(std::string_view text) {
    const auto colon = text.find(':');
    if (colon == std::string_view::npos || !isScheme(text.substr(0, colon)))
        return badSpec(text, "does not begin with a kind of instrument and a colon, as \"practice:\" does");
    InstrumentSpec spec;
    std::string_view rest = text;
    spec.scheme = takeUntil(rest, ':');
    spec.target = takeUntil(rest, '?');
    while (!rest.empty()) {
        const auto parameter = takeUntil(rest, '&');
        const auto equals = parameter.find('=');
        if (equals == std::string_view::npos || equals == 0)
            return badSpec(text, "has \"" + std::string(parameter) + "\" where name=value should be");
        const bool isNew =
            spec.parameters.emplace(parameter.substr(0, equals), parameter.substr(equals + 1)).second;
        if (!isNew)
            return badSpec(text, "names \"" + std::string(parameter.substr(0, equals)) + "\" twice");
    }
    return spec;
}

} // namespace ringhold
