#include "report/svg.h"

#include <cstdint>

namespace thinskin::report {
namespace {

constexpr std::string_view replacement = "\xEF\xBF\xBD"; // U+FFFD

unsigned byte(std::string_view s, std::size_t i) { return i < s.size() ? static_cast<unsigned char>(s[i]) : 0U; }

/// Length of the UTF-8 sequence at i, 0 = none: no overlong forms, surrogates, or values above U+10FFFF.
std::size_t sequence(std::string_view s, std::size_t i)
{
    const unsigned first = byte(s, i);
    if (first < 0x80) return 1;
    const std::size_t length = first >= 0xC2 && first < 0xE0 ? 2 : first >= 0xE0 && first < 0xF0 ? 3 : first >= 0xF0 && first < 0xF5 ? 4 : 0;
    for (std::size_t k = 1; k < length; ++k)
        if ((byte(s, i + k) & 0xC0U) != 0x80U) return 0;
    const unsigned second = byte(s, i + 1);
    if ((first == 0xE0 && second < 0xA0) || (first == 0xED && second > 0x9F) || (first == 0xF0 && second < 0x90) || (first == 0xF4 && second > 0x8F)) return 0;
    return length;
}

std::string_view entity(char c)
{
    switch (c) {
    case '&': return "&amp;";
    case '<': return "&lt;";
    case '>': return "&gt;";
    case '"': return "&quot;";
    case '\'': return "&#39;";
    default: return {};
    }
}

bool control(char c)
{
    const auto u = static_cast<unsigned char>(c);
    return (u < 0x20 && c != '\t' && c != '\n') || u == 0x7F;
}

} // namespace

std::string escaped(std::string_view text)
{
    std::string out;
    out.reserve(text.size());
    for (std::size_t i = 0; i < text.size();) {
        const std::size_t n = sequence(text, i);
        if (n == 0 || control(text[i])) out += replacement;
        else if (const std::string_view e = entity(text[i]); !e.empty()) out += e;
        else out += text.substr(i, n);
        i += n == 0 ? 1 : n;
    }
    return out;
}

} // namespace thinskin::report
