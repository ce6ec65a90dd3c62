#include "yaml/patch_tree.h"

#include "yaml/emit.h"

#include <algorithm>
#include <fmt/format.h>

namespace thinskin::yaml {
namespace {

std::optional<std::size_t> number(const std::string& s)
{
    if (s.empty() || s.size() > 6 || s.find_first_not_of("0123456789") != std::string::npos) return std::nullopt;
    return static_cast<std::size_t>(std::stoul(s));
}

std::optional<std::size_t> child_number(const Node& n, const PathPart& p)
{
    if (n.kind == Node::Kind::list) {
        const auto i = p.bracket ? number(p.name) : std::nullopt;
        return i && *i < n.items.size() ? i : std::nullopt;
    }
    for (std::size_t i = 0; i < n.entries.size(); ++i)
        if (n.entries[i].key == p.name) return i;
    return std::nullopt;
}

/// How far down the path there is something.
struct Reached { std::vector<std::size_t> way; std::vector<std::string> block_paths; const Node* node = nullptr; };

Reached walk(const Node& root, const std::vector<PathPart>& path)
{
    Reached r{{}, {""}, &root};
    for (const PathPart& p : path) {
        const auto i = child_number(*r.node, p);
        if (!i) break;
        r.way.push_back(*i);
        r.node = &child(*r.node, *i);
        const std::string& above = r.block_paths.back();
        r.block_paths.push_back(p.bracket ? fmt::format("{}[{}]", above, p.name) : above.empty() ? p.name : above + "." + p.name);
    }
    return r;
}

/// The value inside the blocks of the path that are still missing: parts [from, end).
std::optional<Node> wrapped(Node value, const std::vector<PathPart>& path, std::size_t from)
{
    for (std::size_t i = path.size(); i > from; --i) {
        Node outer;
        if (path[i - 1].bracket && number(path[i - 1].name)) {
            if (path[i - 1].name != "0") return std::nullopt;
            outer = list();
            outer.items.push_back(std::move(value));
        } else {
            outer = map();
            put(outer, path[i - 1].name, std::move(value));
        }
        value = std::move(outer);
    }
    return value;
}

/// Behind the last key that comes before it in the given order; at the end when the order does not know it.
std::size_t place_for(const Node& map, const std::string& key, const std::vector<std::string>& order)
{
    const auto rank = [&](const std::string& k) { return std::find(order.begin(), order.end(), k) - order.begin(); };
    if (rank(key) == static_cast<std::ptrdiff_t>(order.size())) return map.entries.size();
    std::size_t place = 0;
    for (std::size_t i = 0; i < map.entries.size(); ++i)
        if (rank(map.entries[i].key) < rank(key)) place = i + 1;
    return place;
}

Planned refused(std::string why)
{
    Planned p;
    p.why = std::move(why);
    return p;
}

Planned plan_missing(const Reached& r, const std::vector<PathPart>& path, Node value, const std::string& text, const KeyOrder& order)
{
    const PathPart& next = path[r.way.size()];
    auto inner = wrapped(std::move(value), path, r.way.size() + 1);
    if (!inner) return refused(fmt::format("there is no {}", text));
    Planned p;
    p.way = r.way;
    p.value = std::move(*inner);
    if (r.node->kind == Node::Kind::list && next.bracket && number(next.name) == r.node->items.size()) {
        p.what = Planned::Do::append;
    } else if (r.node->kind == Node::Kind::map) {
        p.what = Planned::Do::insert_key;
        p.key = next.name;
        p.child = place_for(*r.node, next.name, order ? order(r.block_paths.back()) : std::vector<std::string>{});
    } else {
        return refused(fmt::format("there is no {}", text));
    }
    return p;
}

Planned plan_rename(const Node& root, Planned out, const Patch& p)
{
    out.child = out.way.back();
    out.way.pop_back();
    const Node* block = &root;
    for (const std::size_t i : out.way) block = &child(*block, i);
    if (block->kind != Node::Kind::map) return refused(fmt::format("{} has no key", p.path));
    if (block->find(p.value.text) != nullptr) return refused(fmt::format("there is a {} already", p.value.text));
    out.what = Planned::Do::rename;
    out.key = p.value.text;
    return out;
}

Node list_with(Node value)
{
    Node n = list();
    n.items.push_back(std::move(value));
    return n;
}

Node& at(Node& root, const std::vector<std::size_t>& way)
{
    Node* n = &root;
    for (const std::size_t i : way) n = n->kind == Node::Kind::list ? &n->items[i] : &n->entries[i].value;
    return *n;
}

} // namespace

const Node& child(const Node& n, std::size_t i) { return n.kind == Node::Kind::list ? n.items[i] : n.entries[i].value; }

bool same(const Node& a, const Node& b)
{
    if (a.kind != b.kind || a.text != b.text || a.items.size() != b.items.size() || a.entries.size() != b.entries.size()) return false;
    for (std::size_t i = 0; i < a.items.size(); ++i)
        if (!same(a.items[i], b.items[i])) return false;
    for (std::size_t i = 0; i < a.entries.size(); ++i)
        if (a.entries[i].key != b.entries[i].key || !same(a.entries[i].value, b.entries[i].value)) return false;
    return true;
}

std::vector<PathPart> path_parts(std::string_view path)
{
    std::vector<PathPart> out;
    for (std::size_t i = 0; i < path.size();) {
        const bool bracket = path[i] == '[';
        std::size_t end = i;
        for (int depth = 0; end < path.size(); ++end) { // a name in brackets may hold dots and brackets in pairs
            if (path[end] == '[') {
                if (!bracket) break;
                ++depth;
            }
            if (bracket && path[end] == ']' && --depth == 0) break;
            if (!bracket && path[end] == '.') break;
        }
        const std::size_t from = bracket ? i + 1 : i;
        if (end <= from || (bracket && end == path.size())) return {};
        out.push_back({std::string(path.substr(from, end - from)), bracket});
        i = bracket ? end + 1 : end;
        if (i < path.size() && path[i] == '.' && ++i == path.size()) return {};
    }
    return out;
}

const Node* find_node(const Node& root, const std::vector<PathPart>& path)
{
    const Reached r = walk(root, path);
    return r.way.size() == path.size() ? r.node : nullptr;
}

Planned plan(const Node& root, const Patch& p, const KeyOrder& order)
{
    const std::vector<PathPart> path = path_parts(p.path);
    if (path.empty()) return refused(fmt::format("\"{}\" is not a key path", p.path));
    const Reached r = walk(root, path);
    const bool there = r.way.size() == path.size();
    Planned out;
    out.way = r.way;
    switch (p.kind) {
    case Patch::Kind::set:
    case Patch::Kind::set_lines:
        if (!there) return plan_missing(r, path, p.value, p.path, order);
        out.what = p.kind == Patch::Kind::set ? Planned::Do::replace : Planned::Do::replace_lines;
        out.value = p.value;
        return out;
    case Patch::Kind::append:
        if (!there) return plan_missing(r, path, list_with(p.value), p.path, order);
        if (r.node->kind != Node::Kind::list) return refused(fmt::format("{} is not a list", p.path));
        out.what = Planned::Do::append;
        out.value = p.value;
        return out;
    case Patch::Kind::remove:
        if (!there) return refused(fmt::format("there is no {}", p.path));
        out.what = Planned::Do::remove;
        out.child = out.way.back();
        out.way.pop_back();
        return out;
    case Patch::Kind::rename: return there ? plan_rename(root, std::move(out), p) : refused(fmt::format("there is no {}", p.path));
    }
    return refused("");
}

void apply(Node& root, const Planned& p)
{
    Node& n = at(root, p.way);
    const auto place = static_cast<std::ptrdiff_t>(p.child);
    switch (p.what) {
    case Planned::Do::replace:
    case Planned::Do::replace_lines: n = p.value; break;
    case Planned::Do::rename: n.entries[p.child].key = p.key; break;
    case Planned::Do::append: n.items.push_back(p.value); break;
    case Planned::Do::insert_key: n.entries.insert(n.entries.begin() + place, {p.key, {}, p.value, 0}); break;
    case Planned::Do::remove:
        if (n.kind == Node::Kind::list) n.items.erase(n.items.begin() + place);
        else n.entries.erase(n.entries.begin() + place);
        break;
    case Planned::Do::nothing: break;
    }
}

} // namespace thinskin::yaml
