#pragma once
#include "layout/layout.h"
#include "results/results.h"
#include "strength/clause.h"

#include <cmath>
#include <fmt/core.h>

/// Demand against clause. Every row knows its clause; a row is a pass only when demand <= capacity holds with finite numbers.
namespace thinskin::checks {

/// The part of a figure that acts in this sense: not negative, and a NaN stays a NaN (std::max would turn it into 0, a pass).
[[nodiscard]] inline double positive(double x) { return x < 0 ? 0.0 : x; }

/// Utilisation in steps of 1e-8: rows that differ by rounding only, which is another on each processor, are alike, and of two alike (mirror
/// images) the first one stands for both.
[[nodiscard]] inline double in_steps(double utilisation) { return std::round(utilisation * 1e8); }

/// What is asked of one part in one load case. `stands` false: the linear figure does not hold, see `why_not`.
struct Demand {
    std::string load_case;
    double value = 0;
    bool stands = true;
    std::string why_not;
};

/// Where a row belongs and what it is called.
struct Place {
    std::string id, group, part, title;
    bool judgement = false;        ///< the clause is used by analogy here
    std::string lift_with;         ///< the input that would lift a not covered
    std::string note;
};

[[nodiscard]] inline bool aluminium(const catalogue::Material& m) { return m.kind == catalogue::Material::Kind::aluminium; }
/// Why an aluminium part has no strength here: the clause that is missing, in words.
[[nodiscard]] std::string no_aluminium_clause(const catalogue::Material& m, const std::string& missing);

/// A row that has no number: reason and the one input that would lift it.
[[nodiscard]] results::Check not_covered(const Place& p, const std::string& reason);

/// A row from a capacity without a clause (a limit of the trade); `source` and `label` say whose.
struct Limit { double capacity; std::string unit, rule, source, label; };
[[nodiscard]] results::Check against_limit(const Place& p, const Demand& d, const Limit& limit);

/// A row from a resistance and its card.
[[nodiscard]] results::Check against(const Place& p, const Demand& d, const base::Resistance& r, const base::Card& card, std::map<std::string, double> inputs);

/// A row for one clause and one demand.
template <class In> [[nodiscard]] results::Check against_clause(const Place& p, const Demand& d, const In& in)
{
    return against(p, d, strength::resistance(in), strength::card_of(in), strength::inputs_of(in));
}

/// The row that counts among the same check in several load cases: a failing one, else one that is not covered, else the
/// one with the largest utilisation. `rows` must not be empty.
[[nodiscard]] results::Check worst(std::vector<results::Check> rows);

/// The row that worst() would name of against() with each demand in turn; its words are written for that one only.
[[nodiscard]] results::Check worst_against(const Place& p, const std::vector<Demand>& demands, const base::Resistance& r, const base::Card& card, std::map<std::string, double> inputs);

/// One clause over all demands.
template <class In> [[nodiscard]] results::Check worst_of(const Place& p, const std::vector<Demand>& demands, const In& in)
{
    return worst_against(p, demands, strength::resistance(in), strength::card_of(in), strength::inputs_of(in));
}

} // namespace thinskin::checks
