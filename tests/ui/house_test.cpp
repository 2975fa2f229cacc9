// Rules of the house that no compiler sees.
#include "tests/support/places.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <regex>
#include <sstream>

namespace ringhold {
namespace {

namespace fs = std::filesystem;

std::string textOf(const fs::path& file) {
    std::ostringstream text;
    text << std::ifstream(file).rdbuf();
    return text.str();
}

std::vector<fs::path> filesIn(const char* folder, const char* extension) {
    std::vector<fs::path> files;
    for (const auto& entry : fs::recursive_directory_iterator(test::sourceFolder() / folder))
        if (entry.path().extension() == extension)
            files.push_back(entry.path());
    return files;
}

/// The text of all tests that look at a model's contract.
std::string contractTests() {
    std::string all;
    for (const auto& file : filesIn("tests", ".cpp"))
        if (const auto text = textOf(file); text.find("QAbstractItemModelTester") != std::string::npos)
            all += text;
    return all;
}

TEST(House, EveryModelIsUnderTheModelTester) {
    const std::regex model(R"(class (\w+) (?:final )?: public QAbstract(?:Item|List|Table)Model)");
    const std::string tests = contractTests();
    int models = 0;
    for (const auto& file : filesIn("ui", ".h")) {
        const std::string text = textOf(file);
        std::smatch found;
        if (!std::regex_search(text, found, model))
            continue;
        ++models;
        // by name, or through its header in a test that asks a view for its model
        const bool told = tests.find(found[1].str()) != std::string::npos ||
                          tests.find(file.filename().string()) != std::string::npos;
        EXPECT_TRUE(told) << found[1] << " in " << file;
    }
    EXPECT_GT(models, 15);
}

TEST(House, NoPartOfTheWindowIsTooBigToOverlook) {
    constexpr auto most = 310;
    for (const char* extension : {".h", ".cpp"})
        for (const auto& file : filesIn("ui", extension)) {
            const std::string text = textOf(file);
            EXPECT_LT(std::ranges::count(text, '\n'), most) << file;
        }
}

} // namespace
} // namespace ringhold
