// Whole files in and out, with errors fit to be shown. Safe to call from any thread.
#pragma once

#include "core/base/result.h"

#include <cstddef>
#include <filesystem>
#include <string>
#include <string_view>

namespace ringhold {

/// Nothing that Ringhold reads whole is larger than this.
constexpr std::size_t largestFile_bytes = 512u << 20;

/// All bytes of a file or pipe. notFound when it is not there; unreadable for a folder or without permission;
/// badInput when it is larger than `limit_bytes`.
Result<std::string> readFile(const std::filesystem::path& path, std::size_t limit_bytes = largestFile_bytes);

/// Replaces the file by this content or leaves it as it was, whatever happens in between: writes a file
/// beside it, flushes that to the disk and renames it over. A link is followed, permissions stay; what is no
/// regular file (a pipe, /dev/stdout) is written to directly. unwritable when disk, folder or permission
/// refuse.
Status writeFile(const std::filesystem::path& path, std::string_view content);

} // namespace ringhold
