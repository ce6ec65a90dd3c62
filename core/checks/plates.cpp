#include "checks/checks.h"
#include "checks/stack_kit.h"
#include "strength/plates.h"
#include "strength/sheet.h"

#include <algorithm>
#include <cmath>

/// Backing plates: their own bending, the skin at their rim, their own fasteners. Pull-through and bearing of the plate itself at the
/// fasteners of outer parts are rows of those fasteners: the plate is a ply there.
namespace thinskin::checks {

namespace {

using layout::Plate;
using layout::Stack;

constexpr double rim_share = 0.10;       ///< of the skin's tensile strength: the screen of repeated load (RL-1), taken over for a stress
constexpr double peaks_per_sigma = 3.0;  ///< a road state is taken as a three-sigma peak

Place place(const Plate& p, const std::string& what, const std::string& title)
{
    return {what + "/" + p.name, "reinforcement", p.name, title, false, fmt::format("reinforcement.backing_plates.{}.material", p.name), ""};
}

std::vector<results::FastenerForce> forces_of(const Demands& d, const Plate& p, const std::string& fastener)
{
    std::vector<results::FastenerForce> out;
    for (const results::FastenerForce& f : *d.fasteners)
        if (f.name == fastener) out.push_back(f);
    for (const results::EndForce& e : *d.ends)
        for (const results::FastenerForce& f : e.fasteners)
            if (e.name == p.name && f.name == fastener) out.push_back(f);
    return out;
}

std::vector<Demand> tensions(const std::vector<results::FastenerForce>& forces)
{
    std::vector<Demand> out;
    for (const results::FastenerForce& f : forces) out.push_back({f.load_case, tension(f), f.stands, f.why_not});
    return out;
}

const layout::Ply* ply_of(const Stack& s, const std::string& part)
{
    for (const layout::Ply& p : s.plies)
        if (p.part == part) return &p;
    return nullptr;
}

/// What presses on the plate at a fastener: washer that counts, else nut or head.
double pressing(const Plate& p, const Stack& s)
{
    const bool nut = s.plies.back().part == p.name;
    const auto& w = nut ? s.hardware.nut_washer : s.hardware.head_washer;
    return w && washer_counts(*w) ? w->diameter : nut ? s.hardware.tip_diameter : s.hardware.across_flats;
}

void bending_rows(const Demands& d, const Plate& p, double fy, std::vector<results::Check>& out)
{
    std::vector<Demand> stress;
    for (const results::MemberForce& m : *d.members)
        if (m.name == p.name) stress.push_back({m.load_case, m.stress_MPa, m.stands, m.why_not});
    Place where = place(p, "plate bending", "bending of " + p.name + " outside the washers");
    where.judgement = true;
    where.note = "elastic stress of the plate at its own grid and round each washer, first yield";
    out.push_back(worst_of(where, stress, strength::SheetStress{fy}));
    const auto through = d.layout->stacks_of(p);
    if (through.size() != 1 || p.tied()) return; // PL-1 knows one bolt in a loose plate
    const Stack& s = *through.front();
    const strength::PlateBending in{2 * ply_of(s, p.name)->edge_distance, p.thickness, pressing(p, s), fy};
    if (!strength::resistance(in).covered) return; // no yield line in so small a plate: the elastic row stands alone
    out.push_back(worst_of(place(p, "plate yield line", fmt::format("bending of {} by {}", p.name, s.name)), tensions(forces_of(d, p, s.name)), in));
}

/// True when a plate with one bolt passes PL-1 for all forces: it then pulls with its whole rim.
bool stays_flat(const std::vector<results::Check>& rows, const Plate& p)
{
    return std::any_of(rows.begin(), rows.end(), [&](const results::Check& c) { return c.id == "plate yield line/" + p.name && c.has_numbers() && c.status != base::Status::fail; });
}

/// The skin at the rim: pull-over with the reach of PL-2, at rest and repeated.
void rim_rows(const Demands& d, const Plate& p, const Stack& s, double fyb, std::vector<results::Check>& out)
{
    const layout::Ply* skin = ply_of(s, "skin");
    if (!skin || !s.hardware.not_covered.empty()) return; // on the frame, or a fastener that has its own row of not covered
    const catalogue::Strength of_skin = skin->material.strength(skin->thickness);
    if (!of_skin.covered) return; // the fastener's rows say so
    const double head = pressing(p, s), a = std::max(2 * ply_of(s, p.name)->edge_distance, head);
    const base::Resistance rim = strength::plate_rim({a, p.thickness, head, fyb, skin->thickness, of_skin.fu, stays_flat(out, p) ? 1.0 : 0.0});
    Place where{fmt::format("plate rim/{}/{}", p.name, s.name), "reinforcement", p.name, fmt::format("pull-through of the skin at the rim of {} round {}", p.name, s.name), true, "", ""};
    if (!rim.covered) {
        out.push_back(not_covered(where, rim.reason));
        return;
    }
    where.note = fmt::format("the rim counts as {:.0f} mm wide there (PL-2); the demand is what the plate hands to the skin round this fastener", rim.nominal);
    const strength::PullOver in{skin->thickness, of_skin.fu, rim.nominal, 0, 0, 0};
    std::vector<results::FastenerForce> on_skin = forces_of(d, p, s.name);
    for (results::FastenerForce& f : on_skin)
        if (s.owner != p.name) f.tension_N = f.rim_pull_N;
    const auto thin = aluminium_pull_over(*skin, of_skin.fu, rim.nominal, s.hardware.hole, false);
    out.push_back(aluminium(*skin) ? worst_of(where, tensions(on_skin), thin) : worst_of(where, tensions(on_skin), in));
    const base::Resistance pull = aluminium(*skin) ? strength::resistance(thin) : strength::pull_over(in);
    const StackForces stack{&s, "reinforcement", p.name, on_skin};
    if (pull.covered) repeated_row({&stack, &s.hardware}, *skin, pull.nominal, "pull at the rim of " + p.name, tension, true, out);
}

/// Too small and too stiff: the skin bends sharply at the rim and cracks there in the long run.
void rim_stress_row(const Demands& d, const Plate& p, std::vector<results::Check>& out)
{
    const catalogue::Strength skin = d.layout->skin.material.strength(d.layout->skin.core);
    if (!skin.covered) return;
    std::vector<results::Check> rows;
    Place where = place(p, "rim stress", "repeated stress of the skin beside the rim of " + p.name);
    where.judgement = true;
    where.lift_with = "";
    where.note = "amplitude = (road state - parked)/3, across the rim, 10 mm outside it; 0.10 Fu is the screen of repeated load (RL-1) taken over";
    for (const results::RimStress& r : *d.rims)
        if (r.plate == p.name && r.load_case != "parked" && r.load_case.rfind("slam", 0) != 0 && !r.rare)
            rows.push_back(against_limit(where, {r.load_case + " over parked", r.swing_MPa / peaks_per_sigma, r.stands, r.why_not},
                                         {rim_share * skin.fu / (aluminium(d.layout->skin.material) ? 3 : 1), "MPa", "allowable_strength", "RL-1 by analogy: 0.10 of the static nominal", "engineering judgement"}));
    if (!rows.empty()) out.push_back(worst(std::move(rows)));
}

void own_fastener_rows(const Demands& d, const Plate& p, const layout::PlateFastener& f, std::vector<results::Check>& out)
{
    if (!f.side.empty() && f.stack.plies.size() < 2) {
        Place where = place(p, "end fixing", fmt::format("{} of {} on the frame", f.stack.name, p.name));
        where.id += " " + f.stack.name;
        where.lift_with = "panel.frame.inner";
        out.push_back(not_covered(where, "the sheet of the frame that the plate is fixed to is not given"));
        return;
    }
    const auto rows = stack_rows({&f.stack, "reinforcement", p.name, forces_of(d, p, f.stack.name)});
    out.insert(out.end(), rows.begin(), rows.end());
}

} // namespace

void plate_rows(const Demands& d, std::vector<results::Check>& out)
{
    for (const Plate& p : d.layout->plates) {
        const catalogue::Strength s = p.material.strength(p.thickness);
        if (!s.covered || aluminium(p.material)) {
            out.push_back(not_covered(place(p, "plate", "strength of " + p.name), s.covered ? no_aluminium_clause(p.material, "how far a plate's rim reaches (PL-2)") : s.reason));
            continue;
        }
        bending_rows(d, p, s.fy, out);
        for (const Stack* stack : d.layout->stacks_of(p)) rim_rows(d, p, *stack, s.fy, out);
        rim_stress_row(d, p, out);
        for (const layout::PlateFastener& f : p.fasteners) own_fastener_rows(d, p, f, out);
    }
}

} // namespace thinskin::checks
