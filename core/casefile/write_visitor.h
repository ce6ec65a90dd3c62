#pragma once
#include "casefile/fields.h"
#include "casefile/leaf.h"
#include "yaml/emit.h"

#include <fmt/format.h>
#include <set>
#include <string>
#include <string_view>
#include <tuple>
#include <utility>

namespace thinskin::casefile {

enum class Show {
    needed, ///< what has to stand in the file: defaults that were taken are left out
    starter,///< the same with words that equal their default, and the help of each key above its first place
    all,    ///< every value, so that two cases can be compared key by key
};

/// Walks a case along fields() and builds the tree of its file.
class WriteVisitor {
public:
    WriteVisitor(const model::Case& c, Show show);

    [[nodiscard]] yaml::Node tree();
    /// Key paths of measured_from that stand at no measured key of the case; valid after tree().
    [[nodiscard]] std::vector<std::string> unplaced() const { return {unplaced_.begin(), unplaced_.end()}; }

    template <class T> void operator()(std::string_view key, T& x)
    {
        const Row& row = row_of(key);
        const std::string path = path_of(key);
        yaml::Node n = to_node(row, path, x);
        if (must_stand(row, path, n, untouched(x))) add(row, std::move(n));
        sister(key, row, path);
    }

    template <class F> void inside(std::string_view key, F&& f)
    {
        const Row& row = row_of(key);
        yaml::Node n = block(path_of(key), row.inside(), f);
        if (must_stand(row, path_of(key), n, true)) add(row, std::move(n));
    }

    template <class F> void unless_copy(bool is_copy, F&& f)
    {
        if (!is_copy) f();
    }

    [[nodiscard]] bool has(std::string_view key) const { return find_row(block_, key) != nullptr; }
    void ends(std::string_view key, model::Ends& e, const model::Point2& from, const model::Point2& to);
    void frames(std::string_view key, std::array<std::optional<model::Frame>, 4>& f);
    void rest(std::string_view key, std::optional<model::Rest>& r);
    void kinds(std::string_view key, std::vector<model::FastenerKind>& k);

private:
    [[nodiscard]] const Row& row_of(std::string_view key) const;
    [[nodiscard]] std::string path_of(std::string_view key) const;
    void add(const Row& row, yaml::Node n);
    void sister(std::string_view key, const Row& row, const std::string& path);
    /// Whether reading without the key would give something else.
    [[nodiscard]] bool must_stand(const Row& row, const std::string& path, const yaml::Node& n, bool untouched_value) const;
    [[nodiscard]] bool was_default(const std::string& path) const { return show_ != Show::all && defaults_.count(path) > 0; }
    [[nodiscard]] bool same_all_round(std::array<std::optional<model::Frame>, 4>& f, const Row& row, const std::string& path);
    [[nodiscard]] yaml::Node frame_node(model::Frame& f, const std::string& path, const Row& row);

    template <class F> yaml::Node block(const std::string& path, const std::string& name, F&& f)
    {
        yaml::Node n = yaml::map();
        const auto before = std::make_tuple(node_, path_, block_);
        std::tie(node_, path_, block_) = std::make_tuple(&n, path, name);
        f();
        std::tie(node_, path_, block_) = before;
        return n;
    }

    template <class T> yaml::Node to_node(const Row& row, const std::string& path, T& x)
    {
        if constexpr (is_leaf<T>) return write_leaf(x, row);
        else return block(path, row.inside(), [&] { fields(*this, x); });
    }
    template <class T> yaml::Node to_node(const Row& row, const std::string& path, std::optional<T>& x)
    {
        return x ? to_node(row, path, *x) : yaml::Node{};
    }
    template <class T> yaml::Node to_node(const Row& row, const std::string& path, std::vector<T>& x)
        requires(!is_leaf<std::vector<T>>)
    {
        yaml::Node n = yaml::list();
        for (std::size_t i = 0; i < x.size(); ++i)
            n.items.push_back(block(fmt::format("{}[{}]", path, i), row.inside(), [&] { fields(*this, x[i]); }));
        return n;
    }
    yaml::Node to_node(const Row& row, const std::string& path, model::EdgeCondition& x);
    yaml::Node to_node(const Row& row, const std::string& path, model::MemberEnd& x);

    /// A quantity with a text comes from a user and stays as written, even if it equals the default.
    static bool untouched(const model::Quantity& q) { return q.text.empty(); }
    template <class T> static bool untouched(const T&) { return true; }

    model::Case case_; ///< a copy, because fields() hands out references
    Show show_;
    std::set<std::string> defaults_, unplaced_, explained_;
    yaml::Node* node_ = nullptr;
    std::string path_, block_;
};

/// Key paths of measured_from that stand at no measured key of the case.
[[nodiscard]] std::vector<std::string> unplaced_measured(const model::Case& c);

/// Every value of a case, defaults too, as "key path: text" in the order of the schema.
[[nodiscard]] std::vector<std::string> list_values(const model::Case& c);

} // namespace thinskin::casefile
