#include "base/quantity.h"
#include "statics/door_parts.h"

#include <algorithm>
#include <cmath>

// core/statics/hinge_statics.cpp - notation (panel axes, forces on the door)
//   F_j, r_j  force and place of mass j, r from the pin line at the lower hinge
//   X, Z      hinge forces across and outward;  R_L latch or stop, outward;  h spacing;  V vertical on all hinges
// Six equations: sum X, Y, Z = 0 and the moments about the three axes through the lower hinge.
namespace thinskin::statics {

namespace {

using results::Vec3;

/// Sum of the applied forces and their moments about the pin at the lower hinge.
struct Applied { Vec3 F{}, M{}; double size = 0; };

void add(Applied& a, const Vec3& F, const Vec3& r)
{
    for (std::size_t k = 0; k < 3; ++k) a.F[k] += F[k];
    a.M[0] += r[1] * F[2] - r[2] * F[1];
    a.M[1] += r[2] * F[0] - r[0] * F[2];
    a.M[2] += r[0] * F[1] - r[1] * F[0];
    a.size += (std::abs(F[0]) + std::abs(F[1]) + std::abs(F[2])) * (std::abs(r[0]) + std::abs(r[1]) + std::abs(r[2]));
}

bool is_slam(const results::LoadCase& lc) { return lc.name.rfind("slam", 0) == 0; }

Applied applied(const layout::Layout& l, const results::LoadCase& lc, const std::vector<DoorMass>& masses)
{
    const layout::Door& d = *l.door;
    const Vec3 a = lc.acceleration_g;
    const double ref = l.item ? l.item->centre[0] - d.pin_x : (d.hinges_right ? -d.pin_x : l.width - d.pin_x);
    const double turn = is_slam(lc) ? -a[2] / ref : 0; // g per mm of distance from the pin line
    Applied sum;
    for (const DoorMass& m : masses) {
        const double w = m.kg * base::gravity_m_s2;
        const Vec3 r{m.at[0] - d.pin_x, m.at[1] - d.hinge_heights.front(), m.at[2] - d.pin_z};
        if (is_slam(lc)) add(sum, {w * turn * r[2], w * a[1], -w * turn * r[0]}, r);
        else add(sum, {w * a[0], w * a[1], w * a[2]}, r);
    }
    if (lc.on_item) {
        const Vec3& at = lc.on_item->at_mm;
        add(sum, lc.on_item->force_N, {at[0] - d.pin_x, at[1] - d.hinge_heights.front(), at[2] - d.pin_z});
    }
    sum.M[1] += turn * d.mass * base::gravity_m_s2 * l.width * l.width / 12; // the leaf about its own centre
    return sum;
}

struct Support { double latch = 0; Vec3 top{}, bottom{}; };

/// Latch at (x, y); nullptr = none.
Support supports(const Applied& a, const layout::Door& d, const layout::Point* latch)
{
    Support s;
    const double h = hinge_spacing(d), n = static_cast<double>(d.hinge_heights.size());
    double latch_about_x = 0;
    if (latch) {
        s.latch = a.M[1] / (latch->x - d.pin_x); // ST-3: about the pin line
        latch_about_x = (latch->y - d.hinge_heights.front()) * s.latch;
    }
    s.top = {a.M[2] / h, -a.F[1] / n, -(a.M[0] + latch_about_x) / h};
    s.bottom = {-a.F[0] - s.top[0], -a.F[1] / n, -a.F[2] - s.latch - s.top[2]};
    return s;
}

double worst(const Support& s, std::size_t k) { return std::max(std::abs(s.top[k]), std::abs(s.bottom[k])); }

HingeStatics refused(const results::LoadCase& lc, std::string reason)
{
    HingeStatics out;
    out.load_case = lc.name;
    out.reason = std::move(reason);
    return out;
}

void take(HingeStatics& out, const Support& s, const std::string& latch)
{
    out.top_N = s.top;
    out.bottom_N = s.bottom;
    out.in_plane_N = worst(s, 0);
    out.out_of_plane_N = worst(s, 2);
    out.latch_N = s.latch;
    out.latch = latch;
}

} // namespace

HingeStatics hinge_statics(const layout::Layout& l, const results::LoadCase& lc, double mass_tolerance)
{
    if (const std::string why = no_hinges(l); !why.empty()) return refused(lc, why);
    if (!lc.door_closed) return refused(lc, "the door is open: the stop of its check strap is not given");
    const layout::Door& d = *l.door;
    const std::vector<DoorMass> masses = door_masses(l, mass_tolerance);
    const Applied a = applied(l, lc, masses);
    HingeStatics out;
    out.load_case = lc.name;
    out.latch_needed = std::abs(a.M[1]) > 1e-12 * a.size;
    if (out.latch_needed && d.latches.empty()) return refused(lc, "no latch is given, and this load case turns the door about its pin line");
    const double kz = -lc.acceleration_g[1];
    const Couples rest = at_rest(d, masses);
    out.T_N = kz * rest.T;
    out.N_N = kz * rest.N;
    if (lc.on_item) {
        out.T_N -= lc.on_item->force_N[1] * y_of(d, lc.on_item->at_mm) / hinge_spacing(d);
        out.N_N -= lc.on_item->force_N[1] * e_of(d, lc.on_item->at_mm) / hinge_spacing(d);
    }
    out.V_N = -a.F[1];
    take(out, supports(a, d, nullptr), "");
    for (std::size_t i = 0; out.latch_needed && i < d.latches.size(); ++i) {
        const Support s = supports(a, d, &d.latches[i]);
        if (i == 0 || worst(s, 2) > out.out_of_plane_N) take(out, s, "latch " + std::to_string(i + 1));
    }
    out.covered = std::isfinite(out.in_plane_N + out.out_of_plane_N + out.V_N + out.latch_N);
    if (!out.covered) out.reason = "a figure of the door is not a number";
    return out;
}

HingeIndex hinge_index(const layout::Layout& l, const HingeStatics& s)
{
    HingeIndex out;
    if (!s.covered) {
        out.reason = s.reason;
        return out;
    }
    constexpr double longitudinal = 11000, transverse = 9000, vertical = 9000; // N on the whole hinge system
    const double n = static_cast<double>(l.door->hinge_heights.size());
    const bool rear = l.faces == model::Faces::rear, across = rear || l.faces == model::Faces::front;
    const double F_n = (across ? longitudinal : transverse) / n, F_t = (across ? transverse : longitudinal) / n, F_y = vertical / n;
    for (const Vec3& hinge : {s.top_N, s.bottom_N}) out.without_vertical = std::max(out.without_vertical, std::abs(hinge[2]) / F_n + std::abs(hinge[0]) / F_t); // ST-9
    if (!rear) {
        out.reason = "the regulation has no vertical hinge load for this door: it is given for back doors only";
        return out;
    }
    out.covered = true;
    out.one_hinge = out.without_vertical + std::abs(s.V_N) / F_y;
    out.shared = out.without_vertical + std::abs(s.V_N) / n / F_y;
    return out;
}

} // namespace thinskin::statics
