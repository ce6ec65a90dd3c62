#pragma once
#include "layout/layout.h"
#include "results/results.h"
#include "search/candidate.h"

#include <optional>
#include <string>
#include <vector>

/// What no scheme can beat, by closed formulas: equilibrium of the whole gives the least that its fasteners must carry together,
/// the clauses give the most that they can. Upper bounds of the margin; a scheme below the margin wanted is not solved.
namespace thinskin::search {

/// By a row's id: whether it asks a bolt through the skin for one force alone. Rows of both together and of changing forces do not.
enum class Asks { pull, shear, neither };
[[nodiscard]] Asks asks(const results::Check& c);

/// From the clauses of core/checks, asked with a force of 1 N on each bolt of the layout. The weakest bolt counts for none: largest of all.
[[nodiscard]] BoltCapacity strongest_bolt(const layout::Layout& l);

/// The first rule of the checks that distances alone break: edge distance, spacing. No solution lifts it. None: they are all kept.
[[nodiscard]] std::optional<results::Check> broken_rule(const layout::Layout& l);

/// What equilibrium asks of all brackets together in one load case, by statics::hand_figures().
struct WholeDemand {
    double shear_N = 0;             ///< in the plane of the panel
    double pull_N = 0;              ///< off the panel, >= 0
    double about_foot_Nmm = 0, about_top_Nmm = 0; ///< tilting moments about the lowest foot and the highest top
};
[[nodiscard]] std::vector<WholeDemand> whole_demands(const layout::Layout& l, const std::vector<results::LoadCase>& cases);

/// Most that demand can be less than by hand_figures(): places of small masses, deflected positions (judgement).
inline constexpr double bound_slack = 0.97;

/// Largest margin that the bolts through the skin can have.                                                       [SE-2]
///   shear    u >= F / (Q sum n)          n bolts in the smallest row of each bracket, which carries all of its shear
///   pull     u >= P / (T N),  u >= M / (T sum d)   d from the foot (or the top) to each bolt; contact pushes only and lies inside the leg
///   margin <= 1/u - 1 with u times bound_slack
/// None: no brackets, a strap, fitted bolts, or nothing that asks for anything.
[[nodiscard]] std::optional<double> bolts_bound(const layout::Layout& l, const std::vector<WholeDemand>& demands, const BoltCapacity& one);

/// Exact: the door's own rows know masses and places only. Least margin of those required; none where there is no door or no figure.
[[nodiscard]] std::optional<double> door_margin(const layout::Layout& l, const std::vector<results::LoadCase>& cases);

} // namespace thinskin::search
