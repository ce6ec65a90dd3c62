#pragma once
#include "catalogue/catalogue.h"
#include "catalogue/data.h"

#include <algorithm>

/// Inside the catalogue: from rows of text to structs.
namespace thinskin::catalogue {

[[nodiscard]] inline Origin origin(const RowView& r) { return {r.text("source"), r.label(), r.text("note")}; }

/// One struct for each row of a data file.
template <class Make>
[[nodiscard]] auto load_rows(std::string_view file, Make make)
{
    const Rows rows = read_rows(file);
    std::vector<decltype(make(RowView(rows, 0)))> all;
    for (std::size_t i = 0; i < rows.cells.size(); ++i) all.push_back(make(RowView(rows, i)));
    return all;
}

template <class Row, class Wanted>
[[nodiscard]] const Row* find_row(const std::vector<Row>& rows, Wanted wanted)
{
    const auto it = std::find_if(rows.begin(), rows.end(), wanted);
    return it == rows.end() ? nullptr : &*it;
}

} // namespace thinskin::catalogue
