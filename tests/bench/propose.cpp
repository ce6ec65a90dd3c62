// How fast `propose` is, and that it leaves nothing out. Usage: propose_bench CASE [SCHEMES [exhaustive]]
//   propose_bench cases/condenser_door.yaml                      the whole space
//   propose_bench cases/condenser_door.yaml 2000 exhaustive      2000 schemes, then the same ones solved to the last
#include "casefile/reader.h"
#include "search/search.h"

#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <string>
#include <sys/resource.h>

using namespace thinskin;

namespace {

struct Timed { search::Searched found; double seconds = 0, processor = 0; };

Timed timed(const model::Case& c, const search::Options& options)
{
    const auto wall = std::chrono::steady_clock::now();
    const std::clock_t used = std::clock();
    Timed t{search::search(c, options), 0, 0};
    t.seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - wall).count();
    t.processor = static_cast<double>(std::clock() - used) / CLOCKS_PER_SEC;
    return t;
}

void print(const char* what, const Timed& t)
{
    const results::ProposalCounts& n = t.found.counts;
    std::printf("%s: %.1f s, %.1f s of processor; %zu schemes, %.0f a second; front %zu\n", what, t.seconds, t.processor, n.space, static_cast<double>(n.space) / t.seconds, t.found.front.size());
    std::printf("  impossible %zu, over a limit %zu, discarded %zu (closed formulas %zu, sisters and cousins %zu), beaten %zu, fail %zu, hold %zu\n", n.impossible, n.over_limit, n.discarded, n.by_bounds, n.by_sisters, n.beaten, n.fail, n.hold);
    std::printf("  analyses: forces %zu, parked %zu, without the skin's stress %zu, whole %zu\n", n.forces, n.parked, n.without_stress, n.settled);
}

/// Schemes that were left out and hold, and upper bounds that were none.
int mistakes(const search::Searched& pruned, const search::Searched& all)
{
    int wrong = 0;
    for (std::size_t i = 0; i < all.candidates.size(); ++i) {
        const search::Candidate &k = pruned.candidates[i], &e = all.candidates[i];
        const bool lost = k.state == search::State::discarded && e.state == search::State::holds;
        const bool above = k.state != search::State::impossible && e.margin > -1 && e.margin > k.upper + 1e-9;
        if (!lost && !above) continue;
        ++wrong;
        std::printf("  %s %s: bound %+.3f, margin %+.3f (%s)\n", lost ? "LOST" : "above its bound:", search::words(k.choices).c_str(), k.upper, e.margin, k.why.c_str());
    }
    return wrong;
}

} // namespace

int main(int argc, char** argv)
{
    if (argc < 2) return 2;
    const casefile::ReadResult read = casefile::read_file(argv[1]);
    if (!read.value) return 3;
    search::Options options;
    if (argc > 2) options.schemes = static_cast<std::size_t>(std::atol(argv[2]));
    const Timed pruned = timed(*read.value, options);
    print("pruned", pruned);
    rusage usage{};
    getrusage(RUSAGE_SELF, &usage);
    std::printf("  largest memory %ld MB\n", usage.ru_maxrss / 1024);
    if (argc < 4) return 0;
    options.exhaustive = true;
    const Timed all = timed(*read.value, options);
    print("exhaustive", all);
    const int wrong = mistakes(pruned.found, all.found);
    std::printf("fronts %s, %d mistakes\n", pruned.found.front == all.found.front ? "are the same" : "DIFFER", wrong);
    return wrong == 0 && pruned.found.front == all.found.front ? 0 : 1;
}
