#include "core/instrument/spec_text.h"

namespace ringhold {

Result<std::string> specText(const InstrumentSpec& spec) {
    if (spec.target.find('?') != std::string::npos)
        return Error{ErrorKind::badInput, "a name with a question mark cannot be used: " + spec.target};
    std::string text = spec.scheme + ":" + spec.target;
    char mark = '?';
    for (const auto& [name, value] : spec.parameters) {
        if (value.find('&') != std::string::npos)
            return Error{ErrorKind::badInput, "a value with an ampersand cannot be used: " + value};
        text += mark + name + "=" + value;
        mark = '&';
    }
    return text;
}

} // namespace ringhold
