#include "casefile/reader.h"
#include "casefile/writer.h"
#include "commands.h"
#include "interrupt.h"
#include "log.h"
#include "report/proposal.h"
#include "search/propose.h"

#include <chrono>
#include <fmt/format.h>
#include <fstream>

namespace thinskin::cli {
namespace {

using Clock = std::chrono::steady_clock;

/// A line a second on standard error.
std::function<void(const search::Progress&)> progress_lines()
{
    return [last = Clock::now()](const search::Progress& p) mutable {
        if (Clock::now() - last < std::chrono::seconds(1)) return;
        last = Clock::now();
        fmt::print(stderr, "{}: {} of {} decided{}\n", p.stage, p.done, p.of, p.seconds_left < 0 ? "" : fmt::format(", about {:.0f} s left", p.seconds_left));
    };
}

Exit refuse(Exit e, const std::string& words)
{
    fmt::print(stderr, "error: {}\n", words);
    return e;
}

/// Scheme N, or the closest one (1) where nothing holds.
Exit write_scheme(const ProposeOptions& options, const search::Proposed& p)
{
    const std::size_t n = static_cast<std::size_t>(options.write_number);
    if (options.write_number < 1 || n > p.cases.size()) return refuse(Exit::bad_command, fmt::format("--write: there is no scheme {}; there are {}", options.write_number, p.cases.size()));
    std::ofstream out(options.write_file, std::ios::binary | std::ios::trunc);
    out << casefile::write(p.cases[n - 1]);
    out.close();
    if (!out) return refuse(Exit::not_solved, options.write_file + " could not be written: is the folder writable and the disk not full?");
    fmt::print(stderr, "scheme {} is in {}\n", n, options.write_file);
    return Exit::passed;
}

Exit exit_of_proposal(const results::Proposal& p)
{
    if (!p.front.empty()) return exit_of(p.front.front().verdict);
    if (p.stopped) return Exit::interrupted;
    if (p.closest) return p.closest->verdict == base::Verdict::pass ? Exit::check_failed : exit_of(p.closest->verdict);
    return Exit::not_solved;
}

} // namespace

Exit run_propose(const ProposeOptions& options)
{
    const Interrupt interrupt;
    log("reading " + options.file);
    casefile::ReadResult read = casefile::read_file(options.file);
    for (const base::Diagnostic& d : read.diagnostics) fmt::print(stderr, "{}\n", base::format(d));
    if (!read.value || base::has_errors(read.diagnostics)) return Exit::bad_case;
    search::ProposeOptions o;
    o.search.schemes = static_cast<std::size_t>(options.schemes);
    o.search.threads = static_cast<unsigned>(options.threads);
    o.search.progress = progress_lines();
    o.single_loss = options.single_loss;
    const search::Proposed p = search::propose(*read.value, o, interrupt.token());
    log(fmt::format("{}: {} schemes in {:.1f} s", options.file, p.answer.counts.space, p.answer.seconds));
    fmt::print("{}", options.json ? report::proposal_json(p.answer) : report::proposal_text(p.answer));
    if (options.write_number != 0)
        if (const Exit written = write_scheme(options, p); written != Exit::passed) return written;
    return exit_of_proposal(p.answer);
}

} // namespace thinskin::cli
