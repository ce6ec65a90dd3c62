#include "checks/bar_rows.h"
#include "checks/checks.h"
#include "strength/members.h"

#include <algorithm>

/// Ribs joined to the skin: flats as solid bars; thin-walled hats have no clause here, their stress is printed.
namespace thinskin::checks {

namespace {

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

/// The key that gives the rib: the edge of an opening is four of them.
std::string key_of(const layout::Layout& l, const layout::Rib& r)
{
    for (const layout::Opening& o : l.openings)
        if (r.name.rfind(o.name + " ", 0) == 0) return fmt::format("panel.openings.{}.edge.section", o.name);
    return fmt::format("panel.ribs.{}.section", r.name);
}

} // namespace

void rib_rows(const Demands& d, std::vector<results::Check>& out)
{
    for (const layout::Rib& r : d.layout->ribs) {
        Place p{"rib/" + r.name, "reinforcement", r.name, "bending of " + r.name, false, key_of(*d.layout, r) + ": a flat, or reinforcement.angles beside it", ""};
        const catalogue::Strength s = r.material.strength(r.section.t);
        const auto forces = of_member(*d.members, r.name);
        if (!s.covered || r.material.kind != catalogue::Material::Kind::steel) {
            out.push_back(not_covered(p, s.covered ? not_steel(r.material) : s.reason));
            continue;
        }
        if (r.section.kind == catalogue::Section::Kind::flat) {
            flat_row(r, p, forces, s.fy, out);
            continue;
        }
        const auto most = std::max_element(forces.begin(), forces.end(), [](const auto& a, const auto& b) { return a.stress_MPa < b.stress_MPa; });
        out.push_back(not_covered(p, most == forces.end() ? "no load case was run"
                                                          : fmt::format("a thin-walled {} has no clause here; its largest stress is {:.0f} MPa ({}), Fy/1.67 is {:.0f} MPa", r.section.designation, most->stress_MPa, most->load_case, s.fy / 1.67)));
    }
}

} // namespace thinskin::checks
