#include "checks/fatigue_details.h"

#include "checks/fastener_rows.h"
#include "checks/fatigue.h"
#include "checks/stack_kit.h"
#include "checks/weld_line.h"

#include <algorithm>
#include <cmath>
#include <functional>

namespace thinskin::checks {

namespace {

constexpr const char* stand_in = "stands in for a test of this very joint";
constexpr const char* of_threads = "published (read), second-hand, prying included";
constexpr const char* of_throat = "weld throat, published (read), second-hand";
constexpr const char* from_memory = "from memory";
constexpr double throat_of_leg = 0.707;

using results::Life;

/// Figures by load case: the three road states of a vertical shake.
class States {
public:
    explicit States(const Demands& d)
    {
        for (const results::LoadCase& c : *d.load_cases) {
            const bool counts = c.name == "parked" || c.name == "pothole" || c.name == "rebound";
            large_ = large_ || (counts && c.theory != "linear");
            if (c.name == "parked") heave_.parked = c.acceleration_g[1];
            if (c.name == "pothole") heave_.pothole = c.acceleration_g[1];
            if (c.name == "rebound") heave_.rebound = c.acceleration_g[1];
        }
    }
    /// The life with its stress per g, from rows that know their load case.
    template <class Row> void fill(Life& life, const std::vector<Row>& rows, const std::function<double(const Row&)>& stress, bool needs_skin = true) const
    {
        Swing s{NAN, NAN, NAN};
        for (const Row& r : rows) {
            double* at = r.load_case == "parked" ? &s.parked : r.load_case == "pothole" ? &s.pothole : r.load_case == "rebound" ? &s.rebound : nullptr;
            if (!at) continue;
            if (needs_skin && !r.stands) life.why_not = "large deflection: " + r.why_not, life.lift_with = "analysis.skin: automatic, or angles on the frame";
            const double v = stress(r);
            if (std::isnan(*at) || std::abs(v) > std::abs(*at)) *at = v; // of several places the one with most
        }
        life.per_g_MPa = per_g(s, heave_);
        if (needs_skin && large_ && !in_proportion(s) && life.why_not.empty()) {
            life.why_not = "large deflection: the stress is not in proportion to the shake";
            life.lift_with = "angles behind the skin with their ends on the frame";
        }
    }

private:
    /// With large deflection the stress per g may differ from small to large shakes; what differs by more than this is not counted on (judgement).
    [[nodiscard]] bool in_proportion(const Swing& s) const
    {
        constexpr double close = 0.15;
        const double small = std::abs(s.parked / heave_.parked), large = std::abs(s.pothole / heave_.pothole);
        return std::abs(small - large) <= close * std::max(small, large);
    }

    Heave heave_;
    bool large_ = false; ///< one of the three states needs large deflection
};

Life made(const char* kind, const std::string& detail, const std::string& part, double category, const char* label)
{
    Life l;
    l.kind = kind;
    l.detail = detail;
    l.part = part;
    l.category = category;
    l.category_label = label;
    return l;
}

Life open(Life l, const std::string& why, const std::string& key)
{
    l.why_not = why;
    l.lift_with = key;
    return l;
}

/// The S-N lines are those of structural steel; aluminium's lie at about a third and bend elsewhere.
Life of_aluminium(Life l, const catalogue::Material& m, const std::string& key)
{
    return open(std::move(l), fmt::format("{} is aluminium: the S-N lines here are for steel (aluminium: EN 1999-1-3)", m.name), key + ": a steel, or a fatigue test");
}

std::vector<const layout::Stack*> all_stacks(const layout::Layout& l)
{
    std::vector<const layout::Stack*> out = l.outer_stacks();
    for (const layout::MemberEnd* e : l.member_ends())
        for (const layout::Stack& s : e->fasteners) out.push_back(&s);
    for (const layout::Strap& t : l.straps)
        for (const layout::StrapEnd& e : t.ends)
            for (const layout::Stack& s : e.fasteners) out.push_back(&s);
    for (const layout::Plate& p : l.plates)
        for (const layout::PlateFastener& f : p.fasteners) out.push_back(&f.stack);
    return out;
}

std::vector<results::FastenerForce> forces_of(const Demands& d, const std::string& name)
{
    std::vector<results::FastenerForce> out;
    const auto take = [&](const std::vector<results::FastenerForce>& all) {
        for (const results::FastenerForce& f : all)
            if (f.name == name) out.push_back(f);
    };
    take(*d.fasteners);
    for (const results::EndForce& e : *d.ends) take(e.fasteners);
    return out;
}

void threads(const States& states, const layout::Stack& s, const std::vector<results::FastenerForce>& forces, std::vector<Life>& out)
{
    const layout::Hardware& h = s.hardware;
    Life l = made("bolt threads", s.name, s.owner, 36, of_threads);
    if (h.type == layout::Hardware::Type::screw || h.type == layout::Hardware::Type::rivet || !(h.stress_area > 0)) {
        l.kind = "screws and rivets";
        out.push_back(open(std::move(l), "there is no S-N line for it in thin sheet", fmt::format("fastener_kinds.{}.type: bolt, or a fatigue test", h.kind)));
        return;
    }
    states.fill<results::FastenerForce>(l, forces, [&h](const results::FastenerForce& f) { return tension(f) / h.stress_area; });
    out.push_back(std::move(l));
}

void hole_edges(const States& states, const layout::Stack& s, const std::vector<results::FastenerForce>& forces, std::vector<Life>& out)
{
    const layout::Hardware& h = s.hardware;
    for (const layout::Ply& p : s.plies) {
        if (p.thickness >= thick_ply) continue;
        Life l = made("sheet hole edges", fmt::format("{} at {}", p.part, s.name), s.owner, 36, stand_in);
        if (aluminium(p)) {
            out.push_back(of_aluminium(std::move(l), p.material, p.role == layout::Ply::Role::skin ? "panel.skin.material" : "the material of " + p.part));
            continue;
        }
        const double d_in_hole = h.type == layout::Hardware::Type::insert ? h.hole : h.d, net = (3 * d_in_hole - h.hole) * p.thickness;
        states.fill<results::FastenerForce>(l, forces, [net](const results::FastenerForce& f) { return shear_demand(f) / net; }, false); // shear stands where the pull does not
        out.push_back(std::move(l));
    }
}

void skin(const Demands& d, const States& states, std::vector<Life>& out)
{
    Life l = made("the skin beside what is fixed to it", "skin", "skin", 36, stand_in);
    if (aluminium(d.layout->skin.material)) {
        out.push_back(of_aluminium(std::move(l), d.layout->skin.material, "panel.skin.material"));
        return;
    }
    states.fill<results::SkinState>(l, *d.skin, [](const results::SkinState& s) { return s.stress_at_most_MPa; });
    out.push_back(std::move(l));
}

void arm_root(const Demands& d, const States& states, const layout::Bracket& b, std::vector<Life>& out)
{
    Life arm = made("arm roots", "arm of " + b.name + " beside its weld", b.name, 56, from_memory);
    if (aluminium(b.arm_material)) {
        out.push_back(of_aluminium(std::move(arm), b.arm_material, fmt::format("brackets.{}.arm.material", b.name)));
        return;
    }
    std::vector<results::MemberForce> members;
    for (const results::MemberForce& m : *d.members)
        if (m.name == "arm " + b.name) members.push_back(m);
    states.fill<results::MemberForce>(arm, members, [](const results::MemberForce& m) { return m.stress_MPa; });
    out.push_back(std::move(arm));
    Life weld = made("arm roots", "weld of arm and leg of " + b.name, b.name, 36, of_throat);
    if (!(b.arm_leg.weld_leg > 0)) {
        out.push_back(open(std::move(weld), "the weld of arm and leg is not given", fmt::format("brackets.{}.joints.arm_leg.weld", b.name)));
        return;
    }
    const double throat = throat_of_leg * b.arm_leg.weld_leg, length = std::min(b.arm_section.b, b.arm_section.h);
    std::vector<results::JointForce> joints;
    for (const results::JointForce& j : *d.joints)
        if (j.part == b.name && j.name == "arm to leg") joints.push_back(j);
    states.fill<results::JointForce>(weld, joints, [&](const results::JointForce& j) { return weld_line_demand(j, length) / throat; });
    out.push_back(std::move(weld));
}

void strap_ends(const Demands& d, const States& states, const layout::Strap& s, std::vector<Life>& out)
{
    double holes = 0; // the widest end: all its holes abreast, on the safe side
    for (const layout::StrapEnd& e : s.ends) {
        double sum = 0;
        for (const layout::Stack& f : e.fasteners) sum += f.hardware.hole;
        holes = std::max(holes, sum);
    }
    const bool thick = s.section.t >= thick_ply;
    Life l = made("strap ends", "ends of " + s.name, s.name, thick ? 50 : 36, thick ? from_memory : stand_in);
    const double net = s.section.A - holes * s.section.t;
    if (aluminium(s.material)) {
        out.push_back(of_aluminium(std::move(l), s.material, fmt::format("reinforcement.straps.{}.material", s.name)));
        return;
    }
    if (s.slack > 0) {
        out.push_back(open(std::move(l), "it hangs slack first, so its pull does not grow in proportion to the shake", fmt::format("reinforcement.straps.{}.slack: 0 mm", s.name)));
        return;
    }
    if (!(net > 0)) {
        out.push_back(open(std::move(l), "its holes leave nothing of it when they are taken abreast", fmt::format("reinforcement.straps.{}.section", s.name)));
        return;
    }
    std::vector<results::MemberForce> pulls;
    for (const results::MemberForce& m : *d.members)
        if (m.name == s.name) pulls.push_back(m);
    states.fill<results::MemberForce>(l, pulls, [net](const results::MemberForce& m) { return positive(m.axial_N) / net; });
    out.push_back(std::move(l));
}

} // namespace

std::vector<Life> fatigue_details(const Demands& d)
{
    const States states(d);
    std::vector<Life> out;
    for (const layout::Stack* s : all_stacks(*d.layout)) {
        const auto forces = forces_of(d, s->name);
        threads(states, *s, forces, out);
        hole_edges(states, *s, forces, out);
    }
    skin(d, states, out);
    for (const layout::Bracket& b : d.layout->brackets) arm_root(d, states, b, out);
    for (const layout::Strap& s : d.layout->straps)
        if (s.acts()) strap_ends(d, states, s, out);
    return out;
}

} // namespace thinskin::checks
