// The window: the notebook on screen.
#pragma once

#include "app/window/practice_start.h"

#include <filesystem>
#include <optional>

namespace ringhold {

/// Whether there is something to show a window on.
bool hasDisplay();

/// Opens the book (made if need be), goes on with firings that have not ended, and shows the window until it
/// is closed.
Status runWindow(const std::filesystem::path& book, const std::optional<WindowPractice>& practice);

/// The book last used, or the one in the user's data folder, which is made if need be.
Result<std::filesystem::path> usualBook();

} // namespace ringhold
