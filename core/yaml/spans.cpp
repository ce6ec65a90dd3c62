#include "yaml/spans.h"

namespace thinskin::yaml {
namespace {

bool blank(char c) { return c == ' ' || c == '\t'; }
bool line_mark(char c) { return c == '\n' || c == '\r'; }

/// Lines joined as YAML folds them: blanks at the line ends go, one line end becomes a blank. (Empty lines within are not folded
/// here, so such a text does not match and is not patched.)
std::string folded(std::string_view s)
{
    std::string out;
    for (std::size_t i = 0; i < s.size();) {
        if (!blank(s[i]) && !line_mark(s[i])) {
            out += s[i++];
            continue;
        }
        const std::size_t from = i;
        bool line = false;
        for (; i < s.size() && (blank(s[i]) || line_mark(s[i])); ++i) line = line || s[i] == '\n';
        out += line ? std::string(" ") : std::string(s.substr(from, i - from));
    }
    return out;
}

} // namespace

std::size_t Spans::line_start(std::size_t at) const
{
    while (at > 0 && text_[at - 1] != '\n') --at;
    return at;
}

std::size_t Spans::line_end(std::size_t at) const
{
    std::size_t end = text_.find('\n', at);
    if (end == std::string_view::npos) end = text_.size();
    return end > at && text_[end - 1] == '\r' ? end - 1 : end;
}

std::size_t Spans::next_line(std::size_t at) const
{
    const std::size_t end = text_.find('\n', at);
    return end == std::string_view::npos ? text_.size() : end + 1;
}

bool Spans::first_on_line(std::size_t at) const { return text_.substr(line_start(at), at - line_start(at)).find_first_not_of(" \t") == std::string_view::npos; }

std::size_t Spans::skip_blanks(std::size_t at) const
{
    while (at < text_.size()) {
        if (blank(text_[at]) || line_mark(text_[at])) ++at;
        else if (text_[at] == '#') at = next_line(at);
        else break;
    }
    return at;
}

bool Spans::flow(const Node& n) const
{
    const bool collection = n.kind == Node::Kind::map || n.kind == Node::Kind::list;
    return collection && n.offset < text_.size() && (text_[n.offset] == '{' || text_[n.offset] == '[');
}

std::optional<std::size_t> Spans::end_of_quoted(std::size_t at) const
{
    const char quote = text_[at];
    for (std::size_t i = at + 1; i < text_.size(); ++i) {
        if (quote == '"' && text_[i] == '\\') ++i;
        else if (text_[i] == quote && quote == '\'' && i + 1 < text_.size() && text_[i + 1] == '\'') ++i;
        else if (text_[i] == quote) return i + 1;
    }
    return std::nullopt;
}

/// A text behind | or >: all lines that are at least as far in as its first one.
std::size_t Spans::end_of_text_block(std::size_t at) const
{
    std::size_t end = line_end(at), indent = 0;
    for (std::size_t line = next_line(at); line < text_.size(); line = next_line(line)) {
        const std::size_t first = text_.find_first_not_of(' ', line);
        if (first == std::string_view::npos || line_mark(text_[first])) continue;
        if (indent == 0) indent = first - line;
        if (indent == 0 || first - line < indent) break;
        end = line_end(line);
    }
    return end;
}

std::size_t Spans::end_of_plain_line(std::size_t at, bool in_flow) const
{
    const std::size_t stop = line_end(at);
    std::size_t end = at;
    for (std::size_t i = at; i < stop; ++i) {
        const char c = text_[i];
        const bool before_blank = i + 1 >= stop || blank(text_[i + 1]) || (in_flow && std::string_view(",[]{}").find(text_[i + 1]) != std::string_view::npos);
        if (c == '#' && (i == at || blank(text_[i - 1]))) break;
        if (c == ':' && before_blank) break;
        if (in_flow && std::string_view(",[]{}").find(c) != std::string_view::npos) break;
        if (!blank(c)) end = i + 1;
    }
    return end;
}

std::optional<std::size_t> Spans::end_of_plain(const Node& n, bool in_flow) const
{
    std::size_t line = n.offset;
    for (int lines = 0; lines < 100 && line < text_.size(); ++lines) {
        const std::size_t end = end_of_plain_line(line, in_flow);
        if (folded(text_.substr(n.offset, end - n.offset)) == n.text) return end;
        line = text_.find_first_not_of(" \t\r\n", next_line(line));
    }
    return std::nullopt;
}

std::optional<std::size_t> Spans::end_of_collection(const Node& n, bool in_flow) const
{
    const bool brackets = flow(n);
    std::size_t end = brackets ? n.offset + 1 : n.offset;
    if (!n.items.empty()) {
        const auto last = of(n.items.back(), in_flow || brackets);
        if (!last) return std::nullopt;
        end = last->end;
    }
    if (!n.entries.empty()) {
        const Entry& e = n.entries.back();
        const auto colon = after_colon(e);
        if (!colon) return std::nullopt;
        const auto last = e.value.kind == Node::Kind::null ? Span{*colon, *colon} : of(e.value, in_flow || brackets);
        if (!last) return std::nullopt;
        end = last->end;
    }
    if (!brackets) return end;
    end = skip_blanks(end);
    if (end < text_.size() && text_[end] == ',') end = skip_blanks(end + 1);
    const char closing = text_[n.offset] == '{' ? '}' : ']';
    return end < text_.size() && text_[end] == closing ? std::optional(end + 1) : std::nullopt;
}

std::optional<Span> Spans::of(const Node& n, bool in_flow) const
{
    if (n.offset >= text_.size()) return std::nullopt;
    std::optional<std::size_t> end;
    const char c = text_[n.offset];
    switch (n.kind) {
    case Node::Kind::null: return std::nullopt;
    case Node::Kind::scalar:
        if (c == '"' || c == '\'') end = end_of_quoted(n.offset);
        else if ((c == '|' || c == '>') && n.quoted) end = end_of_text_block(n.offset);
        else end = end_of_plain(n, in_flow);
        break;
    case Node::Kind::list:
    case Node::Kind::map: end = end_of_collection(n, in_flow); break;
    }
    if (!end) return std::nullopt;
    return Span{n.offset, *end};
}

std::optional<Span> Spans::key(const Entry& e) const
{
    if (e.offset >= text_.size()) return std::nullopt;
    if (text_[e.offset] == '"' || text_[e.offset] == '\'') {
        const auto end = end_of_quoted(e.offset);
        return end ? std::optional(Span{e.offset, *end}) : std::nullopt;
    }
    if (text_.substr(e.offset, e.key.size()) != e.key) return std::nullopt;
    return Span{e.offset, e.offset + e.key.size()};
}

std::optional<std::size_t> Spans::after_colon(const Entry& e) const
{
    const auto k = key(e);
    if (!k) return std::nullopt;
    const std::size_t at = skip_blanks(k->end);
    return at < text_.size() && text_[at] == ':' ? std::optional(at + 1) : std::nullopt;
}

} // namespace thinskin::yaml
