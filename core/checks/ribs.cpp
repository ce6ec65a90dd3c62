#include "checks/bar_rows.h"
#include "checks/checks.h"
#include "checks/fastener_rows.h"
#include "strength/members.h"
#include "strength/ribs.h"

#include <algorithm>

/// Ribs joined to the skin: steel flats as solid bars, everything thin-walled by its largest stress.
namespace thinskin::checks {

namespace {

/// A rib and its ends stand in the skin's field: their figures stand where the skin's do.
template <class Force> void stands_with_the_skin(const Demands& d, std::vector<Force>& forces)
{
    for (Force& f : forces)
        for (const results::SkinState& s : *d.skin)
            if (f.stands && s.load_case == f.load_case && !s.stands) f.stands = false, f.why_not = "it stands in the field of the skin: " + s.why_not;
}

/// Bending moment that gives the largest stress of the field in a solid rectangle, N mm.
double as_moment(const results::MemberForce& f, double width, double height) { return f.stress_MPa * width * height * height / 6; }

void flat_row(const layout::Rib& r, const Place& p, const std::vector<results::MemberForce>& forces, double fy, std::vector<results::Check>& out)
{
    const double thin = std::min(r.section.b, r.section.h), wide = std::max(r.section.b, r.section.h);
    const double width = r.standing ? thin : wide, height = r.standing ? wide : thin;
    std::vector<Demand> demands;
    for (const results::MemberForce& f : forces) demands.push_back({f.load_case, as_moment(f, width, height), f.stands, f.why_not});
    Place where = p;
    where.judgement = true;
    where.note = "largest stress of the rib in the skin's field, as a bending moment";
    out.push_back(worst_of(where, demands, strength::BarBending{width, height, std::hypot(r.to.x - r.from.x, r.to.y - r.from.y), fy, r.material.E_strength}));
}

/// Flat parts of a section, held by two edges and by one; a flat of aluminium bends as a wall with a free edge.
strength::ThinRib walls(const catalogue::Section& s)
{
    using Kind = catalogue::Section::Kind;
    const double b = s.b - 2 * s.t, h = s.h - 2 * s.t;
    if (s.kind == Kind::box) return {std::max(b, h), 0, s.t, 0, 0};
    if (s.kind == Kind::hat) return {std::max(b, h), std::max(s.foot - s.t, 0.0), s.t, 0, 0};
    if (s.kind == Kind::channel) return {b, s.h - s.t, s.t, 0, 0};
    if (s.kind == Kind::flat) return {0, std::max(s.b, s.h), s.t, 0, 0};
    return {0, std::max(s.b, s.h) - s.t, s.t, 0, 0};
}

void thin_walled_row(const layout::Rib& r, const Place& p, const std::vector<results::MemberForce>& forces, double fy, std::vector<results::Check>& out)
{
    strength::ThinRib in = walls(r.section);
    in.Fy_MPa = fy;
    in.E_MPa = r.material.E_strength;
    std::vector<Demand> demands;
    for (const results::MemberForce& f : forces) demands.push_back({f.load_case, f.stress_MPa, f.stands, f.why_not});
    Place where = p;
    where.judgement = true;
    where.title = "stress of " + r.name;
    where.note = "largest stress of the rib in the skin's field; its walls between stiff edges";
    out.push_back(worst_of(where, demands, in));
}

/// The key that gives the rib: the edge of an opening is four of them.
std::string key_of(const layout::Layout& l, const layout::Rib& r)
{
    for (const layout::Opening& o : l.openings)
        if (r.name.rfind(o.name + " ", 0) == 0) return fmt::format("panel.openings.{}.edge.section", o.name);
    return fmt::format("panel.ribs.{}.section", r.name);
}

std::vector<results::FastenerForce> forces_of(const Demands& d, const std::string& rib, const std::string& side, const std::string& fastener)
{
    std::vector<results::FastenerForce> out;
    for (const results::EndForce& e : *d.ends)
        if (e.name == rib && e.end == side)
            for (const results::FastenerForce& f : e.fasteners)
                if (f.name == fastener) out.push_back(f);
    stands_with_the_skin(d, out);
    return out;
}

double along(const layout::Rib& r, const layout::Stack& f) { return r.from.y == r.to.y ? f.at.x : f.at.y; }

/// Can the fasteners hold the end's moment? One behind the other they can.
bool one_behind_the_other(const layout::Rib& r, const layout::MemberEnd& end)
{
    for (const layout::Stack& f : end.fasteners)
        if (std::abs(along(r, f) - along(r, end.fasteners.front())) > 2 * f.hardware.d) return true;
    return false;
}

/// What is missing for the end's fasteners to be checked, with the key that lifts it; nothing: nothing.
struct Missing { std::string why, lift; };
Missing missing(const Demands& d, const layout::Rib& r, const layout::MemberEnd& end, const std::string& key)
{
    static const std::string sides[] = {"left", "right", "bottom", "top"};
    const auto side = static_cast<std::size_t>(std::find(sides, sides + 4, end.side) - sides);
    if (end.fasteners.empty()) return {"the end is fixed to the frame, but by which fasteners is not said", key + ".fasteners"};
    if (!d.layout->frames.at(side).inner) return {"the sheet of the frame that the end is fixed to is not given", "panel.frame.inner"};
    for (const layout::Stack& f : end.fasteners)
        if (f.plies.size() < 2) return {f.name + " does not go through a wall of the rib that lies on the frame", key + ".fasteners"};
    if ((end.turning_fixed || end.rotational_stiffness.value_or(0) > 0) && !one_behind_the_other(r, end))
        return {"the end is said not to turn freely; one fastener, or fasteners side by side, hold no moment: it takes two, one behind the other along the rib", key + ".fasteners"};
    return {};
}

void end_rows(const Demands& d, const layout::Rib& r, const layout::MemberEnd& end, std::vector<results::Check>& out)
{
    const std::string name = r.name + " " + end.side;
    const Missing no = missing(d, r, end, fmt::format("panel.ribs.{}.ends.{}", r.name, end.side));
    if (!no.why.empty()) {
        out.push_back(not_covered({"end fixing/" + name, "reinforcement", r.name, "end fixing of " + name, false, no.lift, ""}, no.why));
        return;
    }
    for (const layout::Stack& s : end.fasteners) {
        const auto rows = stack_rows({&s, "reinforcement", r.name, forces_of(d, r.name, end.side, s.name)});
        out.insert(out.end(), rows.begin(), rows.end());
    }
}

} // namespace

void rib_rows(const Demands& d, std::vector<results::Check>& out)
{
    for (const layout::Rib& r : d.layout->ribs) {
        for (const layout::MemberEnd& end : r.ends)
            if (end.tied) end_rows(d, r, end, out);
        Place p{"rib/" + r.name, "reinforcement", r.name, "bending of " + r.name, false, key_of(*d.layout, r) + ": a flat, or reinforcement.angles beside it", ""};
        const catalogue::Strength s = r.material.strength(r.section.t);
        auto forces = of_member(*d.members, r.name);
        stands_with_the_skin(d, forces);
        if (!s.covered) {
            out.push_back(not_covered(p, s.reason));
            continue;
        }
        if (r.section.kind == catalogue::Section::Kind::flat && !aluminium(r.material)) {
            flat_row(r, p, forces, s.fy, out);
            continue;
        }
        thin_walled_row(r, p, forces, s.fy, out);
    }
}

} // namespace thinskin::checks
