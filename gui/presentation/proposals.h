#pragma once
#include "presentation/inputs.h"
#include "presentation/words.h"
#include "results/proposal.h"
#include "results/spread.h"

#include <string>
#include <vector>

/// What proposals and the spread say, ready to show, and a scheme taken into the case file.
namespace thinskin::gui {

/// One scheme. Masses are rounded up, margins down.
struct SchemeRow {
    int number = 0;                      ///< 0: the closest one, which does not hold
    std::string words;                   ///< what it is
    std::string figures;                 ///< "6 holes, 4 of them in the skin; 9.1 kg added; cost class 4"
    std::string margin, governing;       ///< "+0.12"; "lying leg of upper rail (slam inward)"
    Mark mark = Mark::not_covered;
    std::vector<std::string> tight;      ///< further rows that are tight
    std::vector<std::string> parts;      ///< to buy or to cut
    std::vector<std::string> rests_on;   ///< "rests on: ...", as proposal_text() has them
    std::string robust, loss, shaking, next_step; ///< empty: not run, or nothing
};

struct ProposalShown {
    std::string headline, advice, counts;
    std::vector<SchemeRow> schemes;      ///< the front, or the closest one alone
    std::vector<std::string> changes;    ///< what would make the closest one hold
    std::vector<std::string> cautions, not_covered;
    bool holds = false;
};
[[nodiscard]] ProposalShown proposal_shown(const results::Proposal& p, UnitSystem units);

/// The case with a scheme in the place of its own brackets' fasteners and reinforcement, as one edit: those blocks are written as the
/// writer has them, every other byte of the file stays. `now`: the document's case; `scheme`: of search::Proposed::cases.
[[nodiscard]] FieldEdit take_scheme(const model::Case& now, const model::Case& scheme, const SchemeRow& row);

struct SpreadShown {
    std::string headline, counts;
    struct Line { std::string what, value; };
    std::vector<Line> quantiles;         ///< "5 of 100 runs below", "-0.12"
    std::vector<Line> inputs;            ///< "thickness of the skin, -10 % .. +10 %", "+0.83"
};
[[nodiscard]] SpreadShown spread_shown(const results::Spread& s);

/// "schemes: 512 of 2304 decided, about 40 s left".
[[nodiscard]] std::string progress_words(const std::string& stage, std::size_t done, std::size_t of, double seconds_left);

} // namespace thinskin::gui
