#include "yaml/emit.h"

#include <array>
#include <cctype>
#include <fmt/format.h>

namespace thinskin::yaml {
namespace {

bool plain_is_safe(const std::string& t)
{
    static constexpr std::array<std::string_view, 8> meaning = {"~", "null", "Null", "NULL", "---", "...", "-", "?"};
    for (const std::string_view m : meaning)
        if (t == m) return false;
    if (t.empty() || t.front() == ' ' || t.back() == ' ' || t.back() == ':') return false;
    if (std::string_view("-?:,[]{}#&*!|>'\"%@`<=").find(t.front()) != std::string_view::npos && !(t.front() == '-' && t.size() > 1 && std::isdigit(static_cast<unsigned char>(t[1])))) return false;
    if (t.find(": ") != std::string::npos || t.find(" #") != std::string::npos) return false;
    for (const char c : t) // the library takes a ? inside a flow map for the start of a key
        if (static_cast<unsigned char>(c) < 0x20 || c == '\x7F' || std::string_view(",[]{}\\?").find(c) != std::string_view::npos) return false;
    return true;
}

/// Text that another YAML reader would take for a number or a truth value keeps its quotes, so that it stays a text there too.
bool looks_like_a_number(const std::string& t)
{
    return t.find_first_not_of("0123456789.") == std::string::npos && t.find('.') != std::string::npos;
}

std::string quoted(const std::string& t)
{
    std::string out = "\"";
    for (const char c : t) {
        if (c == '"' || c == '\\') out += fmt::format("\\{}", c);
        else if (c == '\n') out += "\\n";
        else if (c == '\t') out += "\\t";
        else if (static_cast<unsigned char>(c) < 0x20 || c == '\x7F') out += fmt::format("\\x{:02x}", static_cast<unsigned>(static_cast<unsigned char>(c)));
        else out += c;
    }
    return out + "\"";
}

bool has_comment(const Node& n)
{
    if (!n.comment.empty()) return true;
    for (const Node& i : n.items)
        if (has_comment(i)) return true;
    for (const Entry& e : n.entries)
        if (has_comment(e.value)) return true;
    return false;
}

class Emitter {
public:
    explicit Emitter(int width) : width_(static_cast<std::size_t>(width)) {}

    std::string block(const Node& n, int indent)
    {
        std::string out;
        for (const Entry& e : n.entries) out += comment(e.value, indent) + blanks(indent) + scalar_text(e.key) + ":" + value(e.value, indent, e.key.size() + 2);
        for (const Node& i : n.items) out += item(i, indent);
        return out;
    }

private:
    static std::string blanks(int n) { return std::string(static_cast<std::size_t>(n), ' '); }

    static std::string comment(const Node& n, int indent)
    {
        return n.comment.empty() ? std::string{} : blanks(indent) + "# " + n.comment + "\n";
    }

    bool fits(const Node& n, std::size_t used) const
    {
        const bool leaf = n.kind == Node::Kind::null || n.kind == Node::Kind::scalar || (n.items.empty() && n.entries.empty());
        return leaf || (!has_comment_inside(n) && used + yaml::one_line(n).size() <= width_);
    }

    static bool has_comment_inside(const Node& n)
    {
        Node bare = n;
        bare.comment.clear();
        return has_comment(bare);
    }

    std::string value(const Node& n, int indent, std::size_t key_width)
    {
        if (fits(n, static_cast<std::size_t>(indent) + key_width)) return " " + one_line(n) + "\n";
        return "\n" + block(n, indent + 2);
    }

    std::string item(const Node& n, int indent)
    {
        if (fits(n, static_cast<std::size_t>(indent) + 2)) return blanks(indent) + "- " + one_line(n) + "\n";
        // The first line of the entry carries the dash; a comment that would stand there goes above it.
        Node first = n;
        std::string above;
        if (!first.entries.empty() && !first.entries.front().value.comment.empty()) {
            above = comment(first.entries.front().value, indent);
            first.entries.front().value.comment.clear();
        }
        std::string text = block(first, indent + 2);
        text.replace(static_cast<std::size_t>(indent), 1, "-");
        return above + text;
    }

    std::size_t width_;
};

} // namespace

std::string scalar_text(const std::string& t)
{
    return plain_is_safe(t) && !looks_like_a_number(t) ? t : quoted(t);
}

std::string one_line(const Node& n)
{
    std::string out;
    switch (n.kind) {
    case Node::Kind::null: return "~";
    case Node::Kind::scalar: return scalar_text(n.text);
    case Node::Kind::list:
        for (const Node& i : n.items) out += (out.empty() ? "" : ", ") + one_line(i);
        return "[" + out + "]";
    case Node::Kind::map:
        for (const Entry& e : n.entries) out += fmt::format("{}{}: {}", out.empty() ? "" : ", ", scalar_text(e.key), one_line(e.value));
        return "{" + out + "}";
    }
    return out;
}

std::string emit(const Node& root, int width) { return Emitter(width).block(root, 0); }

Node scalar(std::string text)
{
    Node n;
    n.kind = Node::Kind::scalar;
    n.text = std::move(text);
    return n;
}

Node list()
{
    Node n;
    n.kind = Node::Kind::list;
    return n;
}

Node map()
{
    Node n;
    n.kind = Node::Kind::map;
    return n;
}

void put(Node& map, std::string key, Node value) { map.entries.push_back({std::move(key), {}, std::move(value), 0}); }

} // namespace thinskin::yaml
