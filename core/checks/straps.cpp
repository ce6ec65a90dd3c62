#include "checks/checks.h"
#include "checks/fastener_rows.h"
#include "strength/aluminium.h"
#include "strength/members.h"

#include <algorithm>

/// Straps: yielding of the whole section, rupture at the holes, and their own end fixings.
namespace thinskin::checks {

namespace {

Place place(const layout::Strap& s, const std::string& what, const std::string& title) { return {what + "/" + s.name, "reinforcement", s.name, title, false, "", ""}; }

std::vector<Demand> pulls(const Demands& d, const layout::Strap& s)
{
    std::vector<Demand> out;
    for (const results::MemberForce& m : *d.members)
        if (m.name == s.name) out.push_back({m.load_case, positive(m.axial_N), m.stands, m.why_not});
    return out;
}

/// Holes across the strap at one place: those of one end within two hole diameters along its line.
int holes_abreast(const layout::StrapEnd& e)
{
    int most = 0;
    for (const layout::Stack& a : e.fasteners) {
        int n = 0;
        for (const layout::Stack& b : e.fasteners) n += std::hypot(a.at.x - b.at.x, a.at.y - b.at.y) < 2 * a.hardware.hole ? 1 : 0;
        most = std::max(most, n);
    }
    return most;
}

void rupture_row(const layout::Strap& s, const std::vector<Demand>& pull, const catalogue::Strength& of, std::vector<results::Check>& out)
{
    double hole = 0;
    int n = 0;
    for (const layout::StrapEnd& e : s.ends) {
        n = std::max(n, holes_abreast(e));
        for (const layout::Stack& f : e.fasteners) hole = std::max(hole, f.hardware.hole);
    }
    const double lag = s.section.kind == catalogue::Section::Kind::angle ? 0.60 : 1.0; // U of the clause
    const Place where = place(s, "strap rupture", "rupture of " + s.name + " at its holes");
    if (aluminium(s.material)) out.push_back(worst_of(where, pull, strength::AluminiumTension{s.section.A, s.section.t, static_cast<double>(n), hole, lag, of.fy, of.fu}));
    else out.push_back(worst_of(where, pull, strength::TensionRupture{s.section.A, s.section.t, static_cast<double>(n), hole, lag, of.fu}));
}

void end_rows(const Demands& d, const layout::Strap& s, const layout::StrapEnd& e, std::vector<results::Check>& out)
{
    Place p = place(s, "end fixing", fmt::format("{} end of {}", e.key, s.name));
    p.id += " " + e.key;
    p.lift_with = fmt::format("reinforcement.straps.{}.ends.{}.fasteners", s.name, e.key);
    if (e.fasteners.empty()) {
        out.push_back(not_covered(p, "by which fasteners the strap's end is held is not said"));
        return;
    }
    if (e.to == model::MemberEnd::To::frame && e.fasteners.front().plies.size() < 2) {
        p.lift_with = "panel.frame.inner";
        out.push_back(not_covered(p, "the sheet of the frame that the strap is fixed to is not given"));
        return;
    }
    for (const layout::Stack& f : e.fasteners) {
        std::vector<results::FastenerForce> forces;
        for (const results::EndForce& x : *d.ends)
            if (x.name == s.name)
                for (const results::FastenerForce& one : x.fasteners)
                    if (one.name == f.name) forces.push_back(one);
        const auto rows = stack_rows({&f, "reinforcement", s.name, forces});
        out.insert(out.end(), rows.begin(), rows.end());
    }
}

} // namespace

void strap_rows(const Demands& d, std::vector<results::Check>& out)
{
    for (const layout::Strap& s : d.layout->straps) {
        if (!s.acts()) continue;
        const catalogue::Strength strength = s.material.strength(s.section.t);
        if (!strength.covered) {
            out.push_back(not_covered(place(s, "strap", "strength of " + s.name), strength.reason));
            continue;
        }
        const std::vector<Demand> pull = pulls(d, s);
        Place yield = place(s, "strap yield", "yielding of " + s.name);
        if (std::all_of(pull.begin(), pull.end(), [](const Demand& x) { return x.value == 0; })) yield.note = "it pulls in no load case: slack, or nothing moves away from it";
        if (aluminium(s.material)) out.push_back(worst_of(yield, pull, strength::AluminiumTension{s.section.A, s.section.t, 0, 0, 1, strength.fy, strength.fu}));
        else out.push_back(worst_of(yield, pull, strength::TensionYield{s.section.A, strength.fy}));
        rupture_row(s, pull, strength, out);
        for (const layout::StrapEnd& e : s.ends) end_rows(d, s, e, out);
    }
}

} // namespace thinskin::checks
