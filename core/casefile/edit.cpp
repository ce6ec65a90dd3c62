#include "casefile/edit.h"

#include "yaml/emit.h"
#include "yaml/patch.h"

#include <fmt/format.h>
#include <optional>

namespace thinskin::casefile {
namespace {

/// Block of the schema in which the keys at a path are listed; nullopt: not known.
std::optional<std::string> block_of(const std::vector<yaml::PathPart>& path)
{
    std::string block;
    for (std::size_t i = 0; i < path.size(); ++i) {
        if (path[i].bracket) continue; // "[]" and "{}" are part of the row's block already
        const Row* row = find_row(block, path[i].name);
        if (row == nullptr && block == "<frame>") row = find_row("<frames>", path[i].name);
        if (row == nullptr) return std::nullopt;
        block = row->inside();
    }
    return block;
}

std::vector<std::string> keys_in_order(const std::string& path)
{
    const auto block = block_of(yaml::path_parts(path));
    std::vector<std::string> keys;
    if (block)
        for (const Row* row : rows_in(*block)) {
            keys.push_back(row->key());
            if (row->measured()) keys.push_back(row->key() + "_from");
        }
    return keys;
}

std::optional<yaml::Patch> as_patch(const Change& c, std::string& why)
{
    using Kind = yaml::Patch::Kind;
    if (c.kind == Change::Kind::remove) return yaml::Patch{Kind::remove, c.path, {}};
    if (c.kind == Change::Kind::set) return yaml::Patch{Kind::set, c.path, yaml::scalar(c.text)};
    if (c.kind == Change::Kind::rename) return yaml::Patch{Kind::rename, c.path, yaml::scalar(c.text)};
    yaml::Document flow = yaml::parse(c.text, "");
    if (!flow.usable || !flow.errors.empty()) {
        why = fmt::format("{}: {}", c.path, flow.errors.empty() ? "cannot be read" : flow.errors.front().message);
        return std::nullopt;
    }
    return yaml::Patch{c.kind == Change::Kind::append ? Kind::append : c.kind == Change::Kind::set_lines ? Kind::set_lines : Kind::set, c.path, std::move(flow.root)};
}

std::optional<Edited> only_values(const std::string& text, const std::vector<Change>& changes)
{
    std::vector<yaml::Patch> patches;
    for (const Change& c : changes) {
        if (c.kind != Change::Kind::set) return std::nullopt;
        patches.push_back({yaml::Patch::Kind::set, c.path, yaml::scalar(c.text)});
    }
    yaml::Patched done = yaml::set_values(text, patches);
    if (!done.ok) return std::nullopt;
    return Edited{true, std::move(done.text), "", false};
}

} // namespace

Edited edit_text(const std::string& text, const std::vector<Change>& changes)
{
    Edited out{true, text, "", false};
    if (auto quick = only_values(text, changes)) return std::move(*quick);
    for (const Change& c : changes) {
        const auto p = as_patch(c, out.why);
        yaml::Patched done;
        if (p) done = yaml::patch(out.text, *p, keys_in_order);
        if (!done.ok) return {false, text, p ? done.why : out.why, false};
        out.text = std::move(done.text);
        out.comments_lost = out.comments_lost || done.rewritten;
    }
    return out;
}

const Row* row_at(std::string_view path)
{
    std::vector<yaml::PathPart> parts = yaml::path_parts(path);
    if (parts.empty() || parts.back().bracket) return nullptr;
    const std::string key = parts.back().name;
    parts.pop_back();
    const auto block = block_of(parts);
    if (!block) return nullptr;
    const Row* row = find_row(*block, key);
    return row == nullptr && *block == "<frame>" ? find_row("<frames>", key) : row;
}

} // namespace thinskin::casefile
