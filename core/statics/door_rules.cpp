#include "statics/door_rules.h"

#include "base/quantity.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace thinskin::statics {

double leaning_torque(const LeaningDoor& d) { return base::gravity_m_s2 * std::sin(d.alpha) * std::hypot(d.kg_y, d.kg_e); }

std::array<double, 2> leaning_direction(const LeaningDoor& d)
{
    const double r = std::hypot(d.kg_y, d.kg_e);
    if (!(r > 0)) return {0, 1};
    return {0.0 - d.kg_e / r, d.kg_y / r}; // square to the common radius
}

std::array<double, 2> turned_force(const TurnedForce& f)
{
    const double c = std::cos(f.theta), s = std::sin(f.theta);
    return {f.F_t * c - f.F_n * s, f.F_t * s + f.F_n * c};
}

double open_stop(const OpenStop& s)
{
    constexpr double N_per_kg_mm_s2 = 1e-3;
    return N_per_kg_mm_s2 * std::numbers::pi * s.I_kg_mm2 * s.v_edge_mm_s / (2 * s.D_s * s.y_edge * s.r);
}

double hinge_give(const HingeGive& g) { return g.s * g.h * g.h / (2 * g.m * base::gravity_m_s2 * g.y * g.y); }

double giving_rest(const GivingRest& r)
{
    const double meets = 2 * r.c * r.y_s * (r.T - r.T_b) / r.h - r.gap;
    if (std::isnan(meets)) return meets;
    return std::max(0.0, meets) / (2 * r.c * r.y_s * r.y_s / (r.h * r.h) + 1 / r.k);
}

} // namespace thinskin::statics
