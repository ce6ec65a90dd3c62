#include "casefile/reader.h"
#include "commands.h"
#include "interrupt.h"
#include "log.h"
#include "pipeline/analyse.h"
#include "report/json.h"
#include "report/text.h"
#include "report/spread.h"
#include "single_loss.h"
#include "spread.h"
#include "studies/effects.h"
#include "studies/grid_error.h"

#include <cstdlib>
#include <fmt/format.h>
#include <unistd.h>

namespace thinskin::cli {
namespace {

struct Printed { Exit exit = Exit::passed; std::string text; };

void print_diagnostics(const std::vector<base::Diagnostic>& all)
{
    for (const base::Diagnostic& d : all) fmt::print(stderr, "{}\n", base::format(d));
}

/// Among several cases a JSON reader must see which one could not be read.
Printed bad_case(const std::string& file, const std::vector<base::Diagnostic>& all, const CheckOptions& options)
{
    if (!options.json || options.files.size() < 2) return {Exit::bad_case, ""};
    std::vector<std::string> lines;
    for (const base::Diagnostic& d : all) lines.push_back(base::format(d));
    return {Exit::bad_case, report::case_error_json(file, lines)};
}

/// The caution is the last line of whatever is printed.
std::string as_text(const results::Outcome& o, const std::optional<results::Spread>& spread, const CheckOptions& options)
{
    if (options.json) return spread ? report::with_spread(report::check_json(o), *spread) : report::check_json(o);
    const bool colour = isatty(STDOUT_FILENO) != 0 && std::getenv("NO_COLOR") == nullptr;
    const std::string text = report::check_text(o, {.detail = options.detail, .strict = options.strict, .colour = colour});
    return spread ? text + report::spread_text(*spread) + "\n" + std::string(base::caution_text) + "\n" : text;
}

Printed check_case(const model::Case& c, const CheckOptions& options, pipeline::Workspace& workspace, const Interrupt& interrupt)
{
    pipeline::Analysis a = pipeline::analyse(c, workspace, pipeline::Depth::full, interrupt.token());
    print_diagnostics(a.diagnostics);
    if (interrupt.requested()) return {Exit::interrupted, ""};
    if (base::has_errors(a.diagnostics)) return bad_case(c.file, a.diagnostics, options);
    if (!a.outcome) {
        fmt::print(stderr, "{}: error: no result and no reason for it; please report this\n", c.file);
        return {Exit::not_solved, ""};
    }
    if (options.detail || options.json) {
        studies::add_grid_error(c, *a.outcome, interrupt.token());
        pipeline::add_contact_bounds(c, *a.outcome);
    }
    if (options.detail) studies::add_effects(c, workspace, *a.outcome, interrupt.token()); // a few more runs of the same case
    if (interrupt.requested()) return {Exit::interrupted, ""};
    if (options.strict) pipeline::apply_strict(*a.outcome);
    if (options.single_loss && !run_single_loss(c, workspace, *a.outcome, options.rust_mm, options.strict, interrupt)) return {Exit::interrupted, ""};
    std::optional<results::Spread> spread;
    if (options.spread > 0 && !(spread = run_spread(c, workspace, *a.outcome, options.spread, interrupt))) return {Exit::interrupted, ""};
    log(fmt::format("{}: {}, solver {:.1f} ms", c.file, base::name(a.outcome->verdict), a.outcome->timing.solver_ms));
    return {exit_of(a.outcome->single_loss ? a.outcome->single_loss->verdict : a.outcome->verdict), as_text(*a.outcome, spread, options)};
}

Printed check_file(const std::string& path, const CheckOptions& options, pipeline::Workspace& workspace, const Interrupt& interrupt)
{
    log("reading " + path);
    casefile::ReadResult read = casefile::read_file(path);
    print_diagnostics(read.diagnostics);
    if (!read.value || base::has_errors(read.diagnostics)) return bad_case(path, read.diagnostics, options);
    if (!options.grid.empty()) read.value->grid = model::grid_size(options.grid);
    return check_case(*read.value, options, workspace, interrupt);
}

/// One case: its text. Several: texts under a line with the file's name, or one JSON array.
std::string joined(const std::vector<std::string>& texts, const CheckOptions& options)
{
    if (options.files.size() == 1) return texts.empty() ? "" : texts.front();
    if (options.json) return report::json_array(texts);
    std::string s;
    for (const std::string& t : texts) s += (s.empty() ? "" : "\n" + std::string(100, '#') + "\n\n") + t;
    return s;
}

} // namespace

Exit run_check(const CheckOptions& options)
{
    const Interrupt interrupt;
    pipeline::Workspace workspace;
    Exit exit = Exit::passed;
    std::vector<std::string> texts;
    for (const std::string& path : options.files) {
        Printed p = check_file(path, options, workspace, interrupt);
        exit = worse(exit, p.exit);
        if (!p.text.empty()) texts.push_back(std::move(p.text));
        if (interrupt.requested()) break;
    }
    if (interrupt.requested()) {
        fmt::print(stderr, "stopped; no result is printed\n");
        return Exit::interrupted;
    }
    fmt::print("{}", joined(texts, options));
    return exit;
}

} // namespace thinskin::cli
