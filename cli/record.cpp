#include "report/record.h"

#include "base/location.h"
#include "casefile/reader.h"
#include "commands.h"
#include "interrupt.h"
#include "log.h"
#include "pipeline/analyse.h"
#include "record_rows.h"
#include "report/json.h"
#include "report/spread.h"
#include "single_loss.h"
#include "spread.h"
#include "studies/effects.h"
#include "studies/grid_error.h"

#include <array>
#include <filesystem>
#include <fmt/format.h>
#include <fstream>
#include <system_error>
#include <utility>

namespace thinskin::cli {
namespace {

namespace fs = std::filesystem;

/// A day of the calendar as YYYY-MM-DD.
bool is_date(const std::string& s)
{
    if (s.size() != 10 || s[4] != '-' || s[7] != '-') return false;
    for (const std::size_t i : {0U, 1U, 2U, 3U, 5U, 6U, 8U, 9U})
        if (s[i] < '0' || s[i] > '9') return false;
    const int year = std::stoi(s.substr(0, 4)), month = std::stoi(s.substr(5, 2)), day = std::stoi(s.substr(8, 2));
    if (month < 1 || month > 12) return false;
    const bool leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
    const std::array<int, 12> days{31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    return year >= 1 && day >= 1 && day <= days[static_cast<std::size_t>(month - 1)];
}

Exit refuse(Exit e, const std::string& words)
{
    fmt::print(stderr, "error: {}\n", words);
    return e;
}

void print_diagnostics(const std::vector<base::Diagnostic>& all)
{
    for (const base::Diagnostic& d : all) fmt::print(stderr, "{}\n", base::format(d));
}

/// Written beside its place and moved there whole, so that a full disk leaves the old file as it was. Empty = written.
std::string write_file(const fs::path& path, const std::string& bytes)
{
    const fs::path part = path.string() + ".part";
    std::error_code gone;
    {
        std::ofstream out(part, std::ios::binary | std::ios::trunc);
        out << bytes;
        out.close();
        if (!out) {
            fs::remove(part, gone);
            return fmt::format("{} could not be written: is the folder writable and the disk not full?", path.string());
        }
    }
    std::error_code error;
    fs::rename(part, path, error);
    if (!error) return "";
    fs::remove(part, gone);
    return fmt::format("{} could not be written: {}", path.string(), error.message());
}

struct Files { std::string record, result, copy, rows_name, rows; };

Exit write_all(const fs::path& folder, const Files& files)
{
    for (const auto& [name, bytes] : {std::pair{std::string("record.html"), &files.record}, std::pair{std::string("result.json"), &files.result}, std::pair{std::string("case.yaml"), &files.copy}, std::pair{files.rows_name, &files.rows}}) {
        if (name.empty()) continue;
        const fs::path path = folder / name;
        std::error_code ignored;
        const bool there = fs::exists(path, ignored);
        const std::string wrong = write_file(path, *bytes);
        if (!wrong.empty()) return refuse(Exit::not_solved, wrong);
        fmt::print("{} {}\n", there ? "overwrote" : "wrote    ", path.string());
    }
    return Exit::passed;
}

Files files_of(const model::Case& c, const pipeline::Analysis& a, const std::optional<results::Spread>& spread, const RecordOptions& options)
{
    report::RecordInputs in;
    in.job_number = c.job.number;
    in.vehicle = c.job.vehicle;
    in.prepared_by = c.job.prepared_by;
    in.notes = c.job.notes;
    in.date = options.date;
    in.values = record_rows(c);
    in.layout = a.layout.get();
    in.strict = options.strict;
    in.spread = spread ? &*spread : nullptr;
    const std::string json = report::check_json(*a.outcome);
    return {report::record_html(*a.outcome, in), spread ? report::with_spread(json, *spread) : json, c.text, c.own.file, c.own.file_text};
}

Exit record_case(const model::Case& c, const RecordOptions& options)
{
    const Interrupt interrupt;
    pipeline::Workspace workspace;
    pipeline::Analysis a = pipeline::analyse(c, workspace, pipeline::Depth::full, interrupt.token());
    print_diagnostics(a.diagnostics);
    if (interrupt.requested()) return refuse(Exit::interrupted, "stopped; nothing is written");
    if (base::has_errors(a.diagnostics)) return Exit::bad_case;
    if (!a.outcome) return refuse(Exit::not_solved, c.file + ": no result and no reason for it; please report this");
    if (options.detail) studies::add_effects(c, workspace, *a.outcome, interrupt.token());
    studies::add_grid_error(c, *a.outcome, interrupt.token());
    pipeline::add_contact_bounds(c, *a.outcome);
    if (interrupt.requested()) return refuse(Exit::interrupted, "stopped; nothing is written");
    if (options.strict) pipeline::apply_strict(*a.outcome);
    if (options.single_loss && !run_single_loss(c, workspace, *a.outcome, options.rust_mm, options.strict, interrupt)) return refuse(Exit::interrupted, "stopped; nothing is written");
    std::optional<results::Spread> spread;
    if (options.spread > 0 && !(spread = run_spread(c, workspace, *a.outcome, options.spread, interrupt))) return refuse(Exit::interrupted, "stopped; nothing is written");
    std::error_code error;
    fs::create_directories(options.folder, error);
    if (error || !fs::is_directory(options.folder, error))
        return refuse(Exit::bad_command, fmt::format("{} is no folder and cannot be made one{}", options.folder, error ? ": " + error.message() : ""));
    const Exit written = write_all(options.folder, files_of(c, a, spread, options));
    if (written != Exit::passed) return written;
    fmt::print("{}\n", a.outcome->headline);
    if (a.outcome->single_loss) fmt::print("{}\n", a.outcome->single_loss->headline);
    if (spread) fmt::print("{}\n", spread->headline);
    return exit_of(a.outcome->single_loss ? a.outcome->single_loss->verdict : a.outcome->verdict);
}

} // namespace

Exit run_record(const RecordOptions& options)
{
    if (!options.date.empty() && !is_date(options.date))
        return refuse(Exit::bad_command, fmt::format("--date: expected a day such as 2026-03-31, found \"{}\"", options.date));
    log("reading " + options.file);
    casefile::ReadResult read = casefile::read_file(options.file);
    print_diagnostics(read.diagnostics);
    if (!read.value || base::has_errors(read.diagnostics)) return Exit::bad_case;
    if (!options.grid.empty()) read.value->grid = model::grid_size(options.grid);
    return record_case(*read.value, options);
}

} // namespace thinskin::cli
