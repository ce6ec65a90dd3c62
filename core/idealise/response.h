#pragma once
#include "base/largest.h"
#include "fem/large.h"
#include "idealise/structure.h"

#include <cmath>
#include <functional>
#include <stop_token>

namespace thinskin::idealise {

/// Skin-stiffness runs of criterion (ii): bending as it is, counted for nothing, three times as stiff.
inline constexpr std::array<double, 3> skin_factors{1.0, 0.0, 3.0};

/// Load cases that go together, as columns of one matrix and from contact to contact, however many threads there are: the same bytes on any
/// machine. Eight go through a matrix at once; the usual thirteen are seven and six, a part for each of two cores.
inline constexpr std::size_t together = 7;

/// One load case solved with the three skin stiffnesses.
struct Run {
    results::LoadCase load_case;
    fem::Vector factors;
    std::array<fem::JointState, 3> states;
    std::optional<fem::Large> large;     ///< the large-deflection solution, where it was asked for
    [[nodiscard]] bool large_solved() const { return large && large->status == fem::SolveStatus::solved; }
    [[nodiscard]] bool solved(std::size_t variant) const
    {
        // With the large-deflection solution the skin's stiffness is no guess any more: one state, no variants.
        if (large) return variant == 0 && large_solved();
        return states[variant].status == fem::SolveStatus::solved;
    }
    [[nodiscard]] const fem::JointState& state(std::size_t variant) const { return large ? large->joints : states[variant]; }
};

/// Why a part whose force comes from the skin's stiffness does not stand when the run without it, or with thrice of it, has no solution.
inline constexpr const char* nothing_else_holds = "without the skin's bending nothing holds it: the skin itself carries the pull";
inline constexpr const char* no_stiffer_solution = "no solution with a stiffer skin";

/// All load cases on one structure.
struct Solution {
    fem::Condensed condensed;
    fem::Free free;
    std::vector<Run> runs;
    bool solved = true;
    std::string where;                   ///< load case and reason when not solved
    bool stopped = false;
};
[[nodiscard]] Solution solve(const Structure& s, const std::vector<results::LoadCase>& cases, fem::ColumnCache& cache, std::stop_token stop);

/// Runs the large-deflection solution for the named load cases; a case that does not converge keeps its reason and no figures.
/// tell: called before each of them, with how many came before.
void solve_large_cases(const Structure& s, Solution& sol, const std::vector<std::string>& load_cases, fem::ColumnCache& cache, const fem::LargeModel& model, std::stop_token stop, const std::function<void(const std::string& load_case, std::size_t before, std::size_t of)>& tell = {});

/// Forces of one run and one skin stiffness, in the order of the structure's lists.
struct Picture {
    struct Bolt { double tension = 0, skin_x = 0, skin_y = 0, behind_x = 0, behind_y = 0, skin_share = 0, contact_beside = 0; };
    struct End { fem::Vec3 force{0, 0, 0}; double fixing = 0, torsion = 0, rotation = 0; }; ///< force: net; fixing: through the fasteners, prying included
    struct Member { std::string name; double at = 0, N = 0, V = 0, M_y = 0, M_z = 0, T = 0, stress = 0; double stretch = 0, stretch_allowed = 0; }; ///< stretch: 0.5 E |grad w|^2 of a plate in MPa, criterion (i)
    struct Joint { std::string name, part; fem::Vec3 force{0, 0, 0}, moment{0, 0, 0}; };
    std::vector<Bolt> bolts;
    std::vector<End> ends;
    std::vector<fem::Vec3> mounts;
    std::vector<Member> members;         ///< at the station of the largest stress
    std::vector<Joint> joints;
    std::vector<fem::Vec3> plate_fasteners; ///< of a plate's own fasteners: shear x, y, tension
};
[[nodiscard]] Picture picture(const Structure& s, const Solution& sol, const Run& run, std::size_t variant);

/// Forces of all load cases as the worst of the three skin stiffnesses, each part with its word on whether linear theory stands.
struct Forces {
    std::vector<results::FastenerForce> fasteners;
    std::vector<results::MemberForce> members;
    std::vector<results::EndForce> ends;
    std::vector<results::MountForce> mounts;
    std::vector<results::JointForce> joints;
    std::vector<results::Contact> contacts;
};
[[nodiscard]] Forces forces(const Structure& s, const Solution& sol);

/// Where legs, feet and plates push on what is behind them, and how hard, in one load case.
[[nodiscard]] std::vector<results::Contact> contact_pushes(const Structure& s, const Run& run);

using base::takes_over;

/// How the skin moves and what it hands to its supports in the states a case was solved in: the large-deflection one, or the joints' forces
/// with each of the three skin stiffnesses on the skin as it is. What a body hands on by linear theory goes with what is put on it, not
/// with how stiff it is all over.
struct SkinMotion { fem::Vector u, support; };
[[nodiscard]] std::vector<SkinMotion> skin_motions(const Structure& s, const Solution& sol, const Run& run);
/// Why figures of these states do not stand: by linear theory all three stiffnesses need a solution. Empty: they do.
[[nodiscard]] std::string not_all_solved(const Run& run);

/// Largest stress of each rib from the skin's field, of those states (ID-12).
[[nodiscard]] std::vector<results::MemberForce> rib_forces(const Structure& s, const Solution& sol);

/// What the ends of ribs that are fixed to the frame hand to it, shared over their fasteners (ID-12).
[[nodiscard]] std::vector<results::EndForce> rib_ends(const Structure& s, const Solution& sol);

/// What a plate presses on the frame nearest to one of its fasteners there, N.
[[nodiscard]] double plate_frame_push(const Structure& s, const fem::JointState& state, std::size_t fastener);

/// Largest von Mises stress of a backing plate outside the washers (ID-14).
[[nodiscard]] Picture::Member plate_member(const Structure& s, std::size_t plate, const fem::Vector& u);

/// What straps pull on at their ends, with the forces of their end fasteners.
[[nodiscard]] std::vector<results::EndForce> strap_ends(const Structure& s, const std::vector<results::MemberForce>& members);

/// The frame members that tied ends pull on, as beams over the places where the frame is held (ID-8).
[[nodiscard]] std::vector<results::MemberForce> frame_members(const layout::Layout& l, const std::vector<results::EndForce>& ends);

/// Load cases in which one of the three linear-stands criteria fails somewhere.
struct Fields;
[[nodiscard]] std::vector<std::string> cases_beyond_linear(const Forces& f, const Fields& fields);

/// Skin fields, criteria (i) and (iii), gauges, balance and load path of every load case.
struct Fields {
    std::vector<results::SkinState> skin;
    std::vector<results::CornerStress> corners; ///< per load case in turn, each opening in turn
    std::vector<results::SkinField> pictures;   ///< absent for load cases that were not solved
    std::vector<results::GaugeMove> gauges;
    results::Balance balance;
    std::vector<std::vector<fem::Vector>> rims; ///< per load case and plate: stress of the skin beside the rim, two faces a point
};

/// The skin's fields at a point, of whichever theory.
using PointField = std::function<fem::SkinPoint(double, double)>;
[[nodiscard]] std::vector<fem::Vector> rim_values(const Structure& s, const PointField& field);
/// Stress of the skin near the corners of each opening in one load case (SK-2).
[[nodiscard]] std::vector<results::CornerStress> corner_stresses(const Structure& s, const PointField& field, const results::SkinState& state);
/// Stress of the skin beside each plate's rim and how far it swings from the parked state (ID-14).
[[nodiscard]] std::vector<results::RimStress> rim_stresses(const Structure& s, const Solution& sol, const Fields& fields);

/// `skin_allowable`: MPa, for criterion (i).
[[nodiscard]] Fields fields(const Structure& s, const Solution& sol, const fem::BucklingModel& buckling, double skin_allowable, std::stop_token stop);

/// The same with the load cases that have the large-deflection solution read from it, the others as they were.
[[nodiscard]] Fields fields_with_large(const Structure& s, const Solution& sol, const Fields& linear, const fem::LargeModel& model, std::stop_token stop);

[[nodiscard]] std::vector<results::PathStep> load_path(const Structure& s, const Solution& sol, const Run& run);

/// Criterion (ii): a change by the skin's stiffness of less than a tenth, measured on the part's largest force over all load
/// cases - a change smaller than that cannot make a load case the governing one.
inline constexpr double skin_change_allowed = 0.10;
/// Criterion (i): 0.5 E |grad w|^2 against the skin's allowable stress. Criterion (iii): least buckling factor.
inline constexpr double slope_share_allowed = 0.05;
inline constexpr double least_buckling_factor = 3.0;

} // namespace thinskin::idealise
