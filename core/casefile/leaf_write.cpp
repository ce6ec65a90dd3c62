#include "casefile/leaf.h"
#include "yaml/emit.h"

#include <fmt/format.h>

namespace thinskin::casefile {
namespace {

/// All digits that the value has (the shortest text that reads back to the same number).
std::string in_inner_unit(double x, base::Dimension d)
{
    if (d == base::Dimension::ratio) return fmt::format("{} %", 100 * x);
    return fmt::format("{} {}", x, base::inner_unit(d));
}

template <class... Q> yaml::Node list_of(const Row& row, const Q&... q)
{
    yaml::Node n = yaml::list();
    (n.items.push_back(write_leaf(q, row)), ...);
    return n;
}

} // namespace

yaml::Node write_leaf(int x, const Row&) { return yaml::scalar(fmt::format("{}", x)); }
yaml::Node write_leaf(const std::string& x, const Row&) { return yaml::scalar(x); }

yaml::Node write_leaf(const model::Quantity& x, const Row& row)
{
    return yaml::scalar(x.text.empty() ? in_inner_unit(x.value, row.dimension) : x.text);
}

yaml::Node write_leaf(const model::Point2& x, const Row& row) { return list_of(row, x.x, x.y); }
yaml::Node write_leaf(const model::Point3& x, const Row& row) { return list_of(row, x.x, x.y, x.z); }
yaml::Node write_leaf(const Forces& x, const Row& row) { return list_of(row, x[0], x[1], x[2]); }

yaml::Node write_leaf(const Quantities& x, const Row& row)
{
    yaml::Node n = yaml::list();
    for (const model::Quantity& q : x) n.items.push_back(write_leaf(q, row));
    return n;
}

yaml::Node write_leaf(const model::Washer& x, const Row&)
{
    return yaml::scalar(x.text.empty() ? fmt::format("{}x{} mm", x.diameter.value, x.thickness.value) : x.text);
}

yaml::Node write_leaf(const Renames& x, const Row&)
{
    yaml::Node n = yaml::map();
    for (const auto& entry : x) yaml::put(n, entry.first, yaml::scalar(entry.second));
    return n;
}

yaml::Node write_leaf(const Texts& x, const Row&)
{
    yaml::Node n = yaml::list();
    for (const std::string& text : x) n.items.push_back(yaml::scalar(text));
    return n;
}

yaml::Node write_word(std::size_t index, const Row& row) { return yaml::scalar(row.words.at(index)); }

} // namespace thinskin::casefile
