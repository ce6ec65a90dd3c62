#pragma once
#include "actions/load_cases.h"
#include "idealise/response.h"
#include "model/case.h"

namespace thinskin::pipeline {

/// What the case alone says: names, digest, weights, stacks, assumptions, cautions, standing exclusions.
[[nodiscard]] results::Outcome outcome_of_case(const model::Case& c, const layout::Layout& l);

void take_load_cases(const actions::LoadCases& cases, const actions::DynamicFactor& factor, results::Outcome& o);
void take_solution(const idealise::Structure* s, const idealise::Solution& sol, const idealise::Forces& f, const idealise::Fields& fields, results::Outcome& o);
void take_hand_figures(const layout::Layout& l, results::Outcome& o);
/// A load case that was not run turns its group to not covered.
void note_cases_not_run(const actions::LoadCases& cases, results::Outcome& o);
/// The whole case under a rule set that has no clauses yet.
[[nodiscard]] results::Check no_rule_set(const layout::Layout& l);
[[nodiscard]] std::string balance_words(const results::Balance& b);

} // namespace thinskin::pipeline
