#pragma once
#include "pipeline/analyse.h"
#include "search/candidate.h"

#include <cstddef>
#include <limits>

namespace thinskin::search {

/// What one analysis of a scheme says.
struct Said {
    bool holds = false;                 ///< settled only: has the margin wanted, and passes but for rows that no scheme can lift
    double margin = -1;                 ///< settled only: least margin; -1 where there is none
    double upper = -1;                  ///< no margin of this scheme is above
    std::string upper_in;               ///< by_forces: the load case that says so, but for parked; empty: none of them
    bool of_few = false;                ///< not of all load cases
    std::size_t analyses = 1;           ///< made for it
    double upper_of_twins = -1;         ///< nor of one that differs in the bolts' grade alone, by rows that do not know the grade
    double twin_slack = 0;              ///< share by which the demands on a twin's bolts may be off
    double upper_of_sisters = -1;       ///< nor of a scheme that differs in bolts alone, by rows that know neither those through the skin nor those of the ends
    double pull_N = 0, shear_N = 0;     ///< largest demands on one bolt through the skin, of rows that ask it for one force alone
    double upper_of_cousins = std::numeric_limits<double>::infinity(); ///< nor of one that differs in section, end bolts and bolts: rows of the skin alone
    bool needs_large = false;           ///< some part leaves linear theory
    std::optional<results::Outcome> outcome; ///< settled only
    bool stopped = false;
};

/// Demands of linear theory that stand, against those of large deflection: criterion (ii) lets a tenth pass.            [SE-4]
inline constexpr double linear_slack = 0.10;
/// Demands of sisters differ by less than this share (engineering judgement, held by tests on whole spaces).
inline constexpr double demand_slack = 0.15;

/// What a sister with such bolts can have at most, from what was said of this scheme.
[[nodiscard]] double upper_of_sister(const Said& said, const BoltCapacity& bolt);
/// What a twin with such bolts can have at most: the same demands.
[[nodiscard]] double upper_of_twin(const Said& said, const BoltCapacity& bolt);
/// Other sections behind the skin leave its own demands within a factor of two (engineering judgement, held by the same tests).  [SE-5]
inline constexpr double cousin_slack = 1.0;

/// Rows that are not covered whichever scheme is taken: the door's hinges, a load case without its figures, the vehicle. They leave the
/// verdict not covered, never a pass, but say nothing about one scheme against another.
[[nodiscard]] bool whichever_scheme(const results::Check& c);

/// Passes, but for such rows.
[[nodiscard]] bool passes(const results::Outcome& o);

/// at_forces: pipeline::Depth::forces. Rows that large deflection would decide say nothing. `only`: not empty, these load cases (pipeline::analyse):
/// fewer rows, so what it says is as true and may be weaker.
[[nodiscard]] Said by_forces(const model::Case& edited, pipeline::Workspace& w, std::stop_token stop, const pipeline::Only& only = {});
/// at_parked: the parked state alone with large deflection where it asks for it; a row that fails there fails.
[[nodiscard]] Said by_parked(const model::Case& edited, pipeline::Workspace& w, std::stop_token stop);
/// at_whole: pipeline::Depth::margins. The skin's stress says nothing, because a fine grid decides it; every other row is what it will be.
[[nodiscard]] Said by_margins(const model::Case& edited, pipeline::Workspace& w, std::stop_token stop);
/// at_settled: pipeline::Depth::settled, every row that decides the verdict: nothing is said to hold that `check` does not pass.
[[nodiscard]] Said settled(const model::Case& edited, double wanted, pipeline::Workspace& w, std::stop_token stop);

} // namespace thinskin::search
