#include "casefile/exchange.h"
#include "casefile/reader.h"
#include "casefile/writer.h"
#include "commands.h"
#include "interrupt.h"
#include "log.h"
#include "report/proposal.h"
#include "search/propose.h"
#include "search/tidy.h"

#include <chrono>
#include <fmt/format.h>
#include <fstream>

namespace thinskin::cli {
namespace {

using Clock = std::chrono::steady_clock;

/// A line a second on standard error, and one for each stage that begins.
std::function<void(const search::Progress&)> progress_lines()
{
    return [last = Clock::now(), stage = std::string()](const search::Progress& p) mutable {
        if (p.stage == stage && Clock::now() - last < std::chrono::seconds(1)) return;
        last = Clock::now();
        stage = p.stage;
        fmt::print(stderr, "{}\n", search::progress_words(p));
    };
}

Exit refuse(Exit e, const std::string& words)
{
    fmt::print(stderr, "error: {}\n", words);
    return e;
}

struct Written { std::string text; bool anew = false; };

/// The text of the case with the scheme's blocks in it; the whole of it anew where its bytes cannot be patched, or do not read back as the scheme.
Written with_scheme(const model::Case& now, const model::Case& scheme)
{
    const casefile::Edited e = casefile::edit_text(now.text, casefile::exchange(now, scheme));
    if (e.ok) {
        const casefile::ReadResult back = casefile::read_text(e.text, now.file);
        if (back.value && casefile::exchange(*back.value, scheme).empty()) return {e.text, false};
    }
    return {casefile::write(scheme), true};
}

/// Scheme N, or the closest one (1) where nothing holds.
Exit write_scheme(const ProposeOptions& options, const model::Case& now, const search::Proposed& p)
{
    const std::size_t n = static_cast<std::size_t>(options.write_number);
    if (options.write_number < 1 || n > p.cases.size()) return refuse(Exit::bad_command, fmt::format("--write: there is no scheme {}; there are {}", options.write_number, p.cases.size()));
    std::ofstream out(options.write_file, std::ios::binary | std::ios::trunc);
    const Written written = with_scheme(now, p.cases[n - 1]);
    out << written.text;
    out.close();
    if (!out) return refuse(Exit::not_solved, options.write_file + " could not be written: is the folder writable and the disk not full?");
    fmt::print(stderr, "scheme {} is in {}\n", n, options.write_file);
    if (written.anew) fmt::print(stderr, "  the whole file is written anew, without its comments\n");
    for (const std::string& s : search::replaced(now, p.cases[n - 1])) fmt::print(stderr, "  {}\n", s);
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
    o.robust = o.single_loss = !options.quick;
    const search::Proposed p = search::propose(*read.value, o, interrupt.token());
    log(fmt::format("{}: {} schemes in {:.1f} s", options.file, p.answer.counts.space, p.answer.seconds));
    fmt::print("{}", options.json ? report::proposal_json(p.answer) : report::proposal_text(p.answer));
    if (options.write_number != 0)
        if (const Exit written = write_scheme(options, *read.value, p); written != Exit::passed) return written;
    return exit_of_proposal(p.answer);
}

} // namespace thinskin::cli
