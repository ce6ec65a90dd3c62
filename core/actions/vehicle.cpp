// Notation: q = rho v^2/2 pressure of the air; W = m g; distances of a door from its hinge line
#include "actions/vehicle.h"

#include "base/quantity.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace thinskin::actions {

namespace {

constexpr double g = base::gravity_m_s2;
constexpr double half_pi = std::numbers::pi / 2;

/// MPa, from mm/s: kg/m3 (mm/s)^2 = 1e-6 Pa = 1e-12 MPa.
double q_MPa(double v_mm_s) { return 0.5 * air_density * v_mm_s * v_mm_s * 1e-12; }

base::Symbol from_zero(const char* name, const char* unit, const char* meaning, double upper)
{
    return {.name = name, .unit = unit, .meaning = meaning, .lower = 0, .upper = upper};
}
base::Symbol above_zero(const char* name, const char* unit, const char* meaning, double upper)
{
    return {.name = name, .unit = unit, .meaning = meaning, .lower = 0, .upper = upper, .lower_open = true};
}
base::Symbol coefficient() { return above_zero("C", "-", "force coefficient on the area", 3); }
base::Symbol area() { return above_zero("A", "mm2", "area square to the air", 2e7); }
base::Symbol mass() { return above_zero("m", "kg", "mass", 1000); }
base::Symbol air_speed() { return from_zero("v", "mm/s", "speed of the air against the thing", 80000); }

constexpr const char* air_source = "dynamic pressure, air at 1.225 kg/m3; the coefficient: from memory";

} // namespace

template <> const Clause<AirForce>& clause<AirForce>()
{
    static const Clause<AirForce> c{
        {.id = "AC-16",
         .title = "Force of the air on a thing",
         .formula = "F = C A rho v^2/2, rho = 1.225 kg/m3",
         .unit = "N",
         .rule = "actions",
         .source = air_source,
         .edition = "-",
         .label = base::Label::from_memory,
         .range = "C: box beside a wall 1.1 .. 1.3; flat thing square to the wind 1.2, both senses; suction in the wake of a rear door 0.1 .. 0.3, outward",
         .not_for = "gusts and passing trucks, which shake; lift of awnings and roofs; headwind that was not added to the speed"},
        {{&AirForce::C, coefficient()}, {&AirForce::A_mm2, area()}, {&AirForce::v_mm_s, air_speed()}},
        [](const AirForce& in) { return base::covered(in.C * in.A_mm2 * q_MPa(in.v_mm_s), 1); }};
    return c;
}

template <> const Clause<WindLimit>& clause<WindLimit>()
{
    static const Clause<WindLimit> c{
        {.id = "AC-17",
         .title = "Wind at which a force is reached",
         .formula = "v = (2 F/(rho C A))^0.5, rho = 1.225 kg/m3",
         .unit = "mm/s",
         .rule = "actions",
         .source = air_source,
         .edition = "-",
         .label = base::Label::from_memory,
         .range = "as AC-16",
         .not_for = "mean wind of a forecast, whose gusts are about 1.5 times as fast (from memory)"},
        {{&WindLimit::F_N, from_zero("F", "N", "force that may not be exceeded", 1e6)}, {&WindLimit::C, coefficient()}, {&WindLimit::A_mm2, area()}},
        [](const WindLimit& in) { return base::covered(1e6 * std::sqrt(2 * in.F_N / (air_density * in.C * in.A_mm2)), 1); }};
    return c;
}

template <> const Clause<CheckStrap>& clause<CheckStrap>()
{
    static const Clause<CheckStrap> c{
        {.id = "AC-18",
         .title = "Check strap of an open door in the wind",
         .formula = "F = C A (rho v^2/2) y/r, rho = 1.225 kg/m3",
         .unit = "N",
         .rule = "actions",
         .source = air_source,
         .edition = "-",
         .label = base::Label::from_memory,
         .range = "door held open, wind square to it; the hung item's own area belongs to A, its y to y",
         .not_for = "a gust that throws the door into its stop: that is a stop of the whole inertia (AC-1, ST-10)"},
        {{&CheckStrap::C, coefficient()},
         {&CheckStrap::A_mm2, area()},
         {&CheckStrap::v_mm_s, air_speed()},
         {&CheckStrap::y_mm, from_zero("y", "mm", "centre of the area from the hinge line", 3000)},
         {&CheckStrap::r_mm, above_zero("r", "mm", "lever of the strap about the hinge line", 1000)}},
        [](const CheckStrap& in) { return base::covered(in.C * in.A_mm2 * q_MPa(in.v_mm_s) * in.y_mm / in.r_mm, 1); }};
    return c;
}

template <> const Clause<SlopeTorque>& clause<SlopeTorque>()
{
    static const Clause<SlopeTorque> c{
        {.id = "AC-19",
         .title = "Torque of a mass on a door, vehicle on a slope",
         .formula = "M = m g r sin(alpha) |sin(psi)|, r = (y^2 + e^2)^0.5",
         .unit = "N mm",
         .rule = "actions",
         .source = "moment of the weight about a leaning hinge line",
         .edition = "-",
         .label = base::Label::computed,
         .range = "rigid door; sizes of several masses add when their radii are in line, the safe side",
         .not_for = "the holding torque of the check strap, which was made for the bare door"},
        {{&SlopeTorque::m_kg, mass()},
         {&SlopeTorque::y_mm, from_zero("y", "mm", "distance of the mass from the hinge line", 3000)},
         {&SlopeTorque::e_mm, from_zero("e", "mm", "distance off the pin", 2000)},
         {&SlopeTorque::alpha_rad, from_zero("alpha", "rad", "slope", 0.6)},
         {&SlopeTorque::psi_rad, {.name = "psi", .unit = "rad", .meaning = "from downhill to the radius of the mass; worst pi/2", .lower = -2 * half_pi, .upper = 2 * half_pi}}},
        [](const SlopeTorque& in) {
            return base::covered(in.m_kg * g * std::hypot(in.y_mm, in.e_mm) * std::sin(in.alpha_rad) * std::abs(std::sin(in.psi_rad)), 1);
        }};
    return c;
}

template <> const Clause<EdgeSag>& clause<EdgeSag>()
{
    static const Clause<EdgeSag> c{
        {.id = "AC-20",
         .title = "Sag of a door's free edge from the give of its hinges",
         .formula = "s = 2 c y_edge m g y/h^2",
         .unit = "mm",
         .rule = "actions",
         .source = "turning of a rigid door on two hinges that give alike",
         .edition = "-",
         .label = base::Label::computed,
         .range = "c measured: hang a known mass on the free edge and read the drop; linear in c",
         .not_for = "a door that bends itself; free play of worn pins"},
        {{&EdgeSag::c_mm_N, from_zero("c", "mm/N", "give of one hinge with its sheet, sideways", 1)},
         {&EdgeSag::m_kg, mass()},
         {&EdgeSag::y_mm, from_zero("y", "mm", "distance of the mass from the hinge line", 3000)},
         {&EdgeSag::y_edge_mm, above_zero("y_edge", "mm", "distance of the free edge", 3000)},
         {&EdgeSag::h_mm, above_zero("h", "mm", "spacing of the outermost hinges", 3000)}},
        [](const EdgeSag& in) { return base::covered(2 * in.c_mm_N * in.y_edge_mm * in.m_kg * g * in.y_mm / (in.h_mm * in.h_mm), 1); }};
    return c;
}

template <> const Clause<ElasticRest>& clause<ElasticRest>()
{
    static const Clause<ElasticRest> c{
        {.id = "AC-21",
         .title = "Rest under a closed door, elastic",
         .formula = "V = max(0, (s - gap)/(c_d + c_s))",
         .unit = "N",
         .rule = "actions",
         .source = "two springs in line that meet after a gap",
         .edition = "-",
         .label = base::Label::computed,
         .range = "c_d and c_s measured; between no rest and the rigid bound m g y/y_s, which the program shows",
         .not_for = "relieving the hinges of an open door: the rest is gone"},
        {{&ElasticRest::s_mm, from_zero("s", "mm", "sag at the rest if it were not there", 200)},
         {&ElasticRest::gap_mm, from_zero("gap", "mm", "gap under the unloaded door", 200)},
         {&ElasticRest::c_d_mm_N, above_zero("c_d", "mm/N", "give of door and hinges at the rest", 10)},
         {&ElasticRest::c_s_mm_N, from_zero("c_s", "mm/N", "give of the rest", 10)}},
        [](const ElasticRest& in) { return base::covered(std::max(0.0, in.s_mm - in.gap_mm) / (in.c_d_mm_N + in.c_s_mm_N), 1); }};
    return c;
}

template <> const Clause<TetherCatch>& clause<TetherCatch>()
{
    static const Clause<TetherCatch> c{
        {.id = "AC-22",
         .title = "Tether that catches a falling item",
         .formula = "F = m g (1 + (1 + 2 k s/(m g))^0.5)",
         .unit = "N",
         .rule = "actions",
         .source = "energy of a fall through the slack into a spring; elementary",
         .edition = "-",
         .label = base::Label::computed,
         .range = "elastic tether, straight fall; s = 0 still gives twice the weight",
         .not_for = "an item that swings, drags on the road or is hit; the strength of what the tether is tied to"},
        {{&TetherCatch::m_kg, mass()}, {&TetherCatch::s_mm, from_zero("s", "mm", "fall before the tether is tight", 2000)}, {&TetherCatch::k_N_mm, above_zero("k", "N/mm", "stiffness of the tether and its ends", 1e5)}},
        [](const TetherCatch& in) {
            const double W = in.m_kg * g;
            return base::covered(W * (1 + std::sqrt(1 + 2 * in.k_N_mm * in.s_mm / W)), 1);
        }};
    return c;
}

template <> const Clause<RearAxle>& clause<RearAxle>()
{
    static const Clause<RearAxle> c{
        {.id = "AC-23",
         .title = "Rear axle's share of a mass behind it",
         .formula = "m_r = m (1 + d/L); the front axle loses m d/L",
         .unit = "kg",
         .rule = "actions",
         .source = "lever about the axles; the same in an article on loading motorhomes",
         .edition = "-",
         .label = base::Label::published_read,
         .range = "level, standing still",
         .not_for = "plated masses, which the vehicle's papers give; the least load of the steering axle has to be looked up, too"},
        {{&RearAxle::m_kg, mass()}, {&RearAxle::d_mm, from_zero("d", "mm", "distance behind the rear axle", 5000)}, {&RearAxle::L_mm, {.name = "L", .unit = "mm", .meaning = "wheelbase", .lower = 1000, .upper = 10000}}},
        [](const RearAxle& in) { return base::covered(in.m_kg * (1 + in.d_mm / in.L_mm), 1); }};
    return c;
}

base::Resistance air_force(const AirForce& in) { return clause<AirForce>()(in); }
base::Resistance wind_limit(const WindLimit& in) { return clause<WindLimit>()(in); }
base::Resistance check_strap(const CheckStrap& in) { return clause<CheckStrap>()(in); }
base::Resistance slope_torque(const SlopeTorque& in) { return clause<SlopeTorque>()(in); }
base::Resistance edge_sag(const EdgeSag& in) { return clause<EdgeSag>()(in); }
base::Resistance elastic_rest(const ElasticRest& in) { return clause<ElasticRest>()(in); }
base::Resistance tether_catch(const TetherCatch& in) { return clause<TetherCatch>()(in); }
base::Resistance rear_axle(const RearAxle& in) { return clause<RearAxle>()(in); }

} // namespace thinskin::actions
