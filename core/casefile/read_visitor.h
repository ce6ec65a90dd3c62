#pragma once
#include "casefile/fields.h"
#include "casefile/leaf.h"
#include "casefile/reader.h"

#include <fmt/format.h>
#include <string_view>
#include <utility>

namespace thinskin::casefile {

/// Walks the tree along fields(): fills the case, takes defaults, and reports everything that does not fit the schema.
class ReadVisitor {
public:
    explicit ReadVisitor(ReadResult& out) : out_(out) {}

    void read(const yaml::Node& root, model::Case& c);
    /// A file of nothing but rows: the block `catalogue` by itself. `c` takes notes of defaults.
    void read_rows(const yaml::Node& root, model::OwnRows& rows, model::Case& c);

    template <class T> void operator()(std::string_view key, T& x)
    {
        const Row& row = row_of(key);
        if (const yaml::Node* value = present(key, row)) {
            read(*value, row, path_of(key), x);
            sister(key, row);
        } else if (takes_default(key, row)) {
            take_default(row, path_of(key), x);
        }
    }

    template <class F> void inside(std::string_view key, F&& f)
    {
        const Row& row = row_of(key);
        if (const yaml::Node* value = present(key, row)) block(*value, path_of(key), row.inside(), f);
        else if (takes_default(key, row)) absent_block(path_of(key), row.inside(), f);
    }

    template <class F> void unless_copy(bool is_copy, F&& f)
    {
        const bool before = scope_.copy;
        scope_.copy = is_copy;
        f();
        scope_.copy = before;
    }

    [[nodiscard]] bool has(std::string_view key) const { return find_row(scope_.block, key) != nullptr; }
    void ends(std::string_view key, model::Ends& e, const model::Point2& from, const model::Point2& to);
    void frames(std::string_view key, std::array<std::optional<model::Frame>, 4>& f);
    void rest(std::string_view key, std::optional<model::Rest>& r);
    void kinds(std::string_view key, std::vector<model::FastenerKind>& k);

private:
    struct Scope {
        const yaml::Node* node = nullptr;
        std::string path, block;
        bool absent = false; ///< the block itself was not written: only its defaults are taken
        bool copy = false;   ///< keys here are taken from the original and must not be written
        std::vector<std::string> mistyped; ///< keys that an unknown key was probably meant to be
    };

    [[nodiscard]] const Row& row_of(std::string_view key) const;
    [[nodiscard]] std::string path_of(std::string_view key) const;
    /// The value of a key that is there and readable; reports a key without a value and a key that a copy must not have.
    const yaml::Node* present(std::string_view key, const Row& row);
    /// Whether the default counts for a key that is not there; reports a required key.
    bool takes_default(std::string_view key, const Row& row);
    void sister(std::string_view key, const Row& row);
    void refuse_unknown_keys();
    void refuse_key(const yaml::Entry& e);
    [[nodiscard]] std::string hint_for(const std::string& key);
    void refuse_other_ends(bool upright);
    void error(const base::Location& at, std::string path, std::string message, std::string hint = {});
    void caution(const base::Location& at, std::string path, std::string message);

    template <class F> void block(const yaml::Node& n, const std::string& path, const std::string& name, F&& f)
    {
        if (n.refused) return;
        if (n.kind != yaml::Node::Kind::map) {
            error(n.at, path, fmt::format("expected a block of keys ({}), found {}", keys_of(name), found(n)));
            return;
        }
        const Scope before = std::exchange(scope_, Scope{&n, path, name, false, false, {}});
        refuse_unknown_keys();
        f();
        scope_ = before;
    }

    template <class F> void absent_block(const std::string& path, const std::string& name, F&& f)
    {
        static const yaml::Node nothing{};
        const Scope before = std::exchange(scope_, Scope{&nothing, path, name, true, false, {}});
        f();
        scope_ = before;
    }

    template <class T> void read(const yaml::Node& n, const Row& row, const std::string& path, T& x)
    {
        if constexpr (is_leaf<T>) {
            read_leaf(n, row, x, {out_.diagnostics, path});
        } else {
            place(x, n.at);
            block(n, path, row.inside(), [&] { fields(*this, x); });
        }
    }

    template <class T> void read(const yaml::Node& n, const Row& row, const std::string& path, std::optional<T>& x)
    {
        x.emplace();
        read(n, row, path, *x);
    }

    template <class T> void read(const yaml::Node& n, const Row& row, const std::string& path, std::vector<T>& x)
        requires(!is_leaf<std::vector<T>>)
    {
        if (n.refused) return;
        if (n.kind != yaml::Node::Kind::list) {
            error(n.at, path, fmt::format("expected {}, found {}", expected(row), found(n)));
            return;
        }
        if (row.required && n.items.empty()) error(n.at, path, "the list is empty: at least one entry is needed");
        for (std::size_t i = 0; i < n.items.size(); ++i) {
            const std::string item = fmt::format("{}[{}]", path, i);
            T& entry = x.emplace_back();
            place(entry, n.items[i].at);
            block(n.items[i], item, row.inside(), [&] { fields(*this, entry); });
        }
    }

    void read(const yaml::Node& n, const Row& row, const std::string& path, model::EdgeCondition& x);
    void read(const yaml::Node& n, const Row& row, const std::string& path, model::MemberEnd& x);

    template <class T> void take_default(const Row& row, const std::string& path, T& x)
    {
        if (!row.fallback.empty() && row.type != Type::block) {
            yaml::Node n;
            n.kind = yaml::Node::Kind::scalar;
            n.text = row.fallback;
            read(n, row, path, x);
            forget_text(x);
        } else if constexpr (!is_leaf<T> && requires { fields(*this, x); }) {
            if (row.fallback.empty()) absent_block(path, row.inside(), [&] { fields(*this, x); });
        }
        note_default(row, path);
    }

    void note_default(const Row& row, const std::string& path);
    [[nodiscard]] static std::string keys_of(const std::string& block);

    /// Structs keep the place of their block in `where`, or in `at` where that is not a point.
    template <class T> static void place(T& x, const base::Location& at)
    {
        if constexpr (requires { x.where = at; }) x.where = at;
        else if constexpr (requires { x.at = at; }) x.at = at;
    }

    ReadResult& out_;
    model::Case* case_ = nullptr;
    Scope scope_;
};

} // namespace thinskin::casefile
