// The shapes of the case file that are not plain blocks: ends by side, a frame once or per edge, rest: none, named kinds.
#include "casefile/read_visitor.h"
#include "casefile/shapes.h"

namespace thinskin::casefile {

void ReadVisitor::refuse_other_ends(bool upright)
{
    for (const auto& name : end_names(!upright))
        for (const yaml::Entry& e : scope_.node->entries)
            if (e.key == name) {
                const auto right = end_names(upright);
                error(e.at, path_of(name), fmt::format("this member {}, so its ends are \"{}\" and \"{}\"",
                                                       upright ? "is steeper than 45 deg" : "lies flatter than 45 deg", right[0], right[1]));
                scope_.mistyped.insert(scope_.mistyped.end(), right.begin(), right.end());
            }
}

void ReadVisitor::ends(std::string_view key, model::Ends& e, const model::Point2& from, const model::Point2& to)
{
    const Row& row = row_of(key);
    const yaml::Node* value = present(key, row);
    if (!value) {
        if (takes_default(key, row)) note_default(row, path_of(key));
        return;
    }
    const bool no_line = from.x.value == to.x.value && from.y.value == to.y.value; // from or to could not be read
    const bool upright = no_line ? value->find("bottom") || value->find("top") : stands_upright(from, to);
    block(*value, path_of(key), row.inside(), [&] {
        refuse_other_ends(upright);
        (*this)(end_names(upright)[0], e.first);
        (*this)(end_names(upright)[1], e.second);
        if (e.first.same_as_other && e.second.same_as_other)
            error(e.second.at, path_of(end_names(upright)[1]), "both ends say that they are the same as the other: write one of them out");
    });
}

void ReadVisitor::frames(std::string_view key, std::array<std::optional<model::Frame>, 4>& f)
{
    const Row& row = row_of(key);
    const yaml::Node* value = present(key, row);
    if (!value) {
        takes_default(key, row);
        return;
    }
    if (!is_per_edge(*value)) {
        model::Frame once;
        read(*value, row, path_of(key), once);
        f.fill(once);
        return;
    }
    block(*value, path_of(key), frames_block, [&] {
        for (std::size_t i = 0; i < side_names.size(); ++i) (*this)(side_names[i], f[i]);
    });
}

void ReadVisitor::rest(std::string_view key, std::optional<model::Rest>& r)
{
    const Row& row = row_of(key);
    const yaml::Node* value = present(key, row);
    if (!value) {
        if (takes_default(key, row)) note_default(row, path_of(key));
    } else if (value->kind == yaml::Node::Kind::map) {
        r.emplace();
        block(*value, path_of(key), row.inside(), [&] { rest_block(*this, *r); });
    } else {
        read_word(*value, row, {out_.diagnostics, path_of(key)});
    }
}

void ReadVisitor::kinds(std::string_view key, std::vector<model::FastenerKind>& k)
{
    const Row& row = row_of(key);
    const yaml::Node* value = present(key, row);
    if (!value) return;
    if (value->kind != yaml::Node::Kind::map) {
        error(value->at, path_of(key), fmt::format("expected {}, found {}", expected(row), found(*value)));
        return;
    }
    for (const yaml::Entry& e : value->entries) {
        model::FastenerKind& kind = k.emplace_back();
        kind.name = e.key;
        kind.at = e.at;
        const std::string path = kind_path(e.key);
        out_.places[path] = e.at;
        block(e.value, path, row.inside(), [&] { fields(*this, kind); });
    }
}

} // namespace thinskin::casefile
