#include "core/exchange/base64.h"

#include <array>
#include <cstdint>

namespace ringhold {

namespace {

constexpr std::string_view digits = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
constexpr std::uint8_t noDigit = 0xFF;

constexpr std::array<std::uint8_t, 256> valuesOfDigits() {
    std::array<std::uint8_t, 256> values{};
    values.fill(noDigit);
    for (std::size_t i = 0; i < digits.size(); ++i)
        values[static_cast<unsigned char>(digits[i])] = static_cast<std::uint8_t>(i);
    return values;
}

constexpr auto valueOf = valuesOfDigits();

/// Up to three bytes as four digits, the last ones padded.
void appendGroup(std::string& out, std::string_view bytes) {
    std::uint32_t bits = 0;
    for (std::size_t i = 0; i < 3; ++i)
        bits = bits << 8 | (i < bytes.size() ? static_cast<unsigned char>(bytes[i]) : 0U);
    for (std::size_t i = 0; i < 4; ++i)
        out += i <= bytes.size() ? digits[bits >> (18 - 6 * i) & 63U] : '=';
}

/// Two to four digits as one to three bytes; false when one is none, or a bit that padding leaves over is
/// set.
bool readGroup(std::string& out, std::string_view group) {
    std::uint32_t bits = 0;
    for (std::size_t i = 0; i < 4; ++i) {
        const auto value = i < group.size() ? valueOf[static_cast<unsigned char>(group[i])] : 0;
        if (value == noDigit)
            return false;
        bits = bits << 6 | value;
    }
    for (std::size_t i = 0; i + 1 < group.size(); ++i)
        out += static_cast<char>(bits >> (16 - 8 * i) & 0xFFU);
    return (bits & (0xFFFFFFU >> (8 * (group.size() - 1)))) == 0;
}

} // namespace

std::string base64From(std::string_view bytes) {
    std::string out;
    out.reserve((bytes.size() + 2) / 3 * 4);
    for (std::size_t at = 0; at < bytes.size(); at += 3)
        appendGroup(out, bytes.substr(at, 3));
    return out;
}

std::optional<std::string> bytesFromBase64(std::string_view text) {
    if (text.size() % 4 != 0)
        return std::nullopt;
    for (int padding = 0; padding < 2 && text.ends_with('='); ++padding)
        text.remove_suffix(1);
    std::string out;
    out.reserve(text.size() / 4 * 3 + 2);
    for (std::size_t at = 0; at < text.size(); at += 4)
        if (!readGroup(out, text.substr(at, 4)))
            return std::nullopt;
    return out;
}

} // namespace ringhold
