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
    /// With each assumption at its bad end, one at a time; absent: not run.
    struct Robust { double margin = 0; base::Verdict verdict = base::Verdict::not_solved; std::string with; };
    std::optional<Robust> robust;
    /// With one thing lost at a time; absent: not run.
    struct Loss { int survived = 0, of = 0; std::string worst; };
    std::optional<Loss> loss;
};

/// A change outside the space that makes the closest scheme hold, or not.
struct Relaxation { std::string what; base::Verdict verdict = base::Verdict::not_solved; std::optional<double> margin; bool enough = false; };

struct ProposalCounts {
    std::size_t space = 0;               ///< schemes
    std::size_t impossible = 0, over_limit = 0, discarded = 0, beaten = 0, fail = 0, hold = 0, open = 0; ///< where each of them ended; open: stopped before
    std::size_t by_bounds = 0, by_sisters = 0; ///< of discarded: by closed formulas alone, by a sister's analysis
    std::size_t forces = 0, parked = 0, settled = 0; ///< analyses made
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
