#pragma once
#include "report/record.h"
#include "report/words.h"

#include <string>

/// Inside report: the parts of the record as markup, in the order in which they are printed. Each is empty when there is nothing
/// to say; headings are added by record.cpp.
namespace thinskin::report {

using results::Outcome;

/// "FAILS: ..." and "What would help: ..." as check_text prints them, one string a line.
[[nodiscard]] std::vector<std::string> verdict_sentences(const Outcome&, const RecordInputs&);

[[nodiscard]] std::string record_cover(const Outcome&, const RecordInputs&);
[[nodiscard]] std::string record_verdict(const Outcome&, const RecordInputs&);
[[nodiscard]] std::string record_drawing(const Outcome&, const RecordInputs&);
[[nodiscard]] std::string record_values(const RecordInputs&);
[[nodiscard]] std::string record_load_cases(const Outcome&);
[[nodiscard]] std::string record_load_path(const Outcome&);
[[nodiscard]] std::string record_margins(const Outcome&);
[[nodiscard]] std::string record_other_margins(const Outcome&); ///< one line each, for what record_margins left out
[[nodiscard]] std::string record_clauses(const Outcome&);
[[nodiscard]] std::string record_hand_check(const Outcome&);
[[nodiscard]] std::string record_movements(const Outcome&);   ///< skin, gauges
[[nodiscard]] std::string record_frequencies(const Outcome&);
[[nodiscard]] std::string record_life(const Outcome&);
[[nodiscard]] std::string record_wind(const Outcome&);
[[nodiscard]] std::string record_door(const Outcome&);
[[nodiscard]] std::string record_stacks(const Outcome&);
[[nodiscard]] std::string record_assumptions(const Outcome&);
[[nodiscard]] std::string record_spread(const results::Spread*);        ///< the sensitivity figures, or that they were not run
[[nodiscard]] std::string record_single_loss(const Outcome&); ///< the table, or that it was not run
[[nodiscard]] std::string record_balance(const Outcome&);
[[nodiscard]] std::string record_signatures();

} // namespace thinskin::report
