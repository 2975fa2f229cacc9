#include "tests/support/places.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <regex>

namespace ringhold {
namespace {

struct Layer {
    const char* folder;
    const char* forbidden; ///< an include that this folder must not have
};

class Layers : public testing::TestWithParam<Layer> {};

TEST_P(Layers, IncludeNothingFromAbove) {
    const std::regex forbidden(GetParam().forbidden);
    int files = 0;
    for (const auto& entry :
         std::filesystem::recursive_directory_iterator(test::sourceFolder() / GetParam().folder)) {
        const auto extension = entry.path().extension();
        if (extension != ".h" && extension != ".cpp")
            continue;
        ++files;
        std::ifstream in(entry.path());
        for (std::string line; std::getline(in, line);)
            EXPECT_FALSE(std::regex_search(line, forbidden)) << entry.path() << ": " << line;
    }
    EXPECT_GT(files, 0);
}

INSTANTIATE_TEST_SUITE_P(House, Layers,
                         testing::Values(Layer{"core", R"(^\s*#\s*include\s*[<"](Q|ui/|app/|qcustomplot))"},
                                         Layer{"ui",
                                               R"(^\s*#\s*include\s*[<"](app/|QSerial|QTcp|QModbus))"}));

} // namespace
} // namespace ringhold
