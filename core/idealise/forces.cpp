#include "base/side_by_side.h"
#include "idealise/response.h"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>

namespace thinskin::idealise {

namespace {

/// The three figures of one part in one load case; NaN = the run failed (mechanism without the skin's bending).
using Three = std::array<double, 3>;

struct Word { bool stands = true; std::string why; };

/// Three linear runs to compare, or the one large-deflection state, which stands or was not solved.
Word stands(const Run& run, const Three& v, double largest)
{
    if (run.large) return run.large_solved() ? Word{} : Word{false, "not solved: " + run.large->where};
    if (!std::isfinite(v[1])) return {false, nothing_else_holds};
    if (!std::isfinite(v[2])) return {false, no_stiffer_solution};
    const double change = std::max(std::abs(v[1] - v[0]), std::abs(v[2] - v[0]));
    if (change <= skin_change_allowed * largest) return {};
    return {false, fmt::format("moves from {:.0f} to {:.0f} and {:.0f} N as the skin's bending stiffness goes from times 1 to times 0 and 3", v[0], v[1], v[2])};
}

/// Index of the largest of the three, failed runs left out.
std::size_t worst(const Three& v)
{
    std::size_t best = 0;
    for (std::size_t i = 1; i < 3; ++i)
        if (std::isfinite(v[i]) && v[i] > v[best]) best = i;
    return best;
}

struct Pictures { const Run* run; std::array<std::optional<Picture>, 3> at; };

template <class Get> Three three(const Pictures& p, Get get)
{
    Three out{NAN, NAN, NAN};
    for (std::size_t v = 0; v < 3; ++v)
        if (p.at[v]) out[v] = get(*p.at[v]);
    return out;
}

/// Largest figure of a part over all load cases, at least 1 N.
template <class Get> double largest(const std::vector<Pictures>& all, Get get)
{
    double most = 1;
    for (const Pictures& p : all)
        for (const auto& pic : p.at)
            if (pic) most = std::max(most, std::abs(get(*pic)));
    return most;
}

results::PlyForce ply_force(const std::string& part, double x, double y) { return {part, x, y, std::hypot(x, y)}; }

results::FastenerForce fastener(const Structure& s, const Pictures& p, std::size_t i, double most)
{
    const BoltJoints& j = s.bolts[i];
    const layout::Stack& stack = stack_of(s, j);
    const auto tension = [i](const Picture& q) { return q.bolts[i].tension; };
    const Three t = three(p, tension);
    const Word word = stands(*p.run, t, most);
    const Picture::Bolt& b = p.at[worst(t)]->bolts[i];
    results::FastenerForce f;
    f.name = stack.name;
    f.part = outer_part(s, j);
    f.rare = p.run->load_case.on_item.has_value();
    f.load_case = p.run->load_case.name;
    f.tension_N = b.tension;
    f.spread_tension_N = b.tension;
    f.own_pull_N = b.tension - b.contact_beside;
    f.prying_N = b.tension - std::clamp(f.own_pull_N, 0.0, b.tension);
    f.skin_share_N = b.skin_share;
    if (j.plate >= 0) {
        const Three on_skin = three(p, [i](const Picture& q) { return q.bolts[i].skin_share; });
        f.rim_pull_N = on_skin[worst(on_skin)];
    }
    f.shear_x_N = b.skin_x + b.behind_x;
    f.shear_y_N = b.skin_y + b.behind_y;
    f.plies = {ply_force(outer_ply(stack).part, f.shear_x_N, f.shear_y_N), ply_force("skin", b.skin_x, b.skin_y)};
    if (const std::string& behind = part_behind(s, j); !behind.empty()) f.plies.push_back(ply_force(behind, b.behind_x, b.behind_y));
    f.stands = word.stands;
    f.why_not = word.why;
    return f;
}

/// Rows are fasteners of an outer part (a bracket, the item on its feet) at one height; all of the part's shear on its smallest
/// row, whichever that is.
void row_shear(std::vector<results::FastenerForce>& of_one_case, const layout::Layout& l)
{
    const std::vector<const layout::Stack*> all = l.outer_stacks();
    std::vector<std::string> parts;
    for (const layout::Stack* s : all)
        if (std::find(parts.begin(), parts.end(), s->owner) == parts.end()) parts.push_back(s->owner);
    for (const std::string& part : parts) {
        double x = 0, y = 0;
        for (const auto& f : of_one_case)
            if (f.part == part) x += f.shear_x_N, y += f.shear_y_N;
        for (auto& f : of_one_case) {
            if (f.part != part) continue;
            const layout::Stack* own = *std::find_if(all.begin(), all.end(), [&](const layout::Stack* s) { return s->name == f.name; });
            const auto in_row = std::count_if(all.begin(), all.end(), [&](const layout::Stack* s) { return s->owner == part && std::abs(s->at.y - own->at.y) < 1.0; });
            f.row_shear_N = own->hardware.fitted ? 0.0 : std::hypot(x, y) / static_cast<double>(in_row);
            f.shear_rule = f.row_shear_N > std::hypot(f.shear_x_N, f.shear_y_N) ? "one row carries all" : "elastic share";
        }
    }
}

results::MemberForce member(const Pictures& p, std::size_t i, double most)
{
    const Three v = three(p, [i](const Picture& q) { return q.members[i].stress; });
    const Word word = stands(*p.run, v, most);
    const Picture::Member& m = p.at[worst(v)]->members[i];
    results::MemberForce f{m.name, p.run->load_case.name, m.at, m.N, m.V, m.M_y / 1000, m.M_z / 1000, m.T / 1000, m.stress, std::hypot(m.M_y, m.M_z) / 1000, word.stands, word.why};
    if (!word.stands && std::isfinite(v[1]) && std::isfinite(v[2]))
        f.why_not = fmt::format("its stress moves from {:.0f} to {:.0f} and {:.0f} MPa as the skin's bending stiffness goes from times 1 to times 0 and 3", v[0], v[1], v[2]);
    if (m.stretch_allowed > 0 && !(m.stretch <= m.stretch_allowed)) {
        f.stands = false;
        f.why_not = fmt::format("{} bends so far that it would stretch (0.5 E |grad w|^2 is {:.0f} MPa, {:.0f} MPa is let pass), which is left out: a thicker plate or a shorter span", m.name, m.stretch, m.stretch_allowed);
    }
    return f;
}

/// Pull of the end's moment about the panel edge on each of its fasteners: |M| |s - s_m|/sum (s - s_m)^2, s along the angle (ID-12).
std::vector<double> couples(const layout::Angle& a, const layout::MemberEnd& end, double moment)
{
    std::vector<double> s;
    for (const layout::Stack& f : end.fasteners) s.push_back((f.at.x - a.bar.from.x) * a.bar.along.x + (f.at.y - a.bar.from.y) * a.bar.along.y);
    double mean = 0, squares = 0;
    for (const double x : s) mean += x / static_cast<double>(s.size());
    for (const double x : s) squares += (x - mean) * (x - mean);
    for (double& x : s) x = squares > 0 ? std::abs(moment) * std::abs(x - mean) / squares : 0.0;
    return s;
}

results::EndForce end_force(const Structure& s, const Pictures& p, std::size_t i, double most)
{
    const EndJoints& j = s.ends[i];
    const layout::Angle& a = s.layout->angles[static_cast<std::size_t>(j.angle)];
    const layout::MemberEnd& end = a.ends[static_cast<std::size_t>(j.end)];
    const Three v = three(p, [i](const Picture& q) { return q.ends[i].fixing; });
    const Word word = stands(*p.run, v, most);
    const Picture::End& e = p.at[worst(v)]->ends[i];
    results::EndForce f;
    f.name = a.bar.name;
    f.end = end.side;
    f.load_case = p.run->load_case.name;
    f.force_N = {e.force.x(), e.force.y(), e.force.z()};
    f.moment_Nm = {e.torsion / 1000, e.rotation / 1000, 0};
    f.spread_N = e.fixing;
    f.stands = word.stands;
    f.why_not = word.why;
    // The end's slope lifts the fastener next to the span first: it takes the whole pull, the others their equal share. Holes have
    // clearance: any one may take the whole shear.
    const layout::Point middle = a.bar.on_bolt_line(a.bar.length() / 2);
    const auto from_middle = [&middle](const layout::Stack& x) { return std::hypot(x.at.x - middle.x, x.at.y - middle.y); };
    double nearest = INFINITY;
    for (const layout::Stack& stack : end.fasteners) nearest = std::min(nearest, from_middle(stack));
    const std::vector<double> couple = couples(a, end, e.rotation);
    for (std::size_t k = 0; k < end.fasteners.size(); ++k) {
        const layout::Stack& stack = end.fasteners[k];
        const double share = from_middle(stack) <= nearest + 1 ? 1.0 : 1.0 / static_cast<double>(end.fasteners.size());
        results::FastenerForce one;
        one.name = stack.name;
        one.part = a.bar.name;
        one.load_case = f.load_case;
        one.rare = p.run->load_case.on_item.has_value();
        one.tension_N = (e.fixing < 0 ? 0.0 : share * e.fixing) + couple[k];
        one.own_pull_N = share * e.force.z();
        one.prying_N = one.tension_N - std::clamp(one.own_pull_N, 0.0, one.tension_N);
        one.shear_x_N = e.force.x();
        one.shear_y_N = e.force.y();
        one.row_shear_N = std::hypot(e.force.x(), e.force.y());
        one.shear_rule = end.rotational_stiffness ? "one fastener of the end carries all shear, the one next to the span all pull, all of them the end's moment" : "one fastener of the end carries all shear, the one next to the span all pull";
        one.stands = word.stands;
        one.why_not = word.why;
        f.fasteners.push_back(one);
    }
    return f;
}

/// A plate's own fastener, through the skin or into the frame.
results::FastenerForce plate_fastener(const Structure& s, const Pictures& p, std::size_t i, double most)
{
    const layout::Plate& plate = s.layout->plates[static_cast<std::size_t>(s.plate_fasteners[i].plate)];
    const layout::PlateFastener& own = plate.fasteners[static_cast<std::size_t>(s.plate_fasteners[i].fastener)];
    const Three v = three(p, [i](const Picture& q) { return q.plate_fasteners[i].z(); });
    const Word word = stands(*p.run, v, most);
    const fem::Vec3& q = p.at[worst(v)]->plate_fasteners[i];
    results::FastenerForce f;
    f.name = own.stack.name;
    f.part = plate.name;
    f.load_case = p.run->load_case.name;
    f.rare = p.run->load_case.on_item.has_value();
    f.tension_N = f.spread_tension_N = q.z() < 0 ? 0.0 : q.z();
    f.own_pull_N = q.z() - (p.run->solved(worst(v)) ? plate_frame_push(s, p.run->state(worst(v)), i) : 0.0); // what is left for the frame to carry
    f.prying_N = f.tension_N - std::clamp(f.own_pull_N, 0.0, f.tension_N);
    f.shear_x_N = q.x();
    f.shear_y_N = q.y();
    f.row_shear_N = std::hypot(q.x(), q.y());
    f.shear_rule = "elastic share";
    f.stands = word.stands;
    f.why_not = word.why;
    return f;
}

/// Plates on the frame: what each side carries; any one fastener of a side may take all of its shear.
void plate_forces(const Structure& s, const Pictures& p, const std::vector<double>& most, Forces& out)
{
    std::vector<results::EndForce> sides;
    for (std::size_t i = 0; i < s.plate_fasteners.size(); ++i) {
        const layout::Plate& plate = s.layout->plates[static_cast<std::size_t>(s.plate_fasteners[i].plate)];
        const std::string& side = plate.fasteners[static_cast<std::size_t>(s.plate_fasteners[i].fastener)].side;
        const results::FastenerForce f = plate_fastener(s, p, i, most[i]);
        if (side.empty()) {
            out.fasteners.push_back(f);
            continue;
        }
        auto e = std::find_if(sides.begin(), sides.end(), [&](const results::EndForce& x) { return x.name == plate.name && x.end == side; });
        if (e == sides.end()) {
            results::EndForce fresh;
            fresh.name = plate.name;
            fresh.end = side;
            fresh.load_case = f.load_case;
            e = sides.insert(sides.end(), std::move(fresh));
        }
        e->force_N = {e->force_N[0] + f.shear_x_N, e->force_N[1] + f.shear_y_N, e->force_N[2] + f.own_pull_N};
        e->spread_N = e->force_N[2];
        if (!f.stands) e->stands = false, e->why_not = f.why_not;
        e->fasteners.push_back(f);
    }
    for (results::EndForce& e : sides) {
        for (results::FastenerForce& f : e.fasteners) {
            f.row_shear_N = std::hypot(e.force_N[0], e.force_N[1]);
            f.shear_rule = "one fastener of the side carries all shear, each its own pull";
        }
        out.ends.push_back(std::move(e));
    }
}

/// A picture without figures, for a load case that was not solved: its parts are there, their numbers are not.
Picture blank(const Picture& like)
{
    Picture p;
    p.bolts.resize(like.bolts.size());
    p.ends.resize(like.ends.size());
    p.plate_fasteners.assign(like.plate_fasteners.size(), fem::Vec3::Zero());
    p.mounts.assign(like.mounts.size(), fem::Vec3::Zero());
    for (const Picture::Member& m : like.members) p.members.push_back({m.name, 0, 0, 0, 0, 0, 0, 0});
    for (const Picture::Joint& j : like.joints) p.joints.push_back({j.name, j.part, fem::Vec3::Zero(), fem::Vec3::Zero()});
    return p;
}

results::MountForce mount(const Structure& s, const Pictures& p, std::size_t i, double most)
{
    const layout::Mount& m = s.layout->brackets[static_cast<std::size_t>(s.mounts[i].bracket)].mounts[static_cast<std::size_t>(s.mounts[i].mount)];
    const Three v = three(p, [i](const Picture& q) { return q.mounts[i].norm(); });
    const Word word = stands(*p.run, v, most);
    const fem::Vec3& f = p.at[worst(v)]->mounts[i];
    return {m.name, p.run->load_case.name, {f.x(), f.y(), f.z()}, {}, word.stands, word.why};
}

/// Force and moment of a joint as one figure: the moment over 100 mm, of the order of its lines.
double reach(const Picture::Joint& j) { return j.force.norm() + j.moment.norm() / 100; }

results::JointForce joint(const Pictures& p, std::size_t i, double most)
{
    const Three v = three(p, [i](const Picture& q) { return reach(q.joints[i]); });
    const Word word = stands(*p.run, v, most);
    const Picture::Joint& j = p.at[worst(v)]->joints[i];
    return {j.name, j.part, p.run->load_case.name, {j.force.x(), j.force.y(), j.force.z()}, {j.moment.x() / 1000, j.moment.y() / 1000, j.moment.z() / 1000}, word.stands, word.why};
}

std::vector<Pictures> all_pictures(const Structure& s, const Solution& sol)
{
    const Picture* any = nullptr;
    std::vector<Pictures> out = base::side_by_side(sol.runs.size(), [&](std::size_t k) {
        const Run& run = sol.runs[k];
        Pictures p{&run, {}};
        for (std::size_t v = 0; v < 3; ++v)
            if (run.solved(v)) p.at[v] = picture(s, sol, run, v);
        return p;
    });
    for (const Pictures& p : out)
        if (p.at[0]) any = &*p.at[0];
    if (!any) return {};
    const Picture nothing = blank(*any);
    for (Pictures& p : out)
        if (!p.at[0]) p.at[0] = nothing;
    return out;
}

/// The largest pull of any of a plate's own fasteners: one that carries next to nothing is measured by the others.
double largest_on_plate(const Structure& s, const std::vector<Pictures>& all, int plate)
{
    return largest(all, [&](const Picture& q) {
        double most = 0;
        for (std::size_t k = 0; k < s.plate_fasteners.size(); ++k)
            if (s.plate_fasteners[k].plate == plate) most = std::max(most, std::abs(q.plate_fasteners[k].z()));
        return most;
    });
}

} // namespace

std::vector<std::string> cases_beyond_linear(const Forces& f, const Fields& fields)
{
    std::vector<std::string> out;
    const auto note = [&out](bool stands, const std::string& lc) {
        if (!stands && std::find(out.begin(), out.end(), lc) == out.end()) out.push_back(lc);
    };
    for (const auto& x : f.fasteners) note(x.stands, x.load_case);
    for (const auto& x : f.members) note(x.stands, x.load_case);
    for (const auto& x : f.ends) note(x.stands, x.load_case);
    for (const auto& x : fields.skin) note(x.stands, x.load_case);
    return out;
}

Forces forces(const Structure& s, const Solution& sol)
{
    Forces out;
    const std::vector<Pictures> all = all_pictures(s, sol);
    if (all.empty()) return out;
    std::vector<double> most_bolt, most_end, most_member;
    for (std::size_t i = 0; i < s.bolts.size(); ++i) // a bolt that carries next to nothing is measured by its bracket's
        most_bolt.push_back(largest(all, [&](const Picture& q) {
            double most = 0;
            for (std::size_t k = 0; k < s.bolts.size(); ++k)
                if (s.bolts[k].bracket == s.bolts[i].bracket) most = std::max(most, q.bolts[k].tension);
            return most;
        }));
    for (std::size_t i = 0; i < s.ends.size(); ++i) most_end.push_back(largest(all, [i](const Picture& q) { return q.ends[i].fixing; }));
    for (std::size_t i = 0; i < all.front().at[0]->members.size(); ++i) most_member.push_back(largest(all, [i](const Picture& q) { return q.members[i].stress; }));
    double most_mount = 1;
    for (std::size_t i = 0; i < s.mounts.size(); ++i) most_mount = std::max(most_mount, largest(all, [i](const Picture& q) { return q.mounts[i].norm(); }));
    std::vector<double> most_joint;
    for (std::size_t i = 0; i < all.front().at[0]->joints.size(); ++i) most_joint.push_back(largest(all, [i](const Picture& q) { return reach(q.joints[i]); }));
    std::vector<double> most_plate;
    for (std::size_t i = 0; i < s.plate_fasteners.size(); ++i) most_plate.push_back(largest_on_plate(s, all, s.plate_fasteners[i].plate));
    for (const Pictures& p : all) {
        std::vector<results::FastenerForce> here;
        for (std::size_t i = 0; i < s.bolts.size(); ++i) here.push_back(fastener(s, p, i, most_bolt[i]));
        row_shear(here, *s.layout);
        out.fasteners.insert(out.fasteners.end(), here.begin(), here.end());
        for (std::size_t i = 0; i < most_member.size(); ++i) out.members.push_back(member(p, i, most_member[i]));
        for (std::size_t i = 0; i < s.ends.size(); ++i) out.ends.push_back(end_force(s, p, i, most_end[i]));
        for (std::size_t i = 0; i < s.mounts.size(); ++i) out.mounts.push_back(mount(s, p, i, most_mount));
        for (std::size_t i = 0; i < most_joint.size(); ++i) out.joints.push_back(joint(p, i, most_joint[i]));
        plate_forces(s, p, most_plate, out);
        const std::vector<results::Contact> pushes = contact_pushes(s, *p.run);
        out.contacts.insert(out.contacts.end(), pushes.begin(), pushes.end());
    }
    const auto straps = strap_ends(s, out.members);
    out.ends.insert(out.ends.end(), straps.begin(), straps.end());
    const auto ribs = rib_forces(s, sol);
    out.members.insert(out.members.end(), ribs.begin(), ribs.end());
    const auto tied = rib_ends(s, sol);
    out.ends.insert(out.ends.end(), tied.begin(), tied.end());
    const auto frames = frame_members(*s.layout, out.ends);
    out.members.insert(out.members.end(), frames.begin(), frames.end());
    return out;
}

} // namespace thinskin::idealise
