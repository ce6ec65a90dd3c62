#include "casefile/write_visitor.h"

#include "casefile/shapes.h"

#include <algorithm>
#include <stdexcept>

namespace thinskin::casefile {

WriteVisitor::WriteVisitor(const model::Case& c, Show show) : case_(c), show_(show)
{
    for (const model::DefaultTaken& d : c.defaults) defaults_.insert(d.key_path);
    for (const auto& entry : c.measured_from) unplaced_.insert(entry.first);
}

yaml::Node WriteVisitor::tree()
{
    return block("", "", [&] { fields(*this, case_); });
}

const Row& WriteVisitor::row_of(std::string_view key) const
{
    const Row* row = find_row(block_, key);
    if (!row) throw std::logic_error(fmt::format("the schema has no row {}.{}", block_, key));
    return *row;
}

std::string WriteVisitor::path_of(std::string_view key) const
{
    return path_.empty() ? std::string(key) : fmt::format("{}.{}", path_, key);
}

void WriteVisitor::add(const Row& row, yaml::Node n)
{
    if (show_ == Show::starter && explained_.insert(row.path).second) n.comment = comment_of(row);
    yaml::put(*node_, row.key(), std::move(n));
}

bool WriteVisitor::must_stand(const Row& row, const std::string& path, const yaml::Node& n, bool untouched_value) const
{
    if (n.kind == yaml::Node::Kind::null) return false;
    if (row.required) return true;
    const bool empty = n.kind == yaml::Node::Kind::scalar ? n.text.empty() : n.items.empty() && n.entries.empty();
    if (empty) return false;
    if (show_ == Show::all || row.fallback.empty() || !untouched_value) return true;
    const bool is_fallback = (n.kind == yaml::Node::Kind::scalar ? n.text : yaml::one_line(n)) == row.fallback;
    if (!is_fallback) return true;
    return row.why.empty() ? show_ == Show::starter : !was_default(path);
}

void WriteVisitor::sister(std::string_view key, const Row& row, const std::string& path)
{
    const auto how = case_.measured_from.find(path);
    if (how == case_.measured_from.end() || !row.measured() || !node_->find(key)) return;
    yaml::put(*node_, std::string(key) + "_from", yaml::scalar(how->second));
    unplaced_.erase(path);
}

yaml::Node WriteVisitor::to_node(const Row& row, const std::string& path, model::EdgeCondition& x)
{
    if (x.kind != model::EdgeCondition::Kind::sprung) return write_leaf(x.kind, row);
    return block(path, row.inside(), [&] { fields(*this, x); });
}

yaml::Node WriteVisitor::to_node(const Row& row, const std::string& path, model::MemberEnd& x)
{
    if (x.same_as_other) return yaml::scalar(row.words.front());
    return block(path, row.inside(), [&] { fields(*this, x); });
}

void WriteVisitor::ends(std::string_view key, model::Ends& e, const model::Point2& from, const model::Point2& to)
{
    const Row& row = row_of(key);
    const auto stops = [](const model::MemberEnd& m) {
        return m.to == model::MemberEnd::To::none && m.fasteners.empty() && !m.rotational_stiffness && m.turning != "fixed" && !m.gap && !m.same_as_other;
    };
    if (was_default(path_of(key)) && stops(e.first) && stops(e.second)) return;
    const auto names = end_names(stands_upright(from, to));
    add(row, block(path_of(key), row.inside(), [&] {
            (*this)(names[0], e.first);
            (*this)(names[1], e.second);
        }));
}

yaml::Node WriteVisitor::frame_node(model::Frame& f, const std::string& path, const Row& row)
{
    return block(path, row.inside(), [&] { fields(*this, f); });
}

/// One block for all four edges, unless one of them has a word of its own or differs.
bool WriteVisitor::same_all_round(std::array<std::optional<model::Frame>, 4>& f, const Row& row, const std::string& path)
{
    for (const std::string_view side : side_names) {
        const std::string own = fmt::format("{}.{}.", path, side);
        const auto starts = [&](const std::string& p) { return p.compare(0, own.size(), own) == 0; };
        for (const auto& entry : case_.measured_from)
            if (starts(entry.first)) return false;
        for (const std::string& d : defaults_)
            if (starts(d)) return false;
    }
    for (const auto& frame : f)
        if (!frame) return false;
    const auto explained = explained_; // these trial nodes are thrown away, so their comments are not spent
    const std::string first = yaml::one_line(frame_node(*f[0], path, row));
    const bool same = std::all_of(f.begin(), f.end(), [&](auto& frame) { return yaml::one_line(frame_node(*frame, path, row)) == first; });
    explained_ = explained;
    return same;
}

void WriteVisitor::frames(std::string_view key, std::array<std::optional<model::Frame>, 4>& f)
{
    const Row& row = row_of(key);
    const std::string path = path_of(key);
    if (same_all_round(f, row, path)) {
        add(row, frame_node(*f[0], path, row));
        return;
    }
    yaml::Node n = block(path, frames_block, [&] {
        for (std::size_t i = 0; i < side_names.size(); ++i) (*this)(side_names[i], f[i]);
    });
    if (!n.entries.empty()) add(row, std::move(n));
}

void WriteVisitor::rest(std::string_view key, std::optional<model::Rest>& r)
{
    const Row& row = row_of(key);
    if (r) add(row, block(path_of(key), row.inside(), [&] { rest_block(*this, *r); }));
    else if (!was_default(path_of(key))) add(row, yaml::scalar(row.words.front()));
}

void WriteVisitor::kinds(std::string_view key, std::vector<model::FastenerKind>& k)
{
    if (k.empty()) return;
    const Row& row = row_of(key);
    yaml::Node all = yaml::map();
    for (model::FastenerKind& kind : k)
        yaml::put(all, kind.name, block(kind_path(kind.name), row.inside(), [&] { fields(*this, kind); }));
    add(row, std::move(all));
}

std::vector<std::string> unplaced_measured(const model::Case& c)
{
    WriteVisitor v(c, Show::needed);
    (void)v.tree();
    return v.unplaced();
}

namespace {

void list_into(const yaml::Node& n, const std::string& path, std::vector<std::string>& out)
{
    if (n.kind == yaml::Node::Kind::scalar) out.push_back(fmt::format("{}: {}", path, n.text));
    for (std::size_t i = 0; i < n.items.size(); ++i) list_into(n.items[i], fmt::format("{}[{}]", path, i), out);
    for (const yaml::Entry& e : n.entries) list_into(e.value, path.empty() ? e.key : path + "." + e.key, out);
}

} // namespace

std::vector<std::string> list_values(const model::Case& c)
{
    std::vector<std::string> out;
    list_into(WriteVisitor(c, Show::all).tree(), "", out);
    return out;
}

} // namespace thinskin::casefile
