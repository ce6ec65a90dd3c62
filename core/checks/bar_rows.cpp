#include "checks/bar_rows.h"
#include "strength/aluminium.h"
#include "strength/angles.h"
#include "strength/members.h"

namespace thinskin::checks {

namespace {

using results::MemberForce;

struct Capacities { base::Resistance axial, bending_x, bending_y; };

Place place(const Bar& b, const std::string& what, const std::string& title) { return {fmt::format("{}/{}", what, b.name), b.group, b.part, title, false, "", ""}; }

/// The equal angle that fits into an angle: what it bears alone, the whole bears, too (lower bound, judgement for unequal legs).
catalogue::Section equal_angle_in(const catalogue::Section& s)
{
    const double leg = std::min(s.b, s.h);
    return s.b == s.h ? s : catalogue::make_angle({.b = leg, .h = leg, .t = s.t});
}

/// Bending capacity of an angle, the toe taken in compression and no help from skin or bolts.
Capacities angle_capacities(const Bar& b, double fy)
{
    const catalogue::Section s = equal_angle_in(*b.section);
    const auto bending = strength::angle_bending({s.b, s.t, s.S_x_toe, fy, b.material->E_strength, b.unbraced, 1, strength::toe_in_compression, strength::unrestrained});
    return {strength::compression({s.A, s.r_min, b.unbraced, s.b / s.t, fy, b.material->E_strength, strength::loaded_concentrically}), bending, bending};
}

/// The same of aluminium. Bent from sheet it yields earlier when pressed than when pulled (0.9, ADM A.4).
double pressed_yield(const catalogue::Material& m, double fy) { return m.product == "profile" ? fy : 0.9 * fy; }

/// Tempers T5 to T9 buckle by another curve.
bool aged(const catalogue::Material& m)
{
    const auto at = m.name.find("-T");
    return at != std::string::npos && at + 2 < m.name.size() && m.name[at + 2] >= '5' && m.name[at + 2] <= '9';
}

Capacities aluminium_capacities(const Bar& b, double fy)
{
    const catalogue::Section s = equal_angle_in(*b.section);
    const double Fcy = pressed_yield(*b.material, fy);
    const auto bending = strength::resistance(strength::AluminiumAngleBending{s.b, s.t, s.S_x_toe, Fcy, b.material->E_strength, b.unbraced});
    return {strength::resistance(strength::AluminiumCompression{s.A, s.r_min, b.unbraced, (s.b - s.t) / s.t, Fcy, b.material->E_strength, aged(*b.material) ? 1.0 : 0.0}), bending, bending};
}

bool unequal(const catalogue::Section& s) { return s.kind == catalogue::Section::Kind::angle && s.b != s.h; }

/// Unequal legs: the elastic stress about the principal axes, at the worst corner, against yield.
results::Check stress_row(const Bar& b, double fy)
{
    constexpr double factor = 1.67;
    Place p = place(b, "stress", "elastic stress of " + b.name + " about its principal axes");
    p.judgement = true;
    std::vector<results::Check> rows;
    for (const MemberForce& f : b.forces)
        rows.push_back(against_limit(p, {f.load_case, f.stress_MPa, f.stands, f.why_not}, {fy / factor, "MPa", "allowable_strength", "largest normal stress against Fy/1.67, no clause", "engineering judgement"}));
    return worst(std::move(rows));
}

Capacities box_capacities(const Bar& b, double fy)
{
    const catalogue::Section& s = *b.section;
    return {strength::compression({s.A, s.r_min, b.unbraced, (s.b - 2 * s.t) / s.t, fy, b.material->E_strength, strength::loaded_concentrically}),
            strength::box_bending({s.h, s.b, s.t, fy, b.material->E_strength}), strength::box_bending({s.b, s.h, s.t, fy, b.material->E_strength})};
}

/// Angles and boxes have clauses; anything else is said to have none.
Capacities capacities(const Bar& b, double fy)
{
    if (aluminium(*b.material)) return aluminium_capacities(b, fy);
    if (b.section->kind == catalogue::Section::Kind::angle) return angle_capacities(b, fy);
    if (b.section->kind == catalogue::Section::Kind::box) return box_capacities(b, fy);
    const auto none = base::not_covered(b.section->designation + ": no bending clause for this section here yet");
    return {none, none, none};
}

/// Axial tension meets yielding; compression meets buckling.
base::Resistance axial_capacity(const Bar& b, const Capacities& c, double fy, double N)
{
    if (N <= 0) return c.axial;
    const double fu = b.material->strength(b.section->t).fu;
    return aluminium(*b.material) ? strength::resistance(strength::AluminiumTension{b.section->A, b.section->t, 0, 0, 1, fy, fu}) : strength::tension_yield({b.section->A, fy});
}

results::Check interaction_row(const Bar& b, const Capacities& c, double fy, const MemberForce& f)
{
    const Demand d{f.load_case, 0, f.stands, f.why_not};
    Place p = place(b, "bending and axial force", "bending of " + b.name + " both ways with axial force");
    p.judgement = unequal(*b.section);
    p.note = fmt::format("{}at {:.0f} mm: moment {:.1f} and {:.1f} N·m, axial {:.0f} N", p.judgement ? "unequal legs: what the equal angle inside it bears; " : "", f.at_mm, f.moment_y_Nm, f.moment_z_Nm, f.axial_N);
    // A bar that is too slender for the compression clause may still carry a few newtons: below 1 % of yield the axial force is
    // taken against that 1 %, never as nothing.
    base::Resistance axial = axial_capacity(b, c, fy, f.axial_N);
    if (!axial.covered && std::abs(f.axial_N) <= 0.01 * b.section->A * fy) axial = base::covered(0.01 * b.section->A * fy, 1);
    for (const base::Resistance* r : std::initializer_list<const base::Resistance*>{&axial, &c.bending_x, &c.bending_y})
        if (!r->covered) return against(p, d, *r, strength::interaction_card(), {});
    const strength::Interaction in{std::abs(f.axial_N) / axial.capacity, std::abs(f.moment_y_Nm) * 1000 / c.bending_x.capacity, std::abs(f.moment_z_Nm) * 1000 / c.bending_y.capacity};
    return against(p, {f.load_case, strength::interaction_sum(in), f.stands, f.why_not}, strength::interaction(in), strength::interaction_card(),
                   {{"P/Pc", in.axial}, {"Mx/Mcx", in.bending_x}, {"My/Mcy", in.bending_y}, {"Mcx Nm", c.bending_x.capacity / 1000}, {"Mcy Nm", c.bending_y.capacity / 1000}, {"Pc N", axial.capacity}});
}

} // namespace

std::vector<MemberForce> of_member(const std::vector<MemberForce>& all, const std::string& name)
{
    std::vector<MemberForce> out;
    for (const MemberForce& f : all)
        if (f.name == name) out.push_back(f);
    return out;
}

std::vector<results::Check> bar_rows(const Bar& b)
{
    const catalogue::Strength s = b.material->strength(b.section->t);
    if (!s.covered) return {not_covered(place(b, "strength", "strength of " + b.name), s.reason)};
    if (aluminium(*b.material) && b.section->kind != catalogue::Section::Kind::angle)
        return {not_covered(place(b, "strength", "strength of " + b.name), no_aluminium_clause(*b.material, "a section that is no angle"))};
    if (b.forces.empty()) return {not_covered(place(b, "strength", "strength of " + b.name), "no load case was run")};
    const bool angle = b.section->kind == catalogue::Section::Kind::angle;
    const Capacities c = capacities(b, s.fy);
    std::vector<results::Check> bending;
    std::vector<Demand> torsion;
    for (const MemberForce& f : b.forces) {
        bending.push_back(interaction_row(b, c, s.fy, f));
        torsion.push_back({f.load_case, std::abs(f.torsion_Nm) * 1000, f.stands, f.why_not});
    }
    std::vector<results::Check> out{worst(std::move(bending))};
    if (unequal(*b.section)) out.push_back(stress_row(b, s.fy));
    const Place twist = place(b, "torsion", "torsion of " + b.name);
    if (angle) out.push_back(worst_of(twist, torsion, strength::OpenSectionTorsion{b.section->J, b.section->t, s.fy}));
    else if (b.group == "bracket") out.push_back(not_covered(twist, "torsion of a closed section has no clause here yet"));
    return out;
}

std::vector<results::Check> brace_rows(const Bar& b)
{
    const catalogue::Strength s = b.material->strength(b.section->t);
    if (!s.covered) return {not_covered(place(b, "strength", "strength of " + b.name), s.reason)};
    const catalogue::Section& sec = *b.section;
    const bool angle = sec.kind == catalogue::Section::Kind::angle, box = sec.kind == catalogue::Section::Kind::box;
    if (!angle && !box && sec.kind != catalogue::Section::Kind::flat) return {not_covered(place(b, "compression", "compression of " + b.name), sec.designation + ": no clause for this section as a brace")};
    if (aluminium(*b.material)) return {not_covered(place(b, "compression", "compression of " + b.name), no_aluminium_clause(*b.material, "a brace, welded or pushed by one leg,"))};
    // E5: the radius of gyration about the axis parallel to the leg by which it is held.
    const strength::Compression in{sec.A, angle ? std::sqrt(sec.I_x / sec.A) : sec.r_min, b.unbraced, angle ? sec.b / sec.t : box ? (std::max(sec.b, sec.h) - 2 * sec.t) / sec.t : 0.0, s.fy, b.material->E_strength,
                                   angle ? strength::angle_loaded_by_one_leg : strength::loaded_concentrically};
    std::vector<Demand> push, pull;
    for (const MemberForce& f : b.forces) {
        push.push_back({f.load_case, positive(-f.axial_N), f.stands, f.why_not});
        pull.push_back({f.load_case, positive(f.axial_N), f.stands, f.why_not});
    }
    return {worst_of(place(b, "compression", "compression of " + b.name), push, in), worst_of(place(b, "tension", "tension of " + b.name), pull, strength::TensionYield{sec.A, s.fy})};
}

} // namespace thinskin::checks
