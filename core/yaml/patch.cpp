#include "yaml/patch.h"

#include "yaml/bytes.h"
#include "yaml/emit.h"
#include "yaml/patch_tree.h"
#include "yaml/spans.h"

#include <algorithm>

namespace thinskin::yaml {
namespace {

constexpr std::size_t width = 110;

/// Does to the bytes what apply() does to the tree. Empty: it does not know how.
class Bytes {
public:
    Bytes(std::string_view text, const Node& root) : text_(text), root_(root), spans_(text), line_mark_(text.find("\r\n") == std::string_view::npos ? "\n" : "\r\n") {}

    std::optional<std::string> edited(const Planned& p)
    {
        go(p.way);
        switch (p.what) {
        case Planned::Do::replace: return replace(p.value);
        case Planned::Do::replace_lines: return replace_lines(p.value);
        case Planned::Do::rename: return rename(p);
        case Planned::Do::insert_key: return insert_key(p);
        case Planned::Do::append: return append(p.value);
        case Planned::Do::remove: return remove(p.child);
        case Planned::Do::nothing: break;
        }
        return std::nullopt;
    }

private:
    using Text = std::optional<std::string>;

    void go(const std::vector<std::size_t>& way)
    {
        node_ = &root_;
        for (const std::size_t i : way) {
            in_flow_ = in_flow_ || spans_.flow(*node_);
            entry_ = node_->kind == Node::Kind::map ? &node_->entries[i] : nullptr;
            node_ = &child(*node_, i);
        }
    }

    [[nodiscard]] std::string with(Span s, const std::string& by) const { return std::string(text_.substr(0, s.begin)) + by + std::string(text_.substr(s.end)); }
    [[nodiscard]] bool comment_in(Span s) const { return text_.substr(s.begin, s.end - s.begin).find('#') != std::string_view::npos; }
    [[nodiscard]] std::size_t column(std::size_t at) const { return at - spans_.line_start(at); }
    [[nodiscard]] std::optional<Span> span_of(const Node& n) const { return spans_.of(n, in_flow_ || spans_.flow(*node_)); }

    /// emit()'s lines below the first set in by `indent`, without the last line end.
    [[nodiscard]] std::string set_in(const std::string& emitted, std::size_t indent) const
    {
        std::string out;
        for (std::size_t i = 0; i + 1 < emitted.size(); ++i) {
            if (emitted[i] == '\n') out += line_mark_ + std::string(indent, ' ');
            else out += emitted[i];
        }
        return out;
    }

    Text replace(const Node& value)
    {
        const std::string by = one_line(value);
        if (node_->kind == Node::Kind::null) {
            const auto at = entry_ ? spans_.after_colon(*entry_) : std::nullopt;
            return at ? Text(with({*at, *at}, " " + by)) : std::nullopt;
        }
        auto s = spans_.of(*node_, in_flow_);
        if (!s) return std::nullopt;
        const bool block = (node_->kind == Node::Kind::list || node_->kind == Node::Kind::map) && !spans_.flow(*node_);
        const auto colon = block && entry_ ? spans_.after_colon(*entry_) : std::nullopt;
        if (!colon || comment_in({*colon, s->begin})) return with(*s, by);
        return with({*colon, s->end}, " " + by); // up to the line of the key
    }

    /// The entry as emit() writes it, in the place of the old one; what stands behind the value on its line stays.
    Text replace_lines(const Node& value)
    {
        const auto s = entry_ && !in_flow_ ? spans_.of(*node_, false) : std::nullopt;
        if (!s || !spans_.first_on_line(entry_->offset)) return replace(value);
        Node pair = map();
        put(pair, entry_->key, value);
        const std::size_t indent = column(entry_->offset);
        return with({entry_->offset, s->end}, set_in(emit(pair, static_cast<int>(width - std::min(indent, width / 2))), indent));
    }

    Text rename(const Planned& p)
    {
        const auto s = spans_.key(node_->entries[p.child]);
        return s ? Text(with(*s, scalar_text(p.key))) : std::nullopt;
    }

    Text insert_key(const Planned& p)
    {
        Node pair = map();
        put(pair, p.key, p.value);
        const auto& all = node_->entries;
        if (spans_.flow(*node_)) {
            const std::string flow = one_line(pair), text = flow.substr(1, flow.size() - 2);
            if (all.empty()) return with({node_->offset + 1, node_->offset + 1}, text);
            if (p.child < all.size()) return with({all[p.child].offset, all[p.child].offset}, text + ", ");
            const auto last = end_of(all.size() - 1);
            return last ? Text(with({*last, *last}, ", " + text)) : std::nullopt;
        }
        const std::size_t indent = column(all.front().offset);
        const std::string text = set_in(emit(pair, static_cast<int>(width - std::min(indent, width / 2))), indent);
        if (p.child == 0) return with({all.front().offset, all.front().offset}, text + line_mark_ + std::string(indent, ' '));
        return behind_line(p.child - 1, std::string(indent, ' ') + text);
    }

    Text append(const Node& value)
    {
        const auto& all = node_->items;
        if (spans_.flow(*node_)) {
            if (all.empty()) return with({node_->offset + 1, node_->offset + 1}, one_line(value));
            const auto last = end_of(all.size() - 1);
            return last ? Text(with({*last, *last}, ", " + one_line(value))) : std::nullopt;
        }
        Node one = list();
        one.items.push_back(value);
        const std::size_t indent = column(node_->offset);
        return behind_line(all.size() - 1, std::string(indent, ' ') + set_in(emit(one, static_cast<int>(width - std::min(indent, width / 2))), indent));
    }

    /// A line of its own below the one on which a child ends; a comment behind the child stays with it.
    Text behind_line(std::size_t child_number, const std::string& line)
    {
        const auto end = end_of(child_number);
        if (!end) return std::nullopt;
        const std::size_t at = spans_.line_end(*end);
        return with({at, at}, line_mark_ + line);
    }

    Text remove(std::size_t i)
    {
        const std::size_t n = node_->kind == Node::Kind::list ? node_->items.size() : node_->entries.size();
        if (spans_.flow(*node_)) return remove_from_flow(i, n);
        if (n == 1) return replace(node_->kind == Node::Kind::list ? list() : map());
        const auto begin = begin_of(i), end = end_of(i);
        if (!begin || !end) return std::nullopt;
        if (spans_.first_on_line(*begin)) return remove_lines({spans_.line_start(*begin), spans_.next_line(*end)});
        const auto next = i + 1 < n ? begin_of(i + 1) : std::nullopt; // behind a dash: the next key moves up to it
        return next ? Text(with({*begin, *next}, "")) : std::nullopt;
    }

    /// At the end of a text without a last line end the line end before goes too.
    Text remove_lines(Span s)
    {
        if (s.end == text_.size() && (text_.empty() || text_.back() != '\n') && s.begin > 0) s.begin = spans_.line_end(s.begin - 1 > 0 && text_[s.begin - 2] == '\r' ? s.begin - 2 : s.begin - 1);
        return with(s, "");
    }

    Text remove_from_flow(std::size_t i, std::size_t n)
    {
        const auto begin = begin_of(i), end = end_of(i);
        if (!begin || !end) return std::nullopt;
        if (n == 1) return with({*begin, *end}, "");
        if (i + 1 < n) {
            const auto next = begin_of(i + 1);
            if (!next) return std::nullopt;
            if (!comment_in({*end, *next})) return with({*begin, *next}, "");
            const std::size_t comma = spans_.skip_blanks(*end);
            return with({*begin, *end}, "").erase(comma - (*end - *begin), 1);
        }
        const auto before = end_of(i - 1);
        if (!before) return std::nullopt;
        if (!comment_in({*before, *begin})) return with({*before, *end}, "");
        return with({*begin, *end}, "").erase(spans_.skip_blanks(*before), 1);
    }

    /// Where a child starts: its key, its dash, or its value in a flow list.
    [[nodiscard]] std::optional<std::size_t> begin_of(std::size_t i) const
    {
        if (node_->kind == Node::Kind::map) return node_->entries[i].offset;
        std::size_t at = node_->items[i].offset;
        if (spans_.flow(*node_)) return at;
        while (at > 0 && text_[at - 1] != '-') {
            const char c = text_[at - 1];
            if (c != ' ' && c != '\n' && c != '\r') return std::nullopt;
            --at;
        }
        return at > 0 ? std::optional(at - 1) : std::nullopt;
    }

    [[nodiscard]] std::optional<std::size_t> end_of(std::size_t i) const
    {
        const Node& n = child(*node_, i);
        if (n.kind == Node::Kind::null) return node_->kind == Node::Kind::map ? spans_.after_colon(node_->entries[i]) : std::nullopt;
        const auto s = span_of(n);
        return s ? std::optional(s->end) : std::nullopt;
    }

    std::string_view text_;
    const Node& root_;
    Spans spans_;
    std::string line_mark_;
    const Node* node_ = nullptr;
    const Entry* entry_ = nullptr;   ///< the entry whose value node_ is
    bool in_flow_ = false;           ///< something round node_ is in flow form
};

bool gives(const std::string& text, const Node& tree)
{
    const Document d = parse(text, "");
    return d.usable && d.errors.empty() && same(d.root, tree);
}

} // namespace

namespace {

bool single(const Node& n) { return n.kind == Node::Kind::scalar; }

struct Place { Span span; std::string by; };

std::optional<Place> place_of(const Document& d, const Spans& spans, const Planned& p)
{
    const Node* n = &d.root;
    bool in_flow = false;
    for (const std::size_t i : p.way) {
        in_flow = in_flow || spans.flow(*n);
        n = &child(*n, i);
    }
    const auto span = single(*n) && single(p.value) ? spans.of(*n, in_flow) : std::nullopt;
    return span ? std::optional(Place{*span, one_line(p.value)}) : std::nullopt;
}

} // namespace

Patched set_values(const std::string& text, const std::vector<Patch>& all)
{
    const std::string_view bare = without_mark(text);
    const std::size_t mark = text.size() - bare.size();
    const Document d = parse(text, "");
    if (!d.usable) return {false, text, "", false};
    const Spans spans(bare);
    Node tree = d.root;
    std::vector<Place> places;
    for (const Patch& p : all) {
        const Planned planned = plan(d.root, p, {});
        const auto place = planned.what == Planned::Do::replace ? place_of(d, spans, planned) : std::nullopt;
        if (!place) return {false, text, "", false};
        places.push_back(*place);
        apply(tree, planned);
    }
    std::sort(places.begin(), places.end(), [](const Place& a, const Place& b) { return a.span.begin > b.span.begin; });
    std::string out = text;
    for (std::size_t i = 0; i < places.size(); ++i) {
        if (i > 0 && places[i].span.begin == places[i - 1].span.begin) return {false, text, "", false};
        out.replace(mark + places[i].span.begin, places[i].span.end - places[i].span.begin, places[i].by);
    }
    return gives(out, tree) ? Patched{true, std::move(out), "", false} : Patched{false, text, "", false};
}

Patched patch(const std::string& text, const Patch& p, const KeyOrder& order)
{
    const std::string_view bare = without_mark(text);
    const std::string mark = text.substr(0, text.size() - bare.size());
    const Document d = parse(text, "");
    if (!d.usable) return {false, text, d.errors.empty() ? "" : "the text cannot be read: " + d.errors.front().message, false};
    const Planned planned = plan(d.root, p, order);
    if (planned.what == Planned::Do::nothing) return {false, text, planned.why, false};
    Node tree = d.root;
    apply(tree, planned);
    if (const auto edited = Bytes(bare, d.root).edited(planned); edited && gives(mark + *edited, tree)) return {true, mark + *edited, "", false};
    std::string anew = mark + emit(tree);
    if (!gives(anew, tree)) return {false, text, "the changed text would not read back as meant", false};
    return {true, std::move(anew), "", true};
}

} // namespace thinskin::yaml
