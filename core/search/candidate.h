#pragma once
#include "layout/layout.h"
#include "model/case.h"
#include "search/choices.h"

#include <limits>
#include <memory>
#include <optional>

namespace thinskin::search {

/// How far a scheme has come.
enum class State {
    impossible,   ///< geometry that cannot be, or in a place to keep out of
    over_limit,   ///< mass or holes beyond the case's limits
    discarded,    ///< an upper bound of its margin is below the margin wanted
    beaten,       ///< a scheme that holds has no more holes, mass or cost, and at least the margin this one can have
    waiting,      ///< not yet decided
    fails,        ///< solved: does not hold
    holds,        ///< solved: passes with the margin wanted
};

/// What is compared, as it is printed: a difference that nobody sees is no trade-off.
struct Worth { int holes = 0; int mass_100g = 0; int cost = 0; };

/// What one bolt of a bracket bears: the least of its rows for this force alone, N. Not covered rows are left out.
struct BoltCapacity { double pull = std::numeric_limits<double>::infinity(), shear = std::numeric_limits<double>::infinity(); };

/// Questions, the cheapest first: closed bounds, forces of linear theory, the parked state with large deflection, everything but the skin's
/// stress on fine grids, everything.
enum Level : int { at_bounds, at_forces, at_parked, at_whole, at_settled };

struct Candidate {
    Choices choices;
    State state = State::waiting;
    std::string why;                          ///< impossible: the first error; discarded: by which bound
    std::size_t structure = 0, twins = 0;     ///< sisters share the one, twins both
    int level = at_bounds;                    ///< the last question asked, of it or of a twin
    Worth worth;
    int skin_holes = 0;
    double mass_kg = 0, points = 0;
    BoltCapacity bolt;                        ///< of the strongest
    double upper = std::numeric_limits<double>::infinity(); ///< no margin is above
    bool of_few = false;                      ///< `upper` may be of a few load cases
    double margin = std::numeric_limits<double>::quiet_NaN(); ///< at_settled
};

/// a is at least as good as b in holes, mass and cost.
[[nodiscard]] inline bool no_more(const Worth& a, const Worth& b) { return a.holes <= b.holes && a.mass_100g <= b.mass_100g && a.cost <= b.cost; }
[[nodiscard]] inline bool same(const Worth& a, const Worth& b) { return a.holes == b.holes && a.mass_100g == b.mass_100g && a.cost == b.cost; }

/// Hundredths, rounded down; margins beyond +5 are all alike, as in the tables.
[[nodiscard]] int as_printed(double margin);

/// Whether `a`, which holds, leaves no place on the front for `b`, whose margin is `b_margin` at most. Of two alike the earlier one stays.
struct Place { Worth worth; int margin = 0; std::size_t order = 0; };
[[nodiscard]] bool beats(const Place& a, const Place& b);

/// Holes, mass and cost points of a layout. Points are invented: they put schemes in an order of work and money, they are no prices.  [SE-3]
///   bolt d/8, stainless half as much again; a hole in the skin 0.5, in the frame 1; steel 1.2 a kg of angle and plate;
///   an angle or plate 1 to cut, a leg of another section or length 1; what is on hand costs a fifth. Class = 1 + points/4, at most 9.
void take_worth(const layout::Layout& l, const model::Propose& wishes, Candidate& c);

} // namespace thinskin::search
