#pragma once
#include "results/results.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

/// What `thinskin propose` answers.
namespace thinskin::results {

/// One thing to buy or to cut.
struct SchemePart { int count = 1; std::string what; double kg = 0; bool on_hand = false; };

struct TightRow { std::string check, part, load_case; double margin = 0; };

struct ProposedScheme {
    int number = 0;                      ///< from 1; `--write N` takes it
    std::string words;
    int holes = 0, skin_holes = 0;       ///< holes: to drill altogether, those in the frame too
    double added_kg = 0;                 ///< brackets and what is behind the skin, without bolts
    int cost_class = 0;                  ///< 1 to 9, relative and invented
    double margin = 0;                   ///< least
    base::Verdict verdict = base::Verdict::not_solved;
    std::vector<TightRow> tight;         ///< governing check first
    std::vector<SchemePart> parts;
    std::string next_step;               ///< what a little more buys; empty: nothing on the front has more margin
    /// What a margin becomes when something is worse than the case says.
    struct Then { double margin = -1; base::Verdict verdict = base::Verdict::not_solved; };
    /// With each assumption at its bad end, one at a time: the worst of them; absent: not run.
    struct Robust : Then {
        std::string with;
        Then together;                   ///< all of them at once
        std::optional<base::Verdict> hinges_unknown; ///< without what the case says of the hinges; absent: it says nothing
    };
    std::optional<Robust> robust;
    /// What nobody measured, or somebody merely stated, and the scheme holds by: the least margin of what hangs on it (key: where the case says it);
    /// then those of the bad ends with which it no longer holds, where they were run.
    struct RestsOn { std::string what, key; Then then; bool bad_end = false; };
    std::vector<RestsOn> rests_on;
    /// With one thing lost at a time; absent: not run. rank: 1 survives most of its losses; of two alike the one with more margin left.
    struct Loss { int survived = 0, of = 0, rank = 0; std::string worst; double worst_margin = -1; };
    std::optional<Loss> loss;
    /// Natural frequencies about the parked state against what shakes the job; absent: it holds without, so nobody asked. They never change the verdict.
    struct Shaking { std::optional<double> lowest_Hz; bool clear = false; std::string words; }; ///< clear: every row passes
    std::optional<Shaking> shaking;
};

/// A change outside the space or of the case's own limits that makes something hold, or not.
struct Relaxation { std::string what; base::Verdict verdict = base::Verdict::not_solved; std::optional<double> margin; bool enough = false; };

struct ProposalCounts {
    std::size_t space = 0;               ///< schemes
    std::size_t impossible = 0, over_limit = 0, discarded = 0, beaten = 0, fail = 0, hold = 0, open = 0; ///< where each of them ended; open: stopped before
    std::size_t by_bounds = 0, by_sisters = 0; ///< of discarded: by closed formulas alone, by a sister's analysis
    std::size_t forces = 0, parked = 0, without_stress = 0, settled = 0; ///< analyses made; without_stress: all but the skin's stress on fine grids
};

struct Proposal {
    std::string case_file, sha256, title;
    std::string headline, advice;        ///< for a fitter
    double margin_wanted = 0;
    bool stopped = false;
    std::vector<ProposedScheme> front;   ///< those nobody beats on holes, mass, cost class and margin; fewest holes first
    std::optional<ProposedScheme> closest; ///< when nothing holds
    std::vector<Relaxation> relaxations;   ///< for the closest one, cheapest first
    ProposalCounts counts;
    std::vector<std::string> cautions, not_covered, exclusions;
    double seconds = 0;                  ///< on the screen only, never in the JSON
};

} // namespace thinskin::results
