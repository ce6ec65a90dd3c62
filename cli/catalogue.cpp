#include "catalogue/catalogue.h"

#include "base/status.h"
#include "casefile/reader.h"
#include "commands.h"
#include "report/own_rows.h"
#include "report/table.h"

#include <algorithm>
#include <fmt/format.h>

namespace thinskin::cli {
namespace {

constexpr std::size_t origin_columns = 3; // source, label, note: every table ends with them
constexpr int width = 100;

void print_list()
{
    report::Table table({{"table"}, {"holds"}});
    for (const catalogue::TableInfo& t : catalogue::tables()) table.row({t.name, t.title});
    fmt::print("{}\nthinskin catalogue TABLE prints one of them.\n", table.text());
}

std::string origin_text(const std::vector<std::string>& row)
{
    const std::size_t n = row.size();
    const std::string& note = row[n - 1];
    return fmt::format("{} [{}]{}", row[n - 3], row[n - 2], note.empty() || note == "-" ? "" : "; " + note);
}

/// The long origin texts are told once below the table and numbered in it.
void print_table(const catalogue::Table& t)
{
    const std::size_t own = t.columns.size() - origin_columns;
    std::vector<report::Column> columns;
    for (std::size_t i = 0; i < own; ++i) columns.push_back({t.columns[i], i == 0 ? report::Align::left : report::Align::right});
    columns.push_back({"source", report::Align::right});
    report::Table table(columns);
    std::vector<std::string> origins;
    for (const auto& row : t.rows) {
        const std::string origin = origin_text(row);
        auto it = std::find(origins.begin(), origins.end(), origin);
        if (it == origins.end()) it = origins.insert(it, origin);
        std::vector<std::string> cells(row.begin(), row.end() - static_cast<std::ptrdiff_t>(origin_columns));
        cells.push_back(fmt::format("[{}]", it - origins.begin() + 1));
        table.row(std::move(cells));
    }
    fmt::print("{}\n\n{}\nSources\n", t.info.title, table.text());
    for (std::size_t i = 0; i < origins.size(); ++i) fmt::print("{}", report::wrapped(fmt::format("  [{}] ", i + 1), origins[i], width));
}

void print_diagnostics(const std::vector<base::Diagnostic>& all)
{
    for (const base::Diagnostic& d : all) fmt::print(stderr, "{}\n", base::format(d));
}

/// Rows of a case and of the file that it shares.
bool print_own(const std::string& file)
{
    const casefile::ReadResult read = casefile::read_file(file);
    print_diagnostics(read.diagnostics);
    if (!read.value) return false;
    fmt::print("\nRows of {}{}\n\n{}", file, read.value->own.file.empty() ? "" : " and " + read.value->own.file, report::own_rows_text(read.value->own));
    return true;
}

} // namespace

Exit run_catalogue(const CatalogueOptions& options)
{
    if (options.table.empty() && options.file.empty()) {
        print_list();
    } else if (options.table.empty()) {
        // the rows of the case alone
    } else if (const auto table = catalogue::table(options.table)) {
        print_table(*table);
    } else {
        fmt::print(stderr, "error: {}\n", catalogue::no_such_table(options.table));
        return Exit::bad_command;
    }
    if (!options.file.empty() && !print_own(options.file)) return Exit::bad_case;
    fmt::print("\n{}", report::wrapped("", base::caution_text, width));
    return Exit::passed;
}

} // namespace thinskin::cli
