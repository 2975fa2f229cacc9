#include "core/exchange/base64.h"

#include <gtest/gtest.h>

#include <random>

namespace ringhold {
namespace {

/// The test vectors of RFC 4648 section 10.
TEST(Base64, GivesWhatTheStandardGives) {
    const std::pair<const char*, const char*> vectors[] = {{"", ""},
                                                           {"f", "Zg=="},
                                                           {"fo", "Zm8="},
                                                           {"foo", "Zm9v"},
                                                           {"foob", "Zm9vYg=="},
                                                           {"fooba", "Zm9vYmE="},
                                                           {"foobar", "Zm9vYmFy"}};
    for (const auto& [bytes, text] : vectors) {
        EXPECT_EQ(base64From(bytes), text);
        EXPECT_EQ(bytesFromBase64(text), bytes);
    }
}

TEST(Base64, KeepsAllBytes) {
    std::mt19937 random(7);
    for (std::size_t size = 0; size < 300; ++size) {
        std::string bytes;
        for (std::size_t i = 0; i < size; ++i)
            bytes += static_cast<char>(random() % 256);
        EXPECT_EQ(bytesFromBase64(base64From(bytes)), bytes);
    }
}

TEST(Base64, RefusesWhatIsNone) {
    for (const char* text :
         {"Z", "Zg", "Zg=", "Z===", "====", "Zg==Zg==", "Zm9v\n", "Zm 9", "Zh==", "Zm9=", "Zm8-", "=Zm8"})
        EXPECT_FALSE(bytesFromBase64(text)) << text;
}

} // namespace
} // namespace ringhold
