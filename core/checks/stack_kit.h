#pragma once
#include "checks/fastener_rows.h"
#include "strength/aluminium.h"
#include "strength/pull_over.h"

/// Inside this folder: what the rows of bolts, screws, rivets and inserts share.
namespace thinskin::checks {

inline constexpr double thick_ply = 3.0; ///< hot-rolled rules from here on, mm

struct Context { const StackForces* s; const layout::Hardware* h; };

/// "what/NAME", and for one ply "what/NAME/PLY": ids of two plies of one stack stay apart.
[[nodiscard]] Place place(const Context& c, const std::string& what, const std::string& title, bool judgement = false);
[[nodiscard]] Place ply_place(const Context& c, const layout::Ply& p, const std::string& what, bool judgement = false);
/// Key of the fastener's kind that would lift a not covered.
[[nodiscard]] std::string kind_key(const Context& c, const char* key);

using Value = double (*)(const results::FastenerForce&);
[[nodiscard]] double tension(const results::FastenerForce& f);
[[nodiscard]] std::vector<Demand> tension_demands(const Context& c);
/// Shear does not hang on the skin's bending: its figures stand.
[[nodiscard]] std::vector<Demand> shear_demands(const Context& c);

/// Strength of a ply, or none with a row that says why.
[[nodiscard]] std::optional<catalogue::Strength> strength_of(const Context& c, const layout::Ply& p, std::vector<results::Check>& out);
/// The same for all plies of the stack, in their order; empty when one has none.
[[nodiscard]] std::vector<catalogue::Strength> all_strengths(const Context& c, std::vector<results::Check>& out);
[[nodiscard]] inline bool aluminium(const layout::Ply& p) { return aluminium(p.material); }

/// A fastener of diameter d on an aluminium ply: bearing with tear-out (AL-1), and what its head, nut or washer pulls through
/// (AL-4, thick plies AL-5). `hole` the ply's hole.
[[nodiscard]] strength::AluminiumBearing aluminium_bearing(const layout::Ply& p, double fu, double d);
[[nodiscard]] strength::AluminiumPullOver aluminium_pull_over(const layout::Ply& p, double fu, double presses_on, double hole, bool one_side);
void aluminium_bearing_row(const Context& c, const layout::Ply& p, double fu, double d, bool judgement, std::vector<results::Check>& out);
void aluminium_pull_through_row(const Context& c, const layout::Ply& p, double fu, bool nut, std::vector<results::Check>& out);
/// The screen of repeated load for a thin aluminium ply under a bolt.
void aluminium_screen(const Context& c, const layout::Ply& p, double fu, bool first, bool last, std::vector<results::Check>& out);

/// From the hole's rim to the nearest edge, at most 20 d.
[[nodiscard]] double clear_to_edge(const layout::Ply& p, double hole, double d);
/// A distance that the rule asks for, against the one that is there; no row where no edge is near.
struct Wanted { base::Resistance need; const base::Card* card; double d; };
void edge_row(const Context& c, const layout::Ply& p, const Wanted& w, std::vector<results::Check>& out);

/// Repeated load on a thin ply: one-sigma amplitude against a share of the static nominal.
void repeated_row(const Context& c, const layout::Ply& p, double nominal, const std::string& what, Value value, bool pulls, std::vector<results::Check>& out);

/// Bearing of one ply by a shank of diameter d in a hole; thick plies by the hot-rolled rule.
struct Shank { double d, hole, mf; bool judgement; };
void bearing_rows(const Context& c, const layout::Ply& p, double fu, const Shank& shank, std::vector<results::Check>& out);
void pull_through_row(const Context& c, const layout::Ply& p, double fu, bool nut, std::vector<results::Check>& out);
[[nodiscard]] strength::PullOver pull_over_input(const layout::Hardware& h, const layout::Ply& p, double fu, bool nut);
/// How much of a washer counts in the pull-over rule: head and twice the reach of WR-1, at most the washer.
[[nodiscard]] double counting_diameter(const layout::WasherSize& w, double head, const layout::Ply& p, double fu);
/// True when a washer is thick enough for the pull-over clause.
[[nodiscard]] bool washer_counts(const layout::WasherSize& w);

/// Bolt steel in tension, shear and both.
void bolt_steel_rows(const Context& c, std::vector<results::Check>& out);

/// Shear and tension together by the straight line between the least allowable forces of the single checks; load cases
/// without any force are left out. Qa or Ta of 0 or NaN: no row (the single check says why).
void straight_line_row(const Context& c, double Qa, double Ta, std::vector<results::Check>& out);

/// The least covered capacity; infinity when none is.
[[nodiscard]] double least(std::initializer_list<base::Resistance> all);

/// An insert that holds in nothing but the skin.
[[nodiscard]] bool bare_skin_insert(const layout::Stack& s);

void screw_rows(const Context& c, std::vector<results::Check>& out);
void rivet_rows(const Context& c, std::vector<results::Check>& out);
void insert_rows(const Context& c, std::vector<results::Check>& out);

} // namespace thinskin::checks
