#pragma once
#include "casefile/schema.h"
#include "model/case.h"
#include "yaml/document.h"

#include <array>
#include <map>
#include <optional>
#include <string>
#include <type_traits>
#include <vector>

/// Single values: text in the file to a field and back. A row says what is expected.
namespace thinskin::casefile {

/// Where problems of one value go.
struct Report {
    std::vector<base::Diagnostic>& out;
    std::string path;
    void error(const base::Location& at, std::string message, std::string hint = {}) const
    {
        out.push_back({at, path, std::move(message), std::move(hint), base::Severity::error});
    }
};

using Forces = std::array<model::Quantity, 3>;
using Quantities = std::vector<model::Quantity>;
using Renames = std::map<std::string, std::string>;
using Texts = std::vector<std::string>;

// Each returns false after reporting what is wrong; the field is then unchanged.
bool read_leaf(const yaml::Node& n, const Row& row, int& x, const Report& report);
bool read_leaf(const yaml::Node& n, const Row& row, std::string& x, const Report& report);
bool read_leaf(const yaml::Node& n, const Row& row, model::Quantity& x, const Report& report);
bool read_leaf(const yaml::Node& n, const Row& row, model::Point2& x, const Report& report);
bool read_leaf(const yaml::Node& n, const Row& row, model::Point3& x, const Report& report);
bool read_leaf(const yaml::Node& n, const Row& row, Forces& x, const Report& report);
bool read_leaf(const yaml::Node& n, const Row& row, Quantities& x, const Report& report);
bool read_leaf(const yaml::Node& n, const Row& row, model::Washer& x, const Report& report);
bool read_leaf(const yaml::Node& n, const Row& row, Renames& x, const Report& report);
bool read_leaf(const yaml::Node& n, const Row& row, Texts& x, const Report& report);
/// Position of the word in row.words.
std::optional<std::size_t> read_word(const yaml::Node& n, const Row& row, const Report& report);

template <class T>
    requires std::is_enum_v<T> || std::is_same_v<T, bool>
bool read_leaf(const yaml::Node& n, const Row& row, T& x, const Report& report)
{
    const auto word = read_word(n, row, report);
    if (word) x = static_cast<T>(*word);
    return word.has_value();
}

[[nodiscard]] yaml::Node write_leaf(int x, const Row& row);
[[nodiscard]] yaml::Node write_leaf(const std::string& x, const Row& row);
[[nodiscard]] yaml::Node write_leaf(const model::Quantity& x, const Row& row);
[[nodiscard]] yaml::Node write_leaf(const model::Point2& x, const Row& row);
[[nodiscard]] yaml::Node write_leaf(const model::Point3& x, const Row& row);
[[nodiscard]] yaml::Node write_leaf(const Forces& x, const Row& row);
[[nodiscard]] yaml::Node write_leaf(const Quantities& x, const Row& row);
[[nodiscard]] yaml::Node write_leaf(const model::Washer& x, const Row& row);
[[nodiscard]] yaml::Node write_leaf(const Renames& x, const Row& row);
[[nodiscard]] yaml::Node write_leaf(const Texts& x, const Row& row);
[[nodiscard]] yaml::Node write_word(std::size_t index, const Row& row);

template <class T>
    requires std::is_enum_v<T> || std::is_same_v<T, bool>
[[nodiscard]] yaml::Node write_leaf(T x, const Row& row)
{
    return write_word(static_cast<std::size_t>(x), row);
}

/// A single value (true) or something with keys or entries of its own (false).
template <class T> inline constexpr bool is_leaf = std::is_enum_v<T>;
template <> inline constexpr bool is_leaf<bool> = true;
template <> inline constexpr bool is_leaf<int> = true;
template <> inline constexpr bool is_leaf<std::string> = true;
template <> inline constexpr bool is_leaf<model::Quantity> = true;
template <> inline constexpr bool is_leaf<model::Point2> = true;
template <> inline constexpr bool is_leaf<model::Point3> = true;
template <> inline constexpr bool is_leaf<Forces> = true;
template <> inline constexpr bool is_leaf<Quantities> = true;
template <> inline constexpr bool is_leaf<model::Washer> = true;
template <> inline constexpr bool is_leaf<Renames> = true;
template <> inline constexpr bool is_leaf<Texts> = true;

/// Stands where a default was taken: the value stays, the text goes ("not from a user").
void forget_text(model::Quantity& q);
template <class T> void forget_text(T&) {}

/// Wrong-length lists, wrong kinds of node: "a list", "a block", "the text ...".
[[nodiscard]] std::string found(const yaml::Node& n);

} // namespace thinskin::casefile
