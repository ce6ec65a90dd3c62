#pragma once
#include "document/units.h"
#include "model/case.h"
#include "presentation/words.h"
#include "results/results.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

/// Rows for the margin list and the card of a chosen margin. Strings are ready to show: margins rounded down, used rounded up.
namespace thinskin::gui {

struct MarginRow {
    std::string check_id, load_case;     ///< together the row's key
    std::string part, title, group;
    std::string demand, capacity, unit, used, margin; ///< "-" where there is no figure
    Mark mark = Mark::not_covered;       ///< linear: by linear theory where that does not stand; never a pass
    std::string status;                  ///< word of the mark, ", not counted" added where so
    bool governing = false, counted = true; ///< counted: it can decide the verdict
    std::optional<double> value;         ///< the margin as computed, for bars and sorting; none without figures
    std::string delta;                   ///< "+0.12" against the state that is compared with, "new", or empty
    int better = 0;                      ///< of the delta: -1 worse, 0 same or unknown, +1 better
};

struct MarginOptions {
    UnitSystem units = UnitSystem::metric;
    bool every_load_case = false;        ///< false: the worst row of each part and title
    std::string group = {}, part = {};   ///< only these; empty = all
    const results::Outcome* compare_with = nullptr; ///< worked out as far as the outcome itself: linear with linear, full with full
};

/// Governing first, then by margin, then what is not covered, then what does not count. Empty when there is no solution: with verdict `not solved` no
/// margin is shown.
[[nodiscard]] std::vector<MarginRow> margin_rows(const results::Outcome& o, const MarginOptions& options = {});

struct VerdictLines { Mark mark = Mark::not_solved; std::string word, headline, advice, counts; std::vector<std::string> advice_at = {}; /* results::Outcome::advice_at */ std::string aside = {}, aside_check = {}, aside_case = {}; /* what is not met and not counted, and its row */ };
[[nodiscard]] VerdictLines verdict_lines(const results::Outcome& o);
/// The same of figures that are still worked out, or were stopped: what would be a pass is none yet.
[[nodiscard]] VerdictLines verdict_so_far(const results::Outcome& o);

struct GroupRow { std::string name, status, margin, part, check, remark; Mark mark = Mark::not_covered; std::string delta; int better = 0; };
[[nodiscard]] std::vector<GroupRow> group_rows(const results::Outcome& o, const results::Outcome* compare_with = nullptr);
/// Beside verdict_so_far(): no group passes before everything has been run.
void take_so_far(std::vector<GroupRow>& groups);

/// Everything about one margin.
struct MarginCard {
    MarginRow row;
    struct Symbol { std::string name, value, unit, meaning, range; };
    std::string formula_id, formula_title, formula; ///< empty: a comparison without a clause
    std::vector<Symbol> symbols;         ///< with the numbers in, in the clause's order
    std::string sum;                     ///< "margin = 1032 N / 1266 N - 1 = -0.19"
    std::string source, range, not_for;  ///< source with edition and label
    std::vector<std::string> hand_check; ///< figures by hand beside those of the solver, for the load case of the margin
    std::string load_case;               ///< "slam inward: (0.00, -1.00, -6.12) g, source, derivation"
    std::string theory;                  ///< of that load case
    std::vector<std::string> help;       ///< what would help, or what would lift it
    std::vector<std::string> help_at;    ///< keys it speaks about, for spot_of()
    std::string note, not_counted;       ///< not_counted: why the row does not decide the verdict
};
/// None: no such row.
[[nodiscard]] std::optional<MarginCard> margin_card(const results::Outcome& o, const std::string& check_id, const std::string& load_case, const MarginOptions& options = {});

/// Beside each part on the drawing (drawing::Options::notes): "-0.20 fail".
[[nodiscard]] std::map<std::string, std::string> part_margins(const results::Outcome& o);

struct LoadCaseRow { std::string name, acceleration, theory, source, derivation; bool governs = false; };
[[nodiscard]] std::vector<LoadCaseRow> load_case_rows(const results::Outcome& o);

} // namespace thinskin::gui
