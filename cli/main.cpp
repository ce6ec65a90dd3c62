#include "base/status.h"
#include "commands.h"
#include "log.h"
#include "report/version.h"

#include <CLI/CLI.hpp>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <exception>
#include <fmt/format.h>
#include <functional>
#include <string>
#include <vector>

namespace {

using namespace thinskin;
using cli::Exit;

struct Parsed {
    cli::CheckOptions check;
    cli::RecordOptions record;
    cli::ProposeOptions propose;
    std::vector<std::string> write;
    cli::CatalogueOptions catalogue;
    cli::FormulaOptions formula;
    cli::NewOptions starter;
    bool verbose = false;
    std::function<Exit()> run;
};

constexpr const char* exit_codes =
    "Exit codes: 0 passes (with or without judgement), 1 a check fails, 2 command misused, 3 case file wrong, 4 not solved, "
    "5 a required group is not covered and nothing fails. Several cases: 2 before 3, 4, 1, 5, 0.";

CLI::App* command(CLI::App& app, Parsed& p, const char* name, const char* what, std::function<Exit()> run)
{
    CLI::App* sub = app.add_subcommand(name, what);
    sub->footer("\n" + std::string(base::caution_text));
    sub->callback([&p, run] { p.run = run; });
    return sub;
}

/// A range lets "nan" through: neither below nor above.
std::string not_nan(const std::string& text) { return std::isnan(std::strtod(text.c_str(), nullptr)) ? "is not a number" : ""; }

void add_single_loss(CLI::App& c, bool& on, double& rust_mm)
{
    c.add_flag("--single-loss", on, "run the case again with one thing lost at a time: each fastener and mount, each strap, some skin to corrosion; the exit code is then the worst of all of them");
    c.add_option("--rust", rust_mm, "with --single-loss: mm of skin that corrosion takes, of steel or aluminium (default 0.1, engineering judgement); 0 leaves it out")->check(CLI::Range(0.0, 10.0))->check(not_nan, "");
}

/// The grid of the skin, for this run.
void add_grid(CLI::App* c, std::string& grid)
{
    c->add_option("--grid", grid, "grid of the skin instead of the case's: spacing 45, 30 or 20 mm")->check(CLI::IsMember({"quick", "normal", "fine"}));
}

void add_spread(CLI::App* c, int& samples)
{
    c->add_option("--spread", samples, "run the case so many times over the ranges of what nobody measured: how far the least margin spreads, and what to measure first")->check(CLI::Range(10, 10000));
}

void add_check(CLI::App& app, Parsed& p)
{
    CLI::App* c = command(app, p, "check", "Margins of one or more cases, the governing one first", [&p] { return cli::run_check(p.check); });
    c->add_option("CASE", p.check.files, "case files (YAML)")->required();
    c->add_flag("--json", p.check.json, "result as JSON; several cases give one array");
    c->add_flag("--detail", p.check.detail, "every row and force, clauses, inputs, hand sums, solver time");
    c->add_flag("--strict", p.check.strict, "what passes on judgement counts as not covered");
    add_single_loss(*c, p.check.single_loss, p.check.rust_mm);
    add_grid(c, p.check.grid);
    add_spread(c, p.check.spread);
    c->footer("\n" + std::string(exit_codes) + "\n\n" + std::string(base::caution_text));
}

void add_record(CLI::App& app, Parsed& p)
{
    CLI::App* c = command(app, p, "record", "Write the job record: a page to print, the result as JSON, a copy of the case", [&p] { return cli::run_record(p.record); });
    c->add_option("CASE", p.record.file, "case file (YAML)")->required();
    c->add_option("-o,--output", p.record.folder, "folder for record.html, result.json and case.yaml; files of these names are overwritten")->required();
    add_grid(c, p.record.grid);
    c->add_option("--date", p.record.date, "date on the record, YYYY-MM-DD; without it a line to fill in");
    c->add_flag("--detail", p.record.detail, "run the case again for each assumption at its bad end: what it does to the governing margin");
    c->add_flag("--strict", p.record.strict, "what passes on judgement counts as not covered");
    add_single_loss(*c, p.record.single_loss, p.record.rust_mm);
    add_spread(c, p.record.spread);
    c->footer("\n" + std::string(exit_codes) + "\n\n" + std::string(base::caution_text));
}

void add_propose(CLI::App& app, Parsed& p)
{
    CLI::App* c = command(app, p, "propose", "Which angle, how many fasteners: fixing schemes that hold, and what each costs", [&p] {
        if (p.write.size() == 2) p.propose.write_number = std::atoi(p.write[0].c_str()), p.propose.write_file = p.write[1];
        return cli::run_propose(p.propose);
    });
    c->add_option("CASE", p.propose.file, "case file (YAML); its block propose says what may be used")->required();
    c->add_flag("--json", p.propose.json, "result as JSON");
    c->add_option("--write", p.write, "N FILE: the case with scheme N in it, as a case file")->expected(2);
    c->add_option("--schemes", p.propose.schemes, "look at so many schemes, evenly spaced over the space; 0: all")->check(CLI::Range(0, 1000000));
    c->add_option("--threads", p.propose.threads, "threads; 0: as many as there are cores, at most four. The answer does not depend on it")->check(CLI::Range(0, 64));
    c->add_flag("--quick", p.propose.quick, "the schemes and their margins alone: no bad ends of assumptions, no single losses, no natural frequencies");
    c->add_flag("--single-loss", p.propose.single_loss, "run the schemes again with one thing lost at a time; done anyway, unless --quick")->excludes("--quick");
    c->footer("\nExit codes: 0 a scheme holds, 1 none holds, 2 command misused, 3 case file wrong, 4 not solved, 5 not covered whichever scheme, 130 stopped before one was found.\n\n" + std::string(base::caution_text));
}

void add_catalogue(CLI::App& app, Parsed& p)
{
    CLI::App* c = command(app, p, "catalogue", "Materials, fasteners, sections, roads with their sources", [&p] { return cli::run_catalogue(p.catalogue); });
    c->add_option("TABLE", p.catalogue.table, "table to print; without it the tables are listed");
    c->add_option("--case", p.catalogue.file, "a case: its own rows too, and those of the file that it shares");
}

void add_new(CLI::App& app, Parsed& p)
{
    CLI::App* c = command(app, p, "new", "Print a commented starter case", [&p] { return cli::run_new(p.starter); });
    c->add_option("KIND", p.starter.kind, "kind of job; an unknown one lists the kinds")->required();
}

void add_formula(CLI::App& app, Parsed& p)
{
    CLI::App* c = command(app, p, "formula", "List, show or work out one formula, with its source and range", [&p] { return cli::run_formula(p.formula); });
    c->add_option("ID", p.formula.id, "formula to show; without it all are listed");
    c->add_option("VALUES", p.formula.values, "symbol=value, one for each symbol; works the formula out");
    c->add_flag("--json", p.formula.json, "as JSON");
}

Exit guarded(const Parsed& p)
{
    try {
        const Exit e = p.run();
        if (std::fflush(stdout) == 0) return e;
        std::fputs("error: the result could not be written\n", stderr);
    } catch (const std::exception& e) {
        fmt::print(stderr, "error: {}; please report this\n", e.what());
    }
    return Exit::not_solved;
}

} // namespace

int main(int argc, char** argv)
{
    CLI::App app{"thinskin: does a thin door or wall skin carry what is bolted to it?"};
    app.footer("\n" + std::string(base::caution_text));
    app.set_version_flag("--version", fmt::format("{} {}", report::tool_name, report::tool_version));
    app.require_subcommand(1);
    Parsed p;
    app.add_flag("-v,--verbose", p.verbose, "messages for developers on standard error");
    add_check(app, p);
    add_record(app, p);
    add_propose(app, p);
    add_catalogue(app, p);
    add_new(app, p);
    add_formula(app, p);
    try {
        app.parse(argc, argv);
    } catch (const CLI::ParseError& e) {
        return app.exit(e) == 0 ? 0 : static_cast<int>(Exit::bad_command);
    }
    cli::set_verbose(p.verbose);
    return static_cast<int>(guarded(p));
}
