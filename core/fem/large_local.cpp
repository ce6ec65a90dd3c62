// The sheet round a washer on its own fine grid, driven by the global solution along its boundary (theory FE-26).
#include "fem/large_model.h"

#include "base/largest.h"
#include "fem/skin_read.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace thinskin::fem {
namespace {

constexpr int most_steps = 20;
constexpr double tolerance = 1e-7;
constexpr double keep_below = 0.1;

LocalArea clipped(const SkinModel& m, LocalArea a)
{
    a.x0 = std::max(a.x0, 0.0), a.y0 = std::max(a.y0, 0.0);
    a.x1 = std::min(a.x1, m.width), a.y1 = std::min(a.y1, m.height);
    if (!(a.x1 - a.x0 > 1) || !(a.y1 - a.y0 > 1) || !(a.spacing > 0)) throw std::invalid_argument("large_local: the area needs a size and a spacing");
    return a;
}

/// The part of the panel in the area, in its own coordinates; everything along its boundary is given.
SkinModel part(const SkinModel& m, const LocalArea& a)
{
    SkinModel p = m;
    p.width = a.x1 - a.x0, p.height = a.y1 - a.y0, p.spacing = a.spacing;
    for (EdgeHold& e : p.edges) e = {Hold::held, 0};
    p.in_plane_fixed = true;
    p.ribs.clear();
    for (RibModel r : m.ribs) {
        r.ends = {};
        for (auto* end : {&r.from, &r.to}) (*end)[0] = std::clamp((*end)[0] - a.x0, 0.0, p.width), (*end)[1] = std::clamp((*end)[1] - a.y0, 0.0, p.height);
        const bool along_x = std::abs(r.to[0] - r.from[0]) > std::abs(r.to[1] - r.from[1]);
        const double length = along_x ? std::abs(r.to[0] - r.from[0]) : std::abs(r.to[1] - r.from[1]);
        const double line = along_x ? r.from[1] : r.from[0], far = along_x ? p.height : p.width;
        if (length > 0.1 && line > 0.01 && line < far - 0.01) p.ribs.push_back(r); // on the boundary everything is given anyway
    }
    p.openings.clear();
    for (Opening o : m.openings) {
        o.x0 -= a.x0, o.x1 -= a.x0, o.y0 -= a.y0, o.y1 -= a.y0;
        if (o.x1 > 0.01 && o.y1 > 0.01 && o.x0 < p.width - 0.01 && o.y0 < p.height - 0.01) p.openings.push_back(o);
    }
    return p;
}

double second_xy(const Skin& skin, const Vector& u, const ElementPlace& e)
{
    SkinPoint p;
    read_bending(skin, u, e, p);
    return -p.M_xy / (rigidity(skin.model.sheet) * (1 - skin.model.sheet.nu));
}

/// The global solution at the nodes of the part.
Vector sampled(const Skin& global, const Vector& u, const Skin& local, const LocalArea& a)
{
    const SkinLayout l{local.grid};
    Vector out = Vector::Zero(local.body.dofs);
    for (int j = 0; j < l.ny(); ++j)
        for (int i = 0; i < l.nx(); ++i) {
            const double x = std::min(a.x0 + local.grid.x[static_cast<std::size_t>(i)], global.model.width);
            const double y = std::min(a.y0 + local.grid.y[static_cast<std::size_t>(j)], global.model.height);
            if (in_opening(global.model, x, y)) continue;
            const ElementPlace e = find_element(global, x, y, "large_local: ");
            SkinPoint p;
            read_bending(global, u, e, p);
            read_displacements(global, u, e, p);
            out.segment<6>(l.dof(i, j, 0)) << p.w, p.w_x, p.w_y, second_xy(global, u, e), p.u, p.v;
        }
    return out;
}

Vector loads(const Skin& local, const LocalArea& a, const std::vector<LocalForce>& forces, double pressure)
{
    Vector load = skin_pressure(local, pressure);
    for (const LocalForce& f : forces) {
        const Footprint& w = f.where;
        if (!(w.x - w.half_x >= a.x0 && w.x + w.half_x <= a.x1 && w.y - w.half_y >= a.y0 && w.y + w.half_y <= a.y1) || !std::isfinite(f.force))
            throw std::invalid_argument("large_local: a footprint must lie inside the area, its force must be a number");
        add(load, skin_port(local, {w.x - a.x0, w.y - a.y0, w.half_x, w.half_y}, f.direction), f.force);
    }
    return load;
}

double largest_free(const Vector& f, const Skin& skin)
{
    const int grid_dofs = SkinLayout{skin.grid}.grid_dofs();
    const double h = skin.model.spacing;
    double largest = 0;
    for (int d = 0; d < skin.body.dofs; ++d) {
        const int k = d < grid_dofs ? d % 6 : 0;
        const double v = std::abs(f(d)) * (k == 3 ? 1 / (h * h) : k == 1 || k == 2 ? 1 / h : 1);
        if (!skin.body.supported[static_cast<std::size_t>(d)]) base::keep_largest(largest, v);
    }
    return largest;
}

/// Of the exact tangent, or of the one without membrane forces when that is not positive definite.
bool factor(const LargeModel& model, const Vector& u, Tangent& t, Body& body)
{
    for (const double geometric : {1.0, 0.0}) {
        if (geometric == 0) tangent(model, u, geometric, t);
        try {
            body.factor = factorise(t.K, model.pattern);
            return true;
        } catch (const SingularMatrix&) {
            body.factor.reset();
        }
    }
    return false;
}

/// Newton with the given boundary: only the free dofs move.
bool relax(const LargeModel& model, const Vector& load, Vector& u)
{
    Body body;
    body.name = model.skin->body.name;
    body.dofs = model.skin->body.dofs;
    Tangent t;
    double size = largest_free(load, *model.skin), before = 0;
    for (int n = 0; n < most_steps; ++n) {
        internal_force(model, u, t.force);
        const Vector out = load - t.force;
        const double error = largest_free(out, *model.skin);
        if (n == 0) size = std::max(size, error);
        if (error <= tolerance * size) return true;
        if (!std::isfinite(error)) return false;
        if (!(error <= keep_below * before)) { // the factor of an earlier step serves as long as it takes off enough
            tangent(model, u, 1, t);
            if (!factor(model, u, t, body)) return false;
        }
        before = error;
        u += solve(body, out);
    }
    return false;
}

std::shared_ptr<const LargeModel> model_of(const SkinModel& m) { return make_large(std::make_shared<const Skin>(skin_without_factor(m))); }

/// Last used first.
std::shared_ptr<const LargeModel> kept_model(const SkinModel& m, LocalGrids& kept)
{
    auto at = std::find_if(kept.last.begin(), kept.last.end(), [&m](const auto& k) { return k->skin->model == m; });
    if (at == kept.last.end()) {
        if (kept.last.size() == LocalGrids::most) kept.last.pop_back();
        at = kept.last.insert(kept.last.end(), model_of(m));
    }
    std::rotate(kept.last.begin(), at, at + 1);
    return kept.last.front();
}

} // namespace

LargeLocal large_local(const LargeModel& global, const LargeField& field, const LocalArea& area, const std::vector<LocalForce>& forces, double pressure, LocalGrids* kept)
{
    if (field.u.size() != global.skin->body.dofs) throw std::invalid_argument("large_local: not the field of this skin");
    LargeLocal out;
    out.area = clipped(global.skin->model, area);
    const SkinModel m = part(global.skin->model, out.area);
    out.model = kept ? kept_model(m, *kept) : model_of(m);
    const Skin& skin = *out.model->skin;
    Vector u = sampled(*global.skin, field.u, skin, out.area);
    if (relax(*out.model, loads(skin, out.area, forces, pressure), u)) {
        out.status = SolveStatus::solved;
        out.field = large_field(*out.model, u);
    } else {
        out.where = "the local grid did not converge";
    }
    return out;
}

SkinPoint local_point(const LargeLocal& local, double x, double y)
{
    if (local.status != SolveStatus::solved) throw std::invalid_argument("local_point: the local grid is not solved");
    const SkinModel& m = local.model->skin->model;
    constexpr double rounding = 1e-9;
    double p = x - local.area.x0, q = y - local.area.y0;
    if (p < 0 && p > -rounding) p = 0;
    if (q < 0 && q > -rounding) q = 0;
    if (p > m.width && p < m.width + rounding) p = m.width;
    if (q > m.height && q < m.height + rounding) q = m.height;
    return skin_point_large(*local.model, local.field, p, q);
}

} // namespace thinskin::fem
