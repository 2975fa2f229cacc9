#include "core/exchange/text_decoding.h"

#include <algorithm>
#include <cstdint>

namespace ringhold {

namespace {

constexpr char32_t unknownCharacter = 0xFFFD;

void appendUtf8(std::string& out, char32_t c) {
    const auto byte = [&](char32_t value) { out += static_cast<char>(value); };
    if (c < 0x80) {
        byte(c);
    } else if (c < 0x800) {
        byte(0xC0 | c >> 6);
        byte(0x80 | (c & 0x3F));
    } else if (c < 0x10000) {
        byte(0xE0 | c >> 12);
        byte(0x80 | (c >> 6 & 0x3F));
        byte(0x80 | (c & 0x3F));
    } else {
        byte(0xF0 | c >> 18);
        byte(0x80 | (c >> 12 & 0x3F));
        byte(0x80 | (c >> 6 & 0x3F));
        byte(0x80 | (c & 0x3F));
    }
}

/// How many bytes the UTF-8 character at the start of `s` has; 0 when it is none. RFC 3629, section 4.
std::size_t utf8Length(std::string_view s) {
    const auto byte = [&](std::size_t i) { return i < s.size() ? static_cast<unsigned char>(s[i]) : 0u; };
    const auto tail = [&](std::size_t i) { return (byte(i) & 0xC0u) == 0x80u; };
    const unsigned lead = byte(0);
    if (lead < 0x80)
        return 1;
    if (lead >= 0xC2 && lead <= 0xDF)
        return tail(1) ? 2 : 0;
    if (lead >= 0xE0 && lead <= 0xEF) {
        const bool overlong = lead == 0xE0 && byte(1) < 0xA0;
        const bool surrogate = lead == 0xED && byte(1) >= 0xA0;
        return tail(1) && tail(2) && !overlong && !surrogate ? 3 : 0;
    }
    if (lead >= 0xF0 && lead <= 0xF4) {
        const bool overlong = lead == 0xF0 && byte(1) < 0x90;
        const bool beyond = lead == 0xF4 && byte(1) >= 0x90;
        return tail(1) && tail(2) && tail(3) && !overlong && !beyond ? 4 : 0;
    }
    return 0;
}

bool isAscii(std::string_view s) {
    unsigned char all = 0;
    for (const char c : s)
        all = static_cast<unsigned char>(all | static_cast<unsigned char>(c));
    return all < 0x80;
}

bool isUtf8(std::string_view s) {
    while (!s.empty()) {
        const std::size_t length = utf8Length(s);
        if (length == 0)
            return false;
        s.remove_prefix(length);
    }
    return true;
}

/// 0x80 to 0x9F have no meaning in Latin-1; other code pages keep quotation marks and the like there.
std::string fromLatin1(std::string_view bytes) {
    std::string text;
    text.reserve(bytes.size() + bytes.size() / 16);
    for (const char c : bytes) {
        const auto value = static_cast<unsigned char>(c);
        appendUtf8(text, value >= 0x80 && value < 0xA0 ? unknownCharacter : value);
    }
    return text;
}

std::string fromUtf16(std::string_view bytes, bool bigEndian) {
    std::string text;
    text.reserve(bytes.size() / 2);
    const auto unit = [&](std::size_t i) -> char32_t {
        const auto first = static_cast<unsigned char>(bytes[i]);
        const auto second = static_cast<unsigned char>(bytes[i + 1]);
        return static_cast<char32_t>(bigEndian ? first << 8 | second : second << 8 | first);
    };
    for (std::size_t i = 0; i + 1 < bytes.size(); i += 2) {
        char32_t c = unit(i);
        const bool paired =
            c >= 0xD800 && c < 0xDC00 && i + 3 < bytes.size() && (unit(i + 2) & 0xFC00) == 0xDC00;
        if (paired) {
            c = 0x10000 + ((c - 0xD800) << 10) + (unit(i + 2) - 0xDC00);
            i += 2;
        }
        appendUtf8(text, c >= 0xD800 && c < 0xE000 ? unknownCharacter : c);
    }
    return text;
}

bool isControl(char c) {
    const auto value = static_cast<unsigned char>(c);
    return (value < 0x20 && c != '\t' && c != '\n' && c != '\r') || value == 0x7F;
}

/// Most files have none, and that is seen faster than where one is.
bool hasControl(std::string_view s) {
    unsigned found = 0;
    for (const char c : s)
        found |= static_cast<unsigned>(isControl(c));
    return found != 0;
}

Error notText(long line) {
    return {ErrorKind::badInput, "is not a text file: it holds bytes that no text has", "", line};
}

bool takePrefix(std::string& s, std::string_view prefix) {
    if (!s.starts_with(prefix))
        return false;
    s.erase(0, prefix.size());
    return true;
}

} // namespace

Result<std::string> decodeText(std::string bytes) {
    const bool little = takePrefix(bytes, "\xFF\xFE");
    const bool big = !little && takePrefix(bytes, "\xFE\xFF");
    if (little || big) {
        const bool odd = bytes.size() % 2 != 0;
        bytes = fromUtf16(bytes, big);
        if (odd)
            return notText(lineAt(bytes, bytes.size()));
    } else {
        takePrefix(bytes, "\xEF\xBB\xBF");
    }
    if (hasControl(bytes)) {
        const auto found = std::find_if(bytes.begin(), bytes.end(), isControl);
        return notText(lineAt(bytes, static_cast<std::size_t>(found - bytes.begin())));
    }
    return isAscii(bytes) || isUtf8(bytes) ? std::move(bytes) : fromLatin1(bytes);
}

long lineAt(std::string_view text, std::size_t offset) {
    const std::string_view before = text.substr(0, offset);
    long line = 1;
    for (std::size_t i = 0; i < before.size(); ++i) {
        const bool carriageReturn = before[i] == '\r' && !text.substr(i + 1).starts_with('\n');
        line += before[i] == '\n' || carriageReturn;
    }
    return line;
}

} // namespace ringhold
