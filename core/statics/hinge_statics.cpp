#include "base/quantity.h"
#include "statics/door_parts.h"

#include <algorithm>
#include <cmath>
#include <numbers>

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

Applied applied(const layout::Layout& l, const results::LoadCase& lc, const std::vector<DoorMass>& masses)
{
    const layout::Door& d = *l.door;
    const Vec3 a = lc.acceleration_g;
    const double turn = lc.turns ? lc.spin_rad_s2 / (base::gravity_m_s2 * 1000) : 0; // g per mm of distance from the pin line
    Applied sum;
    for (const DoorMass& m : masses) {
        const double w = m.kg * base::gravity_m_s2;
        const Vec3 r{m.at[0] - d.pin_x, m.at[1] - d.hinge_heights.front(), m.at[2] - d.pin_z};
        sum.M[1] += turn * base::gravity_m_s2 * own_inertia(l, m);
        if (lc.turns) add(sum, {w * turn * r[2], w * a[1], -w * turn * r[0]}, r);
        else add(sum, {w * a[0], w * a[1], w * a[2]}, r);
    }
    if (lc.on_item) {
        const Vec3& at = lc.on_item->at_mm;
        add(sum, lc.on_item->force_N, {at[0] - d.pin_x, at[1] - d.hinge_heights.front(), at[2] - d.pin_z});
    }
    return sum;
}

struct Support { double latch = 0, at_top = 0, at_bottom = 0; Vec3 top{}, bottom{}; }; // at_top, at_bottom: what the hinges bear of the latch's force

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
    s.at_top = -latch_about_x / h;
    s.at_bottom = -s.latch - s.at_top;
    return s;
}

double worst(const Support& s, std::size_t k) { return std::max(std::abs(s.top[k]), std::abs(s.bottom[k])); }

HingeStatics refused(const results::LoadCase& lc, std::string reason, std::string lift_with)
{
    HingeStatics out;
    out.load_case = lc.name;
    out.open = !lc.door_closed;
    out.turns = lc.turns;
    out.event = lc.turns || out.open;
    out.reason = std::move(reason);
    out.lift_with = std::move(lift_with);
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
    if (!out.open) return;
    // Which way the strap's line runs is not known, only how far it passes the hinge line: whatever it is, no more than this.
    out.strap_at_top_N = s.at_top;
    out.strap_at_bottom_N = s.at_bottom;
    const double top = std::abs(s.at_top), bottom = std::abs(s.at_bottom);
    out.in_plane_N = std::max(std::abs(s.top[0]) + top, std::abs(s.bottom[0]) + bottom);
    out.out_of_plane_N = std::max(std::abs(s.top[2] - s.at_top) + top, std::abs(s.bottom[2] - s.at_bottom) + bottom);
}

/// What may keep the door from turning: its latches, or the check strap of the open door, square to the leaf; flung open, an end stop.
std::vector<layout::Point> holders(const layout::Door& d, const results::LoadCase& lc)
{
    if (lc.door_closed) return d.latches;
    const auto at = [&d](double lever, double height) { return layout::Point{d.pin_x + (d.hinges_right ? -1 : 1) * lever, height}; };
    if (lc.turns && d.end_stop) return {at(d.end_stop->lever, d.end_stop->height)};
    if (!d.strap) return {};
    return {at(d.strap->lever, d.strap->height)};
}

/// Couples of the vertical force.
void add_couples(HingeStatics& out, const layout::Door& d, const results::LoadCase& lc, const std::vector<DoorMass>& masses)
{
    const double kz = -lc.acceleration_g[1];
    const Couples rest = at_rest(d, masses);
    out.T_N = kz * rest.T;
    out.N_N = kz * rest.N;
    if (!lc.on_item) return;
    out.T_N -= lc.on_item->force_N[1] * y_of(d, lc.on_item->at_mm) / hinge_spacing(d);
    out.N_N -= lc.on_item->force_N[1] * e_of(d, lc.on_item->at_mm) / hinge_spacing(d);
}

/// 49 CFR 571.206, S4.1.2.1(d): back doors are tried along their hinge plates, whose direction a case does not say, and along the pin only
/// where they open upward.
bool by_plates(const layout::Layout& l)
{
    return l.faces == model::Faces::rear && l.door->evidence == model::HingeEvidence::Kind::us_regulation;
}

} // namespace

HingeStatics hinge_statics(const layout::Layout& l, const results::LoadCase& lc, double mass_tolerance, double rest_N)
{
    if (const std::string why = no_hinges(l); !why.empty()) return refused(lc, why, no_hinges_key(l));
    const layout::Door& d = *l.door;
    const std::vector<DoorMass> masses = door_masses(l, mass_tolerance);
    const std::vector<layout::Point> held_at = holders(d, lc);
    Applied a = applied(l, lc, masses);
    if (rest_N != 0 && d.rest) add(a, {0, rest_N, 0}, {d.rest->x - d.pin_x, d.rest->y - d.hinge_heights.front(), 0});
    HingeStatics out;
    out.load_case = lc.name;
    out.open = !lc.door_closed;
    out.turns = lc.turns;
    out.event = lc.turns || out.open;
    out.pushed = lc.on_item.has_value();
    out.torque_Nmm = a.M[1] * (d.hinges_right ? 1 : -1) + 0.0;
    out.latch_needed = std::abs(a.M[1]) > 1e-12 * a.size;
    if (out.latch_needed && held_at.empty()) {
        out.reason = out.open ? "lever and height of the check strap are not given, and something turns the open door" : "no latch is given, and this load case turns the door about its pin line";
        out.lift_with = out.open ? "door.check_strap" : "door.latches";
        return out;
    }
    add_couples(out, d, lc, masses);
    out.V_N = -a.F[1];
    take(out, supports(a, d, nullptr), "");
    for (std::size_t i = 0; out.latch_needed && i < held_at.size(); ++i) {
        const Support s = supports(a, d, &held_at[i]);
        if (i == 0 || worst(s, 2) > out.out_of_plane_N) take(out, s, out.open ? (out.turns && d.end_stop ? "end stop" : "check strap") : "latch " + std::to_string(i + 1));
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
    out.V_N = std::abs(s.V_N);
    const double n = static_cast<double>(l.door->hinge_heights.size());
    const bool rear = l.faces == model::Faces::rear, across = rear || l.faces == model::Faces::front;
    const double F_n = (across ? longitudinal : transverse) / n, F_t = (across ? transverse : longitudinal) / n, F_y = vertical / n;
    if (s.open) {
        // An open door has turned its forces against the plates on the pillar: the lower load for both directions, and the strap's line in any.
        const auto sum = [](const Vec3& hinge, double strap) { return std::abs(hinge[0]) + std::abs(hinge[2] - strap) + std::numbers::sqrt2 * std::abs(strap); };
        out.without_vertical = std::max(sum(s.top_N, s.strap_at_top_N), sum(s.bottom_N, s.strap_at_bottom_N)) / (transverse / n);
        out.kind = std::max(std::hypot(s.top_N[0], s.top_N[2]), std::hypot(s.bottom_N[0], s.bottom_N[2])) / (longitudinal / n);
    } else {
        for (const Vec3& hinge : {s.top_N, s.bottom_N}) out.without_vertical = std::max(out.without_vertical, std::abs(hinge[2]) / F_n + std::abs(hinge[0]) / F_t); // ST-9
        out.kind = out.without_vertical;
    }
    if (!rear) {
        out.reason = "the regulation has no vertical hinge load for this door: it is given for back doors only";
        return out;
    }
    if (by_plates(l)) {
        out.kind = s.open ? out.kind : out.without_vertical + out.V_N / n / F_y;
        for (const Vec3& hinge : {s.top_N, s.bottom_N}) out.without_vertical = std::max(out.without_vertical, (std::abs(hinge[2]) + std::abs(hinge[0])) / F_t);
        out.reason = "49 CFR 571.206 has no vertical load for hinges of a side-hinged back door, and counts only for doors that lead straight into a compartment with a seat: vertical hinge capacity unproven";
        return out;
    }
    out.covered = true;
    out.one_hinge = out.without_vertical + std::abs(s.V_N) / F_y;
    out.shared = out.without_vertical + std::abs(s.V_N) / n / F_y;
    if (!s.open) out.kind = out.shared;
    return out;
}

} // namespace thinskin::statics
