#include "yaml/events.h"

#include <fmt/format.h>

namespace thinskin::yaml {

void TreeBuilder::report(const base::Location& at, std::string message, std::string hint)
{
    out_.errors.push_back({at, "", std::move(message), std::move(hint)});
}

void TreeBuilder::OnDocumentStart(const YAML::Mark& mark)
{
    if (++documents_ > 1) throw Stop{{lines_.place(mark.line, mark.column), "", "second document", ""}};
}

Node TreeBuilder::start(const YAML::Mark& mark, Node::Kind kind, const std::string& tag, YAML::anchor_t anchor)
{
    Node n;
    n.kind = kind;
    n.at = lines_.place(mark.line, mark.column);
    n.offset = static_cast<std::size_t>(std::max(mark.pos, 0));
    if (++count_ > limits_.nodes)
        throw Stop{{n.at, "", fmt::format("the file holds more than {} values; a case file is smaller", limits_.nodes), ""}};
    if (anchor != YAML::NullAnchor) {
        report(n.at, "anchors (&name) are not used in case files", "copy_of, mirror_of and same_as_left repeat a part");
        n.refused = true;
    }
    if (!tag.empty() && tag != "?" && tag != "!") {
        report(n.at, fmt::format("tags ({}) are not used in case files: write the plain value", tag));
        n.refused = true;
    }
    return n;
}

void TreeBuilder::OnNull(const YAML::Mark& mark, YAML::anchor_t anchor)
{
    add(start(mark, Node::Kind::null, "", anchor));
}

void TreeBuilder::OnAlias(const YAML::Mark& mark, YAML::anchor_t)
{
    Node n = start(mark, Node::Kind::null, "", YAML::NullAnchor);
    report(n.at, "aliases (*name) are not used in case files: write the value again",
           "copy_of, mirror_of and same_as_left repeat a part");
    n.refused = true;
    add(std::move(n));
}

void TreeBuilder::OnScalar(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor, const std::string& value)
{
    Node n = start(mark, Node::Kind::scalar, tag, anchor);
    n.text = value;
    n.quoted = tag == "!";
    add(std::move(n));
}

void TreeBuilder::OnSequenceStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor, YAML::EmitterStyle::value)
{
    open(start(mark, Node::Kind::list, tag, anchor));
}

void TreeBuilder::OnMapStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor, YAML::EmitterStyle::value)
{
    open(start(mark, Node::Kind::map, tag, anchor));
}

void TreeBuilder::open(Node node)
{
    if (static_cast<int>(stack_.size()) >= limits_.depth)
        throw Stop{{node.at, "", fmt::format("blocks are nested more than {} deep; a case file needs fewer", limits_.depth), ""}};
    Open o;
    o.node = std::move(node);
    stack_.push_back(std::move(o));
}

void TreeBuilder::close()
{
    Node done = std::move(stack_.back().node);
    stack_.pop_back();
    add(std::move(done));
}

void TreeBuilder::add(Node node)
{
    if (stack_.empty()) {
        out_.root = std::move(node);
        return;
    }
    Open& top = stack_.back();
    if (top.node.kind == Node::Kind::list) top.node.items.push_back(std::move(node));
    else if (!top.has_key) take_key(top, node);
    else take_value(top, std::move(node));
}

void TreeBuilder::take_key(Open& map, const Node& key)
{
    map.has_key = true;
    map.drop_value = true;
    map.key = key.text;
    map.key_at = key.at;
    map.key_offset = key.offset;
    if (key.refused) return;
    if (key.kind != Node::Kind::scalar || key.text.empty()) {
        report(key.at, "a key must be a plain word before the colon");
    } else if (key.text == "<<" && !key.quoted) {
        report(key.at, "merge keys (<<) are not used in case files: write the values again");
    } else {
        const auto [first, fresh] = map.lines.emplace(key.text, key.at.line);
        map.drop_value = !fresh;
        if (!fresh) report(key.at, fmt::format("the key \"{}\" stands twice in this block, first on line {}", key.text, first->second));
    }
}

void TreeBuilder::take_value(Open& map, Node value)
{
    map.has_key = false;
    if (!map.drop_value) map.node.entries.push_back({map.key, map.key_at, std::move(value), map.key_offset});
}

} // namespace thinskin::yaml
