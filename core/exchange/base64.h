// Bytes as text, for pictures within JSON.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace ringhold {

/// Base64 after RFC 4648 section 4: with padding, without line breaks.
std::string base64From(std::string_view bytes);

/// The bytes again; nothing for what base64From() cannot have made.
std::optional<std::string> bytesFromBase64(std::string_view text);

} // namespace ringhold
