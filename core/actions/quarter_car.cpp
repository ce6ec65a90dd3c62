// Notation as in quarter_car.h; inside this file in m, kg, N, s.
#include "actions/quarter_car.h"

#include "base/quantity.h"

#include <cmath>
#include <complex>
#include <fmt/format.h>
#include <numbers>

namespace thinskin::actions {

namespace {

constexpr double pi = std::numbers::pi;
constexpr double n0 = 0.1;                          // cycles/m
constexpr double band_from = 0.5, band_to = 80;     // Hz, where the model is meant

double G_v(const Road& r) { return 4 * pi * pi * r.Gd * 1e-6 * n0 * n0 * r.v_mm_s / 1000; } // AC-12

base::Symbol positive(const char* name, const char* unit, const char* meaning, double upper)
{
    return {.name = name, .unit = unit, .meaning = meaning, .lower = 0, .upper = upper, .lower_open = true};
}
base::Symbol roughness() { return positive("Gd", "1e-6 m3", "roughness at 0.1 cycles/m: class A 16, B 64, C 256, D 1024, E 4096", 32768); }
base::Symbol speed() { return positive("v", "mm/s", "speed of the vehicle", 60000); }

/// The five rows of the car, the same for every card that has one.
template <class In> std::vector<Row<In>> with_car(std::vector<Row<In>> after)
{
    std::vector<Row<In>> rows{{&In::Gd, roughness()},
                              {&In::v_mm_s, speed()},
                              {&In::m_s_kg, positive("m_s", "kg", "body mass of the corner", 5000)},
                              {&In::m_u_kg, positive("m_u", "kg", "mass of the wheel", 1000)},
                              {&In::k_s_N_mm, positive("k_s", "N/mm", "spring", 1000)},
                              {&In::k_t_N_mm, positive("k_t", "N/mm", "tyre", 5000)},
                              {&In::c_Ns_mm, positive("c", "N s/mm", "damper", 100)}};
    rows.insert(rows.end(), after.begin(), after.end());
    return rows;
}

base::Card made(const char* id, const char* title, const char* formula, const char* unit)
{
    base::Card c;
    c.id = id;
    c.title = title;
    c.formula = formula;
    c.unit = unit;
    c.rule = "actions";
    c.edition = "-";
    return c;
}

} // namespace

double roughness_of_class(char letter)
{
    switch (letter) {
    case 'A': return 16;
    case 'B': return 64;
    case 'C': return 256;
    case 'D': return 1024;
    case 'E': return 4096;
    default: return 0;
    }
}

double body_density(const QuarterCar& car, const Road& road, double f_Hz)
{
    const double k_s = 1e3 * car.k_s_N_mm, k_t = 1e3 * car.k_t_N_mm, c = 1e3 * car.c_Ns_mm;
    const std::complex<double> s{0, 2 * pi * f_Hz};
    const std::complex<double> strut = c * s + k_s;
    const std::complex<double> D = (car.m_s_kg * s * s + strut) * (car.m_u_kg * s * s + strut + k_t) - strut * strut;
    return std::norm(s * strut * k_t / D) * G_v(road) / (base::gravity_m_s2 * base::gravity_m_s2);
}

RandomResponse mount_on_car(const QuarterCar& car, const Road& road, double f_n_Hz, double zeta)
{
    RandomResponse r;
    if (!(f_n_Hz >= band_from && f_n_Hz <= band_to)) {
        r.reason = fmt::format("f = {:.4g} Hz is outside of the quarter car's band, {:g} .. {:g} Hz", f_n_Hz, band_from, band_to);
        return r;
    }
    if (!(zeta >= 0.005 && zeta <= 0.3)) {
        r.reason = fmt::format("damping {:g} is outside of the rule (0.005 .. 0.3)", zeta);
        return r;
    }
    const Moments m = response_moments([&](double f) { return body_density(car, road, f); }, band_from, band_to, f_n_Hz, zeta);
    if (!(m.m0 > 0 && std::isfinite(m.m0) && std::isfinite(m.m2))) {
        r.reason = "road, vehicle or mount has a figure that is not a number above zero";
        return r;
    }
    r.rms_g = std::sqrt(m.m0);
    r.rate_Hz = std::sqrt(m.m2 / m.m0);
    return r;
}

template <> const Clause<RoadSpeed>& clause<RoadSpeed>()
{
    static const Clause<RoadSpeed> c = [] {
        base::Card card = made("AC-12", "Vertical speed of the road under a wheel", "G_v = (2 pi)^2 Gd n0^2 v, n0 = 0.1 cycles/m", "(m/s)2/Hz");
        card.source = "ISO 8608 classes and waviness 2, as quoted by public code texts; read second-hand";
        card.edition = "1995";
        card.label = base::Label::published_read;
        card.range = "paved and unpaved roads, waviness 2, one-sided density";
        card.not_for = "single bumps, potholes, kerbs; roads whose roughness drifts";
        return Clause<RoadSpeed>{card, {{&RoadSpeed::Gd, roughness()}, {&RoadSpeed::v_mm_s, speed()}}, [](const RoadSpeed& in) { return base::covered(G_v({in.Gd, in.v_mm_s}), 1); }};
    }();
    return c;
}

template <> const Clause<BodyRms>& clause<BodyRms>()
{
    static const Clause<BodyRms> c = [] {
        base::Card card = made("AC-13", "Rms acceleration of a vehicle's body, quarter car", "a = (G_v/4 (k_t c + (m_s + m_u) k_s^2/c))^0.5/(m_s g), G_v of AC-12", "g");
        card.source = "integral of the quarter car's transfer function over all frequencies, closed form; checked against numerical integration";
        card.label = base::Label::computed;
        card.range = "linear; wheel on the road; body stiff";
        card.not_for = "roads so rough or fast that the wheel lifts (class E above 80 km/h); bump stops; body modes; the place behind the axle (AC-14)";
        return Clause<BodyRms>{card, with_car<BodyRms>({}), [](const BodyRms& in) {
                                   const double k_s = 1e3 * in.k_s_N_mm, k_t = 1e3 * in.k_t_N_mm, d = 1e3 * in.c_Ns_mm;
                                   const double square = G_v({in.Gd, in.v_mm_s}) / 4 * (k_t * d + (in.m_s_kg + in.m_u_kg) * k_s * k_s / d);
                                   return base::covered(std::sqrt(square) / (in.m_s_kg * base::gravity_m_s2), 1);
                               }};
    }();
    return c;
}

template <> const Clause<Overhang>& clause<Overhang>()
{
    static const Clause<Overhang> c = [] {
        base::Card card = made("AC-14", "Overhang behind the rear axle", "k = ((1 + d/L)^2 + (q d/L)^2)^0.5, q = rms at the front axle over rms at the rear", "-");
        card.source = "rigid body on two axles that move without relation; elementary";
        card.label = base::Label::computed;
        card.range = "steady roads; one bump at the rear axle alone: 1 + d/L";
        card.not_for = "factors that already hold the overhang, such as the road catalogue's";
        return Clause<Overhang>{card,
                                {{&Overhang::d_mm, {.name = "d", .unit = "mm", .meaning = "distance behind the rear axle", .lower = 0, .upper = 5000}},
                                 {&Overhang::L_mm, {.name = "L", .unit = "mm", .meaning = "wheelbase", .lower = 1000, .upper = 10000}},
                                 {&Overhang::q, {.name = "q", .unit = "-", .meaning = "front over rear", .lower = 0, .upper = 2}}},
                                [](const Overhang& in) { return base::covered(std::hypot(1 + in.d_mm / in.L_mm, in.q * in.d_mm / in.L_mm), 1); }};
    }();
    return c;
}

template <> const Clause<MountOnCar>& clause<MountOnCar>()
{
    static const Clause<MountOnCar> c = [] {
        base::Card card = made("AC-15", "Rms acceleration of a mount on a vehicle's body", "a^2 = int |H_car|^2 G_v |H_mount|^2 df/g^2, 0.5 .. 80 Hz", "g");
        card.source = "transfer functions of quarter car and mount, integrated";
        card.label = base::Label::computed;
        card.range = "f from 0.5 to 80 Hz; the item is light against the body";
        card.not_for = "door and body modes of 20 .. 40 Hz, which are not in it and add to it; weight (AC-11); the place behind the axle (AC-14)";
        return Clause<MountOnCar>{card,
                                  with_car<MountOnCar>({{&MountOnCar::f_n_Hz, {.name = "f", .unit = "Hz", .meaning = "natural frequency of the mounted item", .lower = band_from, .upper = band_to}},
                                                        {&MountOnCar::zeta, {.name = "zeta", .unit = "-", .meaning = "damping ratio of the mount", .lower = 0.005, .upper = 0.3}}}),
                                  [](const MountOnCar& in) {
                                      RandomResponse r = mount_on_car({in.m_s_kg, in.m_u_kg, in.k_s_N_mm, in.k_t_N_mm, in.c_Ns_mm}, {in.Gd, in.v_mm_s}, in.f_n_Hz, in.zeta);
                                      return r.reason.empty() ? base::covered(r.rms_g, 1) : base::not_covered(std::move(r.reason));
                                  }};
    }();
    return c;
}

base::Resistance road_speed_density(const RoadSpeed& in) { return clause<RoadSpeed>()(in); }
base::Resistance body_rms(const BodyRms& in) { return clause<BodyRms>()(in); }
base::Resistance overhang(const Overhang& in) { return clause<Overhang>()(in); }
base::Resistance mount_rms(const MountOnCar& in) { return clause<MountOnCar>()(in); }

} // namespace thinskin::actions
