// From the bytes of a text file, whatever wrote it, to plain UTF-8.
#pragma once

#include "core/base/result.h"

#include <cstddef>
#include <string>
#include <string_view>

namespace ringhold {

/// The text as UTF-8 without byte order mark. Taken are UTF-8, UTF-16 with its mark, and Latin-1 (whatever is
/// not valid UTF-8). badInput with a line when it is no text: control characters, half a UTF-16 character.
Result<std::string> decodeText(std::string bytes);

/// The line, from 1, that a place in a text is in; lines end with CR LF, LF or CR.
long lineAt(std::string_view text, std::size_t offset);

} // namespace ringhold
