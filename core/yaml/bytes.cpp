#include "yaml/bytes.h"

#include <algorithm>
#include <fmt/format.h>

namespace thinskin::yaml {
namespace {

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

bool continuation(char c) { return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U; }

/// Length of the well-formed UTF-8 sequence at the start of `s`; 0 = not well formed (RFC 3629, table of section 4).
std::size_t sequence_length(std::string_view s)
{
    const auto byte = [&](std::size_t i) { return i < s.size() ? static_cast<unsigned char>(s[i]) : 0U; };
    const auto between = [&](std::size_t i, unsigned lo, unsigned hi) { return byte(i) >= lo && byte(i) <= hi; };
    const auto tails = [&](std::size_t from, std::size_t to) {
        for (std::size_t i = from; i <= to; ++i)
            if (!between(i, 0x80, 0xBF)) return false;
        return true;
    };
    const unsigned b = byte(0);
    if (b < 0x80) return 1;
    if (b >= 0xC2 && b <= 0xDF) return tails(1, 1) ? 2 : 0;
    if (b >= 0xE0 && b <= 0xEF) {
        const bool second = between(1, b == 0xE0 ? 0xA0 : 0x80, b == 0xED ? 0x9F : 0xBF);
        return second && tails(2, 2) ? 3 : 0;
    }
    if (b >= 0xF0 && b <= 0xF4) {
        const bool second = between(1, b == 0xF0 ? 0x90 : 0x80, b == 0xF4 ? 0x8F : 0xBF);
        return second && tails(2, 3) ? 4 : 0;
    }
    return 0;
}

/// In a line the comment starts at a # that stands first or after a blank.
bool in_comment(std::string_view text, std::size_t at)
{
    const std::size_t newline = text.rfind('\n', at);
    const std::size_t start = newline == std::string_view::npos ? 0 : newline + 1;
    for (std::size_t i = start; i < at; ++i)
        if (text[i] == '#' && (i == start || text[i - 1] == ' ' || text[i - 1] == '\t')) return true;
    return false;
}

std::string control_message(char c)
{
    if (c == '\0') return "a NUL byte stands here: this is not a text file";
    if (c == '\t') return "a tab stands here: use spaces";
    return fmt::format("a control character (code {}) stands here: remove it", static_cast<int>(static_cast<unsigned char>(c)));
}

bool allowed(std::string_view text, std::size_t i)
{
    const char c = text[i];
    if (c == '\n' || (c == '\r' && i + 1 < text.size() && text[i + 1] == '\n')) return true;
    if (c == '\t') return in_comment(text, i);
    return static_cast<unsigned char>(c) >= 0x20 && c != '\x7F';
}

std::optional<base::Diagnostic> check_characters(std::string_view text, const std::string& file)
{
    for (std::size_t i = 0; i < text.size();) {
        const std::size_t n = sequence_length(text.substr(i));
        const auto at = [&] { return LineTable(text, file).place(i); };
        if (n == 0) return base::Diagnostic{at(), "", "this is not UTF-8 text: save the file as UTF-8", ""};
        if (n == 1 && !allowed(text, i)) return base::Diagnostic{at(), "", control_message(text[i]), ""};
        i += n;
    }
    return std::nullopt;
}

} // namespace

LineTable::LineTable(std::string_view text, std::string file) : text_(text), file_(std::move(file)), starts_{0}
{
    for (std::size_t i = 0; i < text.size(); ++i)
        if (text[i] == '\n') starts_.push_back(i + 1);
}

base::Location LineTable::place(int line, int byte_column) const
{
    const std::size_t row = std::min(static_cast<std::size_t>(std::max(line, 0)), starts_.size() - 1);
    const std::size_t end = std::min(starts_[row] + static_cast<std::size_t>(std::max(byte_column, 0)), text_.size());
    int column = 1;
    for (std::size_t i = starts_[row]; i < end; ++i)
        if (!continuation(text_[i])) ++column;
    return {file_, static_cast<int>(row) + 1, column};
}

base::Location LineTable::place(std::size_t offset) const
{
    const auto next = std::upper_bound(starts_.begin(), starts_.end(), offset);
    const auto row = static_cast<std::size_t>(next - starts_.begin()) - 1;
    return place(static_cast<int>(row), static_cast<int>(offset - starts_[row]));
}

std::string_view without_mark(std::string_view text)
{
    if (text.substr(0, byte_order_mark.size()) == byte_order_mark) text.remove_prefix(byte_order_mark.size());
    return text;
}

std::optional<base::Diagnostic> check_bytes(std::string_view text, const std::string& file, std::size_t max_bytes)
{
    const auto whole_file = [&](std::string message) { return base::Diagnostic{{file, 1, 1}, "", std::move(message), ""}; };
    if (text.size() > max_bytes)
        return whole_file(fmt::format("the file has {} bytes; a case file has at most {}", text.size(), max_bytes));
    if (text.substr(0, 2) == "\xFF\xFE" || text.substr(0, 2) == "\xFE\xFF")
        return whole_file("this is UTF-16 text: save the file as UTF-8");
    return check_characters(without_mark(text), file);
}

} // namespace thinskin::yaml
