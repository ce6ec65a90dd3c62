#pragma once
#include "layout/layout.h"
#include "results/results.h"
#include "statics/rules.h"

#include <string>
#include <vector>

/// The hand check: what a person gets with a pocket calculator from the case alone. Independent of the solver by design: this
/// folder includes neither idealise nor fem.
namespace thinskin::statics {

struct BoltHand {
    std::string name, bracket;
    double tension_N = 0;        ///< lever rule, no prying
    double prying_bound_N = 0;   ///< tension times (1 + a/b): the most if nothing else stops the leg from turning
    double shear_shared_N = 0;   ///< the bracket's shear divided by its bolts
    double shear_one_row_N = 0;  ///< all of it on this one bolt (hole clearance)
    double shear_group_N = 0;    ///< elastic group with the in-plane moment (web beside the bolt line, item above the arm)
};

struct BracketHand {
    std::string name;
    results::Vec3 force_N{};     ///< its share of the item by the lever between the web lines, and its own weight
    double moment_Nm = 0;        ///< about the leg's foot, positive takes the top off the skin
    double moment_top_Nm = 0;    ///< about the leg's top, positive takes the foot off the skin
    double overturning_N = 0;    ///< vertical force added by sideways load above the arms, couple of the outer brackets; not in force_N
    double rocking_Nm = 0;       ///< about y at the bolt line; taken by the leg's width or by the pair of brackets: printed only
    Pivot pivot = Pivot::pressed_flat;
    double push_N = 0;           ///< of the leg on the skin, at its pivot edge ("heel push" under the weight)
    double push_y_mm = 0;
    double brace_N = 0;          ///< compression, from the item and the arm; the brace's own weight left out
    double brace_own_weight_N = 0; ///< what its own weight adds at mid-length
    bool has_brace = false;
};

struct AngleEndHand { std::string angle, side; double force_N = 0; };          ///< outward positive, on the frame
struct AngleMomentHand { std::string angle, under; double moment_Nm = 0; };    ///< under the bolt of this name
struct AngleHand {
    std::string name;
    bool covered = false;        ///< both ends tied and apart
    std::string reason;          ///< when not covered
    double max_moment_Nm = 0;
};

struct HandFigures {
    std::string load_case;
    std::vector<BracketHand> brackets;
    std::vector<BoltHand> bolts;
    std::vector<AngleHand> angles;
    std::vector<AngleEndHand> ends;
    std::vector<AngleMomentHand> moments;
};

/// Hand figures of one load case. `mass_tolerance` is the fraction added to the item's mass: 0 to compare with a hand
/// calculation, the layout's own in real use. Rigid brackets, rigid item, pivot on the leg's edge, bolts of a bracket on its
/// bolt line (y from the fastener), each bolt's pull goes whole into the angle that its stack passes; angles are simple beams
/// between their end ports. Not in it: skin, prying, friction, own weight of angles.
[[nodiscard]] HandFigures hand_figures(const layout::Layout& l, const results::LoadCase& lc, double mass_tolerance);
[[nodiscard]] HandFigures hand_figures(const layout::Layout& l, const results::LoadCase& lc); ///< with the layout's tolerance

/// Finders; null when there is no such name.
[[nodiscard]] const BoltHand* bolt(const HandFigures& f, const std::string& name);
[[nodiscard]] const BracketHand* bracket(const HandFigures& f, const std::string& name);
[[nodiscard]] const AngleEndHand* end(const HandFigures& f, const std::string& angle, const std::string& side);
[[nodiscard]] const AngleHand* angle(const HandFigures& f, const std::string& name);

} // namespace thinskin::statics
