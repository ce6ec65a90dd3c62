#include "record_rows.h"

#include "casefile/values.h"

#include <fmt/format.h>

namespace thinskin::cli {

std::vector<report::InputRow> record_rows(const model::Case& c)
{
    std::vector<report::InputRow> rows;
    for (const casefile::Value& v : casefile::case_values(c))
        rows.push_back({v.path, v.list ? fmt::format("[{}]", fmt::join(v.items, ", ")) : v.items.front(), casefile::measured_from(c, v.path)});
    return rows;
}

} // namespace thinskin::cli
