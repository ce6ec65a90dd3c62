#include "base/side_by_side.h"
#include "idealise/local_stress.h"
#include "idealise/skin_forces.h"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>
#include <numbers>

namespace thinskin::idealise {

namespace {

struct Disc { layout::Point at; double radius; };

std::vector<Disc> washers(const Structure& s)
{
    std::vector<Disc> out;
    for (const layout::Stack* f : s.layout->outer_stacks()) {
        double d = std::max(f->hardware.across_flats, f->hardware.tip_diameter);
        if (f->hardware.head_washer) d = std::max(d, f->hardware.head_washer->diameter);
        if (f->hardware.nut_washer) d = std::max(d, f->hardware.nut_washer->diameter);
        out.push_back({f->at, d / 2});
    }
    return out;
}

bool under(const std::vector<Disc>& discs, double x, double y)
{
    return std::any_of(discs.begin(), discs.end(), [&](const Disc& d) { return std::hypot(d.at.x - x, d.at.y - y) < d.radius; });
}

/// At the corner of an opening the stress of elastic theory is without bound: within a grid spacing of it no figure is read.
bool at_a_corner(const Structure& s, double x, double y)
{
    const double reach = 1.01 * s.options.grid_spacing;
    return std::any_of(s.layout->openings.begin(), s.layout->openings.end(), [&](const layout::Opening& o) {
        const double dx = std::min(std::abs(x - o.low.x), std::abs(x - o.high.x)), dy = std::min(std::abs(y - o.low.y), std::abs(y - o.high.y));
        return dx < reach && dy < reach;
    });
}

/// Where the skin's fields are read: grid nodes outside washers, openings and their corners, and a ring round each washer.
std::vector<layout::Point> sample_points(const Structure& s)
{
    const std::vector<Disc> discs = washers(s);
    std::vector<layout::Point> out;
    for (double x : s.skin->grid.x)
        for (double y : s.skin->grid.y)
            if (!under(discs, x, y) && readable(s, x, y)) out.push_back({x, y});
    for (const model::PanelForce& f : s.layout->source->forces) out.push_back({f.at.x.value, f.at.y.value}); // the peak, on any grid
    for (const Disc& d : discs)
        for (int k = 0; k < 12; ++k) {
            const double angle = std::numbers::pi * k / 6, r = 1.02 * d.radius;
            const layout::Point p{d.at.x + r * std::cos(angle), d.at.y + r * std::sin(angle)};
            if (p.x > 0 && p.y > 0 && p.x < s.layout->width && p.y < s.layout->height && !under(discs, p.x, p.y) && !fem::in_opening(s.skin->model, p.x, p.y)) out.push_back(p);
        }
    return out;
}

using base::keep_largest, base::larger;

void keep_stress(results::SkinState& out, double stress, layout::Point p)
{
    if (takes_over(stress, out.max_von_mises_MPa)) out.stress_at_mm = {p.x, p.y};
    keep_largest(out.max_von_mises_MPa, stress);
}

/// Of several load cases at once.
void read_fields(const Structure& s, const fem::SkinStates& states, const std::vector<layout::Point>& at, const std::vector<results::SkinState*>& out)
{
    const fem::SheetSection& sheet = s.skin->model.sheet;
    for (layout::Point p : at) {
        const auto q = states.at(p.x, p.y);
        const fem::SkinStates::Figures stress = fem::von_mises(sheet, q), slope = 0.5 * sheet.E * (q.w_x * q.w_x + q.w_y * q.w_y);
        for (std::size_t k = 0; k < out.size(); ++k) {
            const auto i = static_cast<Eigen::Index>(k);
            keep_largest(out[k]->max_deflection_mm, std::abs(q.w(i)));
            keep_stress(*out[k], stress(i), p);
            keep_largest(out[k]->max_slope_stress_MPa, slope(i));
        }
    }
}

void read_hem(const Structure& s, const fem::Vector& u, results::SkinState& out)
{
    static const char* names[] = {"left", "right", "bottom", "top"};
    for (int edge = 0; edge < 4; ++edge) {
        if (s.skin->model.edges[static_cast<std::size_t>(edge)].kind == fem::Hold::free) continue;
        for (const fem::EdgeFlow& f : fem::edge_flow(*s.skin, u, edge, 31))
            if (takes_over(std::abs(f.shear), out.hem_shear_flow_N_mm)) {
                out.hem_shear_flow_N_mm = std::abs(f.shear);
                out.hem_where = fmt::format("{} edge at {:.0f} mm", names[edge], f.at);
            }
    }
}

/// What bolts, panel forces and masses put into the skin in its plane.
std::vector<fem::InPlaneForce> in_plane_forces(const Structure& s, const Run& run)
{
    std::vector<fem::InPlaneForce> out;
    for (const BoltJoints& j : s.bolts) {
        const layout::Stack& f = stack_of(s, j);
        out.push_back({{f.at.x, f.at.y, f.hardware.hole / 2, f.hardware.hole / 2}, run.states[0].lambda(j.leg_skin_x), run.states[0].lambda(j.leg_skin_y)});
    }
    for (std::size_t i = 0; i < s.when.size(); ++i) {
        const double factor = run.factors(3 + static_cast<Eigen::Index>(i));
        for (const model::PanelForce& f : s.layout->source->forces)
            if (f.when == s.when[i].when && factor != 0) {
                const double hx = f.spread_over ? f.spread_over->x.value / 2 : 1, hy = f.spread_over ? f.spread_over->y.value / 2 : 1;
                out.push_back({{f.at.x.value, f.at.y.value, hx, hy}, factor * f.force[0].value, factor * f.force[1].value});
            }
    }
    for (const model::PanelMass& m : s.layout->source->masses)
        out.push_back({{m.at.x.value, m.at.y.value, 5, 5}, run.factors(0) * m.mass.value * base::gravity_m_s2, run.factors(1) * m.mass.value * base::gravity_m_s2});
    return out;
}

void judge(results::SkinState& out, double allowable)
{
    if (!(out.max_slope_stress_MPa <= slope_share_allowed * allowable))
        out.why_not = fmt::format("the skin tilts so much that 0.5 E |grad w|^2 is {:.1f} MPa, more than {:.0f} % of its allowable {:.1f} MPa", out.max_slope_stress_MPa, 100 * slope_share_allowed, allowable);
    else if (!(out.buckling_factor >= least_buckling_factor))
        out.why_not = fmt::format("the skin buckles in its plane at {:.1f} times this load; at least {:.0f} is asked for", out.buckling_factor, least_buckling_factor);
    out.stands = out.why_not.empty();
}

/// The state of the large-deflection solution: fields with membrane pull, no criteria to meet.
void read_large(const Structure& s, const fem::LargeModel& model, const fem::Large& large, const std::vector<layout::Point>& at, results::SkinState& out)
{
    const fem::SheetSection& sheet = s.skin->model.sheet;
    const fem::LargeField field = fem::large_field(model, large.skin_u);
    out.max_deflection_mm = out.max_von_mises_MPa = out.max_slope_stress_MPa = out.hem_shear_flow_N_mm = 0;
    for (layout::Point p : at) {
        const fem::SkinPoint q = fem::skin_point_large(model, field, p.x, p.y);
        keep_largest(out.max_deflection_mm, std::abs(q.w));
        keep_stress(out, fem::von_mises(sheet, q), p);
        keep_largest(out.max_slope_stress_MPa, 0.5 * sheet.E * (q.w_x * q.w_x + q.w_y * q.w_y));
    }
    static const char* names[] = {"left", "right", "bottom", "top"};
    for (int edge = 0; edge < 4; ++edge) {
        if (s.skin->model.edges[static_cast<std::size_t>(edge)].kind == fem::Hold::free) continue;
        for (const fem::EdgeFlow& f : fem::edge_flow_large(model, field, edge, 31))
            if (takes_over(std::abs(f.shear), out.hem_shear_flow_N_mm)) {
                out.hem_shear_flow_N_mm = std::abs(f.shear);
                out.hem_where = fmt::format("{} edge at {:.0f} mm", names[edge], f.at);
            }
    }
    out.theory = "large deflection";
    out.newton_steps = large.steps;
    out.stands = true;
    out.why_not.clear();
}

void not_solved(const fem::Large& large, results::SkinState& out)
{
    out.theory = "large deflection";
    out.max_deflection_mm = out.max_von_mises_MPa = out.stress_at_most_MPa = out.max_slope_stress_MPa = out.hem_shear_flow_N_mm = std::nan(""); // no number, not a zero
    out.hem_where.clear();
    out.stands = false;
    out.why_not = "not solved: " + large.where;
}

using Six = Eigen::Matrix<double, 6, 1>;

/// Sums force and moment errors of one body or of the whole against the load's own size.
struct Scale { double force = 0, length = 0; };

/// Relative errors of one body, or of the whole, in one load case.
results::BodyBalance relative(const std::string& body, const std::string& lc, const Six& left_over, const Scale& scale, double residual, bool moments = true)
{
    return {body, lc, larger(left_over.head<3>().norm() / scale.force, residual), moments ? left_over.tail<3>().norm() / (scale.force * scale.length) : 0};
}

/// Keeps the worst of each body; a NaN stays.
void note(results::Balance& all, const std::vector<results::BodyBalance>& of_run)
{
    for (const results::BodyBalance& x : of_run) {
        const double worst = larger(x.force_error, x.moment_error);
        auto it = std::find_if(all.bodies.begin(), all.bodies.end(), [&](const results::BodyBalance& b) { return b.body == x.body; });
        if (it == all.bodies.end()) it = all.bodies.insert(it, {x.body, x.load_case, 0, 0});
        if (takes_over(worst, larger(it->force_error, it->moment_error))) *it = x;
        keep_largest(all.worst_relative_error, worst);
    }
}

Six resultant(const fem::Body& body, const fem::Vector& load) { return body.rigid ? Six(load) : Six(body.rigid_modes.transpose() * load); }

/// External loads on everything, ground reactions through joints, reactions of the held skin. In the large-deflection state
/// the skin's moments belong to deflected positions and carry the grid's error in the lever arms: forces alone are held there.
std::vector<results::BodyBalance> balance(const Structure& s, const Solution& sol, const Run& run, const Six& skin_left_over, const Six& skin_reaction, double skin_residual)
{
    std::vector<results::BodyBalance> out;
    const fem::JointState& state = run.state(0);
    Scale scale{1e-9, std::hypot(s.layout->width, s.layout->height)};
    Six whole = skin_reaction;
    for (std::size_t k = 0; k < s.loads.size(); ++k)
        for (std::size_t b = 0; b < s.assembly.bodies.size(); ++b) {
            const fem::Vector& f = s.loads[k].on_body[b];
            if (f.size() == 0) continue;
            const Six r = run.factors(static_cast<Eigen::Index>(k)) * resultant(*s.assembly.bodies[b], f);
            whole += r;
            scale.force += r.head<3>().norm();
        }
    for (std::size_t j = 0; j < s.assembly.joints.size(); ++j) {
        const fem::Joint& joint = s.assembly.joints[j];
        if (joint.b.body >= 0 || state.lambda(static_cast<Eigen::Index>(j)) == 0) continue;
        fem::Vector unit = fem::Vector::Zero(s.assembly.bodies[static_cast<std::size_t>(joint.a.body)]->dofs);
        fem::add(unit, joint.a.row, -state.lambda(static_cast<Eigen::Index>(j)));
        whole += resultant(*s.assembly.bodies[static_cast<std::size_t>(joint.a.body)], unit);
    }
    const bool moments = !run.large;
    out.push_back(relative("whole", run.load_case.name, whole, scale, state.residual, moments));
    out.push_back(relative(s.assembly.bodies[static_cast<std::size_t>(s.skin_body)]->name, run.load_case.name, skin_left_over, scale, skin_residual, moments));
    for (std::size_t b = 0; b < s.assembly.bodies.size(); ++b) {
        if (b == static_cast<std::size_t>(s.skin_body)) continue;
        const fem::Recovered r = fem::recover(s.assembly, static_cast<int>(b), s.loads, run.factors, sol.free, state);
        out.push_back(relative(s.assembly.bodies[b]->name, run.load_case.name, r.applied + r.reaction, scale, r.residual));
    }
    return out;
}

constexpr int between_lines = 1; ///< contours look round on a drawing at half the grid's spacing

results::SkinField picture_of(const Run& run, fem::SkinDeflection d) { return {run.load_case.name, std::move(d.x), std::move(d.y), std::move(d.w)}; }

void gauges(const Structure& s, const Run& run, const fem::Vector& u, std::vector<results::GaugeMove>& out)
{
    for (const model::Gauge& g : s.layout->source->gauges) {
        if (g.relative_to != "frame") continue;
        const fem::SkinPoint p = fem::skin_point(*s.skin, u, g.at.x.value, g.at.y.value);
        out.push_back({g.name, run.load_case.name, {p.u, p.v, p.w}, g.relative_to});
    }
}

} // namespace

bool readable(const Structure& s, double x, double y) { return !fem::in_opening(s.skin->model, x, y) && !at_a_corner(s, x, y); }

/// What rotational springs along the edges and at the ends of ribs put on the skin: a body without ground springs takes nothing from a rigid motion.
static Six edge_springs(const Structure& s, const fem::Vector& u)
{
    const auto& edges = s.skin->model.edges;
    const auto& ribs = s.skin->model.ribs;
    const bool any = std::any_of(edges.begin(), edges.end(), [](const fem::EdgeHold& e) { return e.kind == fem::Hold::sprung; })
                  || std::any_of(ribs.begin(), ribs.end(), [](const fem::RibModel& r) { return r.ends[0].rotational_stiffness > 0 || r.ends[1].rotational_stiffness > 0; });
    if (!any) return Six::Zero();
    return -(s.skin->body.rigid_modes.transpose() * (s.skin->body.K * u));
}

namespace {

/// What one load case gives by linear theory; each on its own, so that they are worked out side by side.
struct OfRun {
    results::SkinState state;
    fem::Recovered skin;
    std::vector<results::GaugeMove> gauges;
    std::optional<results::SkinField> picture;
    std::vector<fem::Vector> rims;
    std::vector<results::CornerStress> corners;
    std::vector<results::BodyBalance> balance;
};

/// `r` has its motion, its buckling factor and the largest figures of its field.
void read_rest(const Structure& s, const Solution& sol, const Run& run, double skin_allowable, OfRun& r)
{
    r.state.stress_at_most_MPa = r.state.max_von_mises_MPa + hidden_stress(s, run);
    read_hem(s, r.skin.u, r.state);
    r.state.linear_deflection_mm = r.state.max_deflection_mm;
    judge(r.state, skin_allowable);
    gauges(s, run, r.skin.u, r.gauges);
    const auto field = [&](double x, double y) { return fem::skin_point(*s.skin, r.skin.u, x, y); };
    r.rims = rim_values(s, field);
    r.corners = corner_stresses(s, field, r.state);
    const Six springs = edge_springs(s, r.skin.u);
    r.balance = balance(s, sol, run, r.skin.applied + r.skin.reaction + springs, r.skin.reaction + springs, r.skin.residual);
}

/// Load cases first, first + 1 .. of at most `together`.
std::vector<OfRun> of_runs(const Structure& s, const Solution& sol, std::size_t first, const fem::BucklingModel& buckling, double skin_allowable, const std::vector<layout::Point>& points)
{
    std::vector<const fem::Vector*> factors;
    std::vector<const fem::JointState*> states;
    std::vector<std::vector<fem::InPlaneForce>> in_plane;
    for (std::size_t k = first; k < std::min(first + together, sol.runs.size()); ++k) {
        factors.push_back(&sol.runs[k].factors);
        states.push_back(&sol.runs[k].states[0]);
        in_plane.push_back(in_plane_forces(s, sol.runs[k]));
    }
    std::vector<fem::Recovered> skins = fem::recover(s.assembly, s.skin_body, s.loads, factors, sol.free, states);
    const std::vector<double> buckling_factors = fem::buckling_factors(buckling, in_plane);
    std::vector<OfRun> out(skins.size());
    std::vector<const fem::Vector*> motions;
    std::vector<results::SkinState*> of;
    for (std::size_t i = 0; i < out.size(); ++i) {
        out[i].skin = std::move(skins[i]);
        out[i].state.load_case = sol.runs[first + i].load_case.name;
        out[i].state.buckling_factor = buckling_factors[i];
        motions.push_back(&out[i].skin.u);
        of.push_back(&out[i].state);
    }
    const fem::SkinStates together_read(*s.skin, motions);
    read_fields(s, together_read, points, of);
    std::vector<fem::SkinDeflection> pictures = together_read.deflection(between_lines);
    for (std::size_t i = 0; i < out.size(); ++i) {
        const Run& run = sol.runs[first + i];
        if (run.solved(0)) out[i].picture = picture_of(run, std::move(pictures[i]));
        read_rest(s, sol, run, skin_allowable, out[i]);
    }
    return out;
}

} // namespace

Fields fields(const Structure& s, const Solution& sol, const fem::BucklingModel& buckling, double skin_allowable, std::stop_token stop)
{
    Fields out;
    const std::vector<layout::Point> points = sample_points(s);
    const auto all = base::side_by_side((sol.runs.size() + together - 1) / together, [&](std::size_t k) {
        return stop.stop_requested() ? std::vector<OfRun>{} : of_runs(s, sol, k * together, buckling, skin_allowable, points);
    });
    for (std::size_t k = 0; k < sol.runs.size(); ++k) {
        if (all[k / together].empty()) return {};
        const OfRun& r = all[k / together][k % together];
        out.skin.push_back(r.state);
        out.gauges.insert(out.gauges.end(), r.gauges.begin(), r.gauges.end());
        if (r.picture) out.pictures.push_back(*r.picture);
        out.rims.push_back(r.rims);
        out.corners.insert(out.corners.end(), r.corners.begin(), r.corners.end());
        note(out.balance, r.balance);
    }
    return out;
}

namespace {

/// In place of what linear theory gave for that load case.
void put_corners(const Structure& s, const PointField& field, const results::SkinState& state, std::vector<results::CornerStress>& all)
{
    const std::vector<results::CornerStress> now = corner_stresses(s, field, state);
    auto next = now.begin();
    for (results::CornerStress& c : all)
        if (c.load_case == state.load_case) c = *next++;
}

} // namespace

Fields fields_with_large(const Structure& s, const Solution& sol, const Fields& linear, const fem::LargeModel& model, std::stop_token stop)
{
    Fields out = linear;
    const std::vector<layout::Point> points = sample_points(s);
    for (std::size_t k = 0; k < sol.runs.size() && !stop.stop_requested(); ++k) {
        const Run& run = sol.runs[k];
        if (!run.large) continue;
        const auto of_case = [&run](const results::GaugeMove& g) { return g.load_case == run.load_case.name; };
        out.gauges.erase(std::remove_if(out.gauges.begin(), out.gauges.end(), of_case), out.gauges.end());
        const auto picture_of_case = [&run](const results::SkinField& f) { return f.load_case == run.load_case.name; };
        out.pictures.erase(std::remove_if(out.pictures.begin(), out.pictures.end(), picture_of_case), out.pictures.end());
        if (!run.large_solved()) {
            not_solved(*run.large, out.skin[k]);
            for (fem::Vector& v : out.rims[k]) v.resize(0);
            put_corners(s, {}, out.skin[k], out.corners);
            continue;
        }
        read_large(s, model, *run.large, points, out.skin[k]);
        out.skin[k].stress_at_most_MPa = out.skin[k].max_von_mises_MPa + hidden_stress(s, run);
        if (!s.plates.empty() || !s.layout->openings.empty()) {
            const fem::LargeField large = fem::large_field(model, run.large->skin_u);
            const auto field = [&](double x, double y) { return fem::skin_point_large(model, large, x, y); };
            out.rims[k] = rim_values(s, field);
            put_corners(s, field, out.skin[k], out.corners);
        }
        gauges(s, run, run.large->skin_u, out.gauges);
        out.pictures.push_back(picture_of(run, fem::skin_deflection(*s.skin, run.large->skin_u, between_lines)));
        note(out.balance, balance(s, sol, run, run.large->applied + run.large->reaction, run.large->reaction, run.large->residual));
    }
    return out;
}

} // namespace thinskin::idealise
