#pragma once
#include "casefile/schema.h"

#include <utility>

/// Short forms so that the table reads as a table: quantity("panel.width", length, "...").required().above(0).
namespace thinskin::casefile {

class Maker {
public:
    Maker(std::string path, Type type, std::string help)
    {
        row_.path = std::move(path);
        row_.type = type;
        row_.help = std::move(help);
    }

    Maker&& required() && { row_.required = true; return std::move(*this); }
    Maker&& fallback(std::string text) && { row_.fallback = std::move(text); return std::move(*this); }
    /// A default that stands for an unmeasured fact.
    Maker&& assumed(std::string text, std::string why) &&
    {
        row_.fallback = std::move(text);
        row_.why = std::move(why);
        return std::move(*this);
    }
    Maker&& spread(std::string low_to_high) && { row_.spread = std::move(low_to_high); return std::move(*this); }
    Maker&& above(double x) && { row_.range.lower = x; row_.range.lower_open = true; return std::move(*this); }
    Maker&& from(double x) && { row_.range.lower = x; return std::move(*this); }
    Maker&& to(double x) && { row_.range.upper = x; return std::move(*this); }
    Maker&& below(double x) && { row_.range.upper = x; row_.range.upper_open = true; return std::move(*this); }
    Maker&& words(std::vector<std::string> all) && { row_.words = std::move(all); return std::move(*this); }
    Maker&& shared(std::string block) && { row_.shared = std::move(block); return std::move(*this); }
    Maker&& dimension(base::Dimension d) && { row_.dimension = d; return std::move(*this); }

    operator Row() && { return std::move(row_); }

private:
    Row row_;
};

inline Maker of(Type type, std::string path, std::string help) { return {std::move(path), type, std::move(help)}; }
inline Maker text(std::string path, std::string help) { return of(Type::text, std::move(path), std::move(help)); }
inline Maker block(std::string path, std::string help) { return of(Type::block, std::move(path), std::move(help)); }
inline Maker blocks(std::string path, std::string help) { return of(Type::blocks, std::move(path), std::move(help)); }
inline Maker word(std::string path, std::vector<std::string> all, std::string help)
{
    return of(Type::word, std::move(path), std::move(help)).words(std::move(all));
}
inline Maker quantity(std::string path, base::Dimension d, std::string help)
{
    return of(Type::quantity, std::move(path), std::move(help)).dimension(d);
}
inline Maker length(std::string path, std::string help)
{
    return quantity(std::move(path), base::Dimension::length, std::move(help));
}

/// The parts of the table, in the order of the file.
[[nodiscard]] std::vector<Row> job_rows();
[[nodiscard]] std::vector<Row> catalogue_rows();
[[nodiscard]] std::vector<Row> road_rows();
[[nodiscard]] std::vector<Row> panel_rows();
[[nodiscard]] std::vector<Row> door_rows();
[[nodiscard]] std::vector<Row> item_rows();
[[nodiscard]] std::vector<Row> bracket_rows();
[[nodiscard]] std::vector<Row> fastener_rows();
[[nodiscard]] std::vector<Row> reinforcement_rows();
[[nodiscard]] std::vector<Row> load_rows();
[[nodiscard]] std::vector<Row> propose_rows();
[[nodiscard]] std::vector<Row> shared_rows();

} // namespace thinskin::casefile
