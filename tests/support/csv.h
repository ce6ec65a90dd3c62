#pragma once
#include <doctest/doctest.h>

#include <cstdlib>
#include <fstream>
#include <map>
#include <string>
#include <vector>

namespace thinskin::tests {

/// One row of a table in tests/data: cells by column name; an empty cell is no number.
struct CsvRow {
    std::map<std::string, std::string> cells;
    [[nodiscard]] const std::string& text(const std::string& column) const
    {
        REQUIRE_MESSAGE(cells.contains(column), column);
        return cells.at(column);
    }
    [[nodiscard]] double number(const std::string& column) const
    {
        const std::string& cell = text(column);
        char* end = nullptr;
        const double value = std::strtod(cell.c_str(), &end);
        REQUIRE_MESSAGE((!cell.empty() && *end == '\0'), column << " = " << cell);
        return value;
    }
};

inline std::vector<std::string> split_at_commas(const std::string& line)
{
    std::vector<std::string> parts(1);
    for (const char c : line) {
        if (c == ',') parts.emplace_back();
        else parts.back() += c;
    }
    return parts;
}

/// The rows of tests/data/NAME.csv; lines that start with '#' are left out, the first of the others names the columns.
inline std::vector<CsvRow> read_csv(const std::string& name)
{
    std::ifstream in(std::string(THINSKIN_SOURCE_DIR) + "/tests/data/" + name + ".csv");
    REQUIRE_MESSAGE(in.good(), name);
    std::vector<std::string> columns;
    std::vector<CsvRow> rows;
    for (std::string line; std::getline(in, line);) {
        if (line.starts_with("#")) continue;
        const std::vector<std::string> parts = split_at_commas(line);
        if (columns.empty()) {
            columns = parts;
            continue;
        }
        REQUIRE_MESSAGE(parts.size() == columns.size(), line);
        rows.emplace_back();
        for (std::size_t i = 0; i < parts.size(); ++i) rows.back().cells[columns[i]] = parts[i];
    }
    return rows;
}

} // namespace thinskin::tests
