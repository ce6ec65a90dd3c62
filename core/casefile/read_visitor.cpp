#include "casefile/read_visitor.h"

#include "base/nearest.h"

#include <algorithm>
#include <stdexcept>

namespace thinskin::casefile {

void ReadVisitor::read(const yaml::Node& root, model::Case& c)
{
    case_ = &c;
    block(root, "", "", [&] { fields(*this, c); });
}

void ReadVisitor::read_rows(const yaml::Node& root, model::OwnRows& rows, model::Case& c)
{
    case_ = &c;
    block(root, "catalogue", "catalogue", [&] { fields(*this, rows); });
}

void ReadVisitor::error(const base::Location& at, std::string path, std::string message, std::string hint)
{
    out_.diagnostics.push_back({at, std::move(path), std::move(message), std::move(hint), base::Severity::error});
}

void ReadVisitor::caution(const base::Location& at, std::string path, std::string message)
{
    out_.diagnostics.push_back({at, std::move(path), std::move(message), "", base::Severity::caution});
}

const Row& ReadVisitor::row_of(std::string_view key) const
{
    const Row* row = find_row(scope_.block, key);
    if (!row) throw std::logic_error(fmt::format("the schema has no row {}.{}", scope_.block, key));
    return *row;
}

std::string ReadVisitor::path_of(std::string_view key) const
{
    return scope_.path.empty() ? std::string(key) : fmt::format("{}.{}", scope_.path, key);
}

const yaml::Node* ReadVisitor::present(std::string_view key, const Row& row)
{
    const auto& all = scope_.node->entries;
    const auto e = std::find_if(all.begin(), all.end(), [&](const yaml::Entry& x) { return x.key == key; });
    if (e == all.end()) return nullptr;
    for (std::size_t i = 0; i < e->value.items.size(); ++i)
        out_.places[fmt::format("{}[{}]", path_of(key), i)] = e->value.items[i].at;
    if (scope_.copy) {
        error(e->at, path_of(key), "a copy takes this from its original: leave the key out");
        return nullptr;
    }
    if (e->value.refused) return nullptr;
    if (e->value.kind == yaml::Node::Kind::null) {
        error(e->at, path_of(key), fmt::format("the key has no value; expected {}", expected(row)));
        return nullptr;
    }
    return &e->value;
}

bool ReadVisitor::takes_default(std::string_view key, const Row& row)
{
    if (scope_.copy || out_.places.count(path_of(key)) > 0) return false;
    if (!row.required) return true;
    const bool mistyped = std::find(scope_.mistyped.begin(), scope_.mistyped.end(), key) != scope_.mistyped.end();
    if (!scope_.absent && !mistyped)
        error(scope_.node->at, path_of(key), fmt::format("the key \"{}\" is missing; expected {}", key, expected(row)));
    return false;
}

void ReadVisitor::note_default(const Row& row, const std::string& path)
{
    if (!row.why.empty()) case_->defaults.push_back({path, row.fallback, row.why});
}

void ReadVisitor::sister(std::string_view key, const Row& row)
{
    const std::string name = std::string(key) + "_from";
    const yaml::Node* n = scope_.node->find(name);
    if (!n || !row.measured() || find_row(scope_.block, name)) return;
    Row words;
    words.type = Type::word;
    words.words = measured_words();
    std::string how;
    if (!read_leaf(*n, words, how, {out_.diagnostics, path_of(name)})) return;
    case_->measured_from[path_of(key)] = how;
    const auto read = base::read_quantity(scope_.node->find(key)->text, base::Dimension::length);
    if (how == "ultrasonic" && row.type == Type::sheet_thickness && read.ok && read.quantity.value < 2)
        caution(n->at, path_of(name), "an ordinary ultrasonic probe shows the second echo on sheet below 2 mm: a reading may be twice the thickness; check it on a hole lip or an offcut");
}

std::string ReadVisitor::keys_of(const std::string& block)
{
    std::vector<std::string> keys;
    for (const Row* row : rows_in(block)) keys.push_back(row->key());
    return fmt::format("{}", fmt::join(keys, ", "));
}

std::string ReadVisitor::hint_for(const std::string& key)
{
    std::vector<std::string> free, all;
    for (const Row* row : rows_in(scope_.block)) {
        all.push_back(row->key());
        if (out_.places.count(path_of(row->key())) == 0) free.push_back(row->key());
    }
    std::string meant = base::nearest(key, free);
    if (meant.empty()) meant = base::nearest(key, all);
    if (!meant.empty()) {
        scope_.mistyped.push_back(meant);
        return "did you mean " + meant + "?";
    }
    std::vector<std::string> homes, inside;
    for (const Row& row : schema()) {
        if (row.key() != key || row.path.front() == '<') continue;
        homes.push_back(row.path);
        if (!scope_.block.empty() && row.path.compare(0, scope_.block.size() + 1, scope_.block + ".") == 0) inside.push_back(row.path);
    }
    if (inside.size() == 1) homes = inside;
    if (homes.size() == 1) return "the key stands at " + homes.front();
    return "keys here: " + keys_of(scope_.block);
}

void ReadVisitor::refuse_key(const yaml::Entry& e)
{
    const std::string& key = e.key;
    const bool sister_like = key.size() > 5 && key.substr(key.size() - 5) == "_from";
    const std::string stem = sister_like ? key.substr(0, key.size() - 5) : std::string{};
    if (const Row* base = sister_like ? find_row(scope_.block, stem) : nullptr) {
        if (!base->measured()) error(e.at, path_of(key), fmt::format("\"{}\" is not a measured figure, so it has no \"{}\"", stem, key));
        else if (!scope_.node->find(stem)) error(e.at, path_of(key), fmt::format("there is no \"{}\" beside it: give the measured figure too", stem));
        return;
    }
    if (e.value.kind == yaml::Node::Kind::null && !key.empty() && key.find_first_of("0123456789") == 0) {
        error(e.at, path_of(key), "this is no key: is it the rest of a number with a decimal comma? Write 0.8 mm, not 0,8 mm");
        return;
    }
    error(e.at, path_of(key), fmt::format("unknown key \"{}\"", key), hint_for(key));
}

void ReadVisitor::refuse_unknown_keys()
{
    for (const yaml::Entry& e : scope_.node->entries)
        if (find_row(scope_.block, e.key)) out_.places[path_of(e.key)] = e.value.at;
    for (const yaml::Entry& e : scope_.node->entries)
        if (!find_row(scope_.block, e.key)) refuse_key(e);
}

void ReadVisitor::read(const yaml::Node& n, const Row& row, const std::string& path, model::EdgeCondition& x)
{
    if (n.kind == yaml::Node::Kind::map) {
        x.kind = model::EdgeCondition::Kind::sprung;
        block(n, path, row.inside(), [&] { fields(*this, x); });
    } else {
        read_leaf(n, row, x.kind, {out_.diagnostics, path});
    }
}

void ReadVisitor::read(const yaml::Node& n, const Row& row, const std::string& path, model::MemberEnd& x)
{
    x.at = n.at;
    if (n.kind == yaml::Node::Kind::map) block(n, path, row.inside(), [&] { fields(*this, x); });
    else x.same_as_other = read_word(n, row, {out_.diagnostics, path}).has_value();
}

} // namespace thinskin::casefile
