#pragma once
#include "layout/layout.h"
#include "results/results.h"

namespace thinskin::checks {

/// A sentence, and the places of the case that it speaks about (results::Check::help_at).
struct Advice { std::string words; std::vector<std::string> at; };

/// Everything the checks look at: places and materials from the layout, demands from the results.
struct Demands {
    const layout::Layout* layout = nullptr;
    const std::vector<results::FastenerForce>* fasteners = nullptr;
    const std::vector<results::MemberForce>* members = nullptr;
    const std::vector<results::EndForce>* ends = nullptr;
    const std::vector<results::MountForce>* mounts = nullptr;
    const std::vector<results::JointForce>* joints = nullptr;
    const std::vector<results::SkinState>* skin = nullptr;
    const results::Vibration* vibration = nullptr;
    const std::vector<results::RimStress>* rims = nullptr;
    const std::vector<results::CornerStress>* corners = nullptr;
    const results::Tether* tether = nullptr;
    const results::Added* added = nullptr;
    const std::vector<results::LoadCase>* load_cases = nullptr;
    const results::Shaking* shaking = nullptr;
    const results::Fatigue* fatigue = nullptr;
};

// One function a group; each row is the worst over the load cases.
[[nodiscard]] std::vector<results::Check> fixing(const Demands& d);
[[nodiscard]] std::vector<results::Check> reinforcement(const Demands& d);
void rib_rows(const Demands& d, std::vector<results::Check>& out);   ///< part of reinforcement
void strap_rows(const Demands& d, std::vector<results::Check>& out); ///< part of reinforcement
void plate_rows(const Demands& d, std::vector<results::Check>& out); ///< part of reinforcement
[[nodiscard]] std::vector<results::Check> bracket(const Demands& d);
[[nodiscard]] std::vector<results::Check> panel(const Demands& d);
void opening_rows(const Demands& d, double fy, std::vector<results::Check>& out); ///< part of panel: fy of the skin, MPa
/// Life under repeated stress: the worst detail of each kind. One that fails is required; one that passes does so by analogy, one
/// that is not covered is listed, and neither changes the verdict.
[[nodiscard]] std::vector<results::Check> fatigue(const Demands& d);
[[nodiscard]] results::Fatigue fatigue_lives(const Demands& d);
/// Payload and rear axle against plated masses: only what the case gives is a row; the rest is in vehicle_not_checked().
[[nodiscard]] std::vector<results::Check> vehicle(const Demands& d);
[[nodiscard]] std::vector<std::string> vehicle_not_checked(const Demands& d);
/// The item's tether: half of the breaking strength of strap and anchor (judgement) against the catch. Empty without one.
[[nodiscard]] std::vector<results::Check> tether(const Demands& d);
/// Natural frequencies against what shakes the job: not required, an amplification that the road's basis does not know.
[[nodiscard]] std::vector<results::Check> vibration(const Demands& d);
/// Parts that the case names and this version cannot judge, and rule sets without clauses.
[[nodiscard]] std::vector<results::Check> not_covered_parts(const Demands& d);

/// Least margin first, then rows without demand, then not covered; stable.
void sort_rows(std::vector<results::Check>& rows);

/// Groups in their fixed order with the status of each, and the verdict: the worst required group.
[[nodiscard]] std::vector<results::Group> groups(const std::vector<results::Check>& rows);
[[nodiscard]] base::Verdict verdict(const std::vector<results::Group>& groups);
/// The required row with the least margin; none when nothing has a number.
[[nodiscard]] std::optional<results::Check> governing(const std::vector<results::Check>& sorted_rows);

/// Allowable stress of the skin in MPa for criterion (i); NaN when the skin's strength is not covered.
[[nodiscard]] double skin_allowable(const layout::Layout& l);

/// First and second line of the output, in words a fitter understands.
[[nodiscard]] std::string headline(const results::Outcome& o);
/// Its last sentence, for a job that holds but shakes, which is not counted; `o` has rows and verdict.
[[nodiscard]] std::string aside(const results::Outcome& o);
[[nodiscard]] Advice advice(const results::Outcome& o, const layout::Layout& l);
/// "What would help: a larger washer ..." or "What would lift it: door.hinges.evidence." of one row; no words: nothing to say.
[[nodiscard]] Advice help(const results::Check& c, const layout::Layout& l);

/// Judgement becomes not covered; groups, verdict and lines follow.
void apply_strict(results::Outcome& o);

} // namespace thinskin::checks
