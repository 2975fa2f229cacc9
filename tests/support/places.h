// Where the tests find what they read and run.
#pragma once

#include <filesystem>

namespace ringhold::test {

/// The project's own folder.
std::filesystem::path sourceFolder();
/// The program that was built with these tests.
std::filesystem::path programFile();

} // namespace ringhold::test
