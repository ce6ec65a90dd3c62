// FA-1 .. FA-5: the cards of repeated stress.
#include "strength/fatigue.h"

#include <limits>

namespace thinskin::strength {

namespace {

constexpr double none = std::numeric_limits<double>::infinity();
constexpr const char* lines = "hot-rolled structural steel, normal air, kept up; stress ranges, nominal, of the category's own area";
constexpr const char* outside = "door skins of 0.6 to 0.9 mm, spot welds, bonded hems, rivets and inserts: a category of 36 to 50 only stands in for a test there, which decides; "
                                "bearing, slip and fretting of unclamped sheet; amplitudes put in for ranges (8 to 32 times the life)";

SnLine line_of(double line) { return line == shear_stress ? SnLine::shear : SnLine::direct; }

base::Symbol line() { return {.name = "line", .unit = "-", .meaning = "0 direct stress (slopes 3 and 5), 1 shear (slope 5)", .choices = {direct_stress, shear_stress}}; }
base::Symbol category() { return {.name = "C", .unit = "MPa", .meaning = "category: range at 2 million cycles", .lower = 20, .upper = 160}; }
base::Symbol factor() { return {.name = "gamma", .unit = "-", .meaning = "factor on the stress, partial factors of load and strength", .lower = 1, .upper = 3}; }
base::Symbol sigma() { return {.name = "sigma", .unit = "MPa", .meaning = "rms of the stress", .lower = 0, .upper = 300}; }
base::Symbol cycles() { return {.name = "n", .unit = "-", .meaning = "cycles", .lower = 0, .upper = 1e12}; }

base::Card made(const char* id, const char* title, const char* formula, const char* unit, const char* source, base::Label label)
{
    base::Card c;
    c.id = id;
    c.title = title;
    c.formula = formula;
    c.unit = unit;
    c.rule = "partial_factors";
    c.source = source;
    c.edition = "2005";
    c.label = label;
    c.range = lines;
    c.not_for = outside;
    return c;
}

base::Resistance distance_formula(const DistanceToLimit& in)
{
    const double per_cycle = narrow_band_damage(line_of(in.line), in.C_MPa, in.gamma * in.sigma_MPa);
    if (!(per_cycle > 1e-30)) return base::not_covered("the stress does no damage by this formula: no distance can be given");
    return base::covered(in.D / per_cycle * in.v_mm_s / in.nu_Hz * 1e-6, 1);
}

constexpr const char* sn_source = "EN 1993-1-9, forms and constants of the S-N lines, read second-hand; Miner's linear sum";

} // namespace

template <> const Clause<BlockDamage>& clause<BlockDamage>()
{
    static const Clause<BlockDamage> c{
        made("FA-1", "Damage of cycles of one stress range", "d = n/N(gamma S); N = 2e6 (C/S)^3 to 5e6, slope 5 to 1e8, unlimited below; shear: slope 5 throughout", "-", sn_source,
             base::Label::published_read),
        {{&BlockDamage::line, line()},
         {&BlockDamage::C_MPa, category()},
         {&BlockDamage::gamma, factor()},
         {&BlockDamage::S_MPa, {.name = "S", .unit = "MPa", .meaning = "stress range, top to bottom", .lower = 0, .upper = 1000}},
         {&BlockDamage::n, cycles()}},
        [](const BlockDamage& in) { return base::covered(miner_sum(line_of(in.line), in.C_MPa, {{in.gamma * in.S_MPa, in.n}}), 1); }};
    return c;
}

template <> const Clause<RandomDamage>& clause<RandomDamage>()
{
    static const Clause<RandomDamage> c{
        made("FA-2", "Damage of a narrow-band random stress",
             "d = n (s^3/K3 G(5/2, t_D) + s^5/K5 (G(7/2, t_L) - G(7/2, t_D))), s = 8^0.5 gamma sigma, t = (S/s)^2, G the upper incomplete gamma function; shear: n s^5/K5 G(7/2, t_L)", "-",
             "Rayleigh peaks put into the lines of EN 1993-1-9 (read second-hand); integral in closed form", base::Label::computed),
        {{&RandomDamage::line, line()}, {&RandomDamage::C_MPa, category()}, {&RandomDamage::gamma, factor()}, {&RandomDamage::sigma_MPa, sigma()}, {&RandomDamage::n, cycles()}},
        [](const RandomDamage& in) { return base::covered(in.n * narrow_band_damage(line_of(in.line), in.C_MPa, in.gamma * in.sigma_MPa), 1); }};
    return c;
}

template <> const Clause<ThreeBandDamage>& clause<ThreeBandDamage>()
{
    static const Clause<ThreeBandDamage> c{
        made("FA-3", "Damage of a random stress by three bands", "d = n (0.683/N(2 gamma sigma) + 0.271/N(4 gamma sigma) + 0.0433/N(6 gamma sigma)), N of FA-1", "-",
             "three-band shares, read second-hand; lines of EN 1993-1-9, read second-hand", base::Label::published_read),
        {{&ThreeBandDamage::line, line()}, {&ThreeBandDamage::C_MPa, category()}, {&ThreeBandDamage::gamma, factor()}, {&ThreeBandDamage::sigma_MPa, sigma()}, {&ThreeBandDamage::n, cycles()}},
        [](const ThreeBandDamage& in) { return base::covered(in.n * three_band_damage(line_of(in.line), in.C_MPa, in.gamma * in.sigma_MPa), 1); }};
    return c;
}

template <> const Clause<DistanceToLimit>& clause<DistanceToLimit>()
{
    static const Clause<DistanceToLimit> c{
        made("FA-4", "Distance until the damage limit", "km = D v/(nu d1), d1 the damage of one cycle (FA-2)", "km", "cycles per kilometre nu/v; damage of FA-2", base::Label::computed),
        {{&DistanceToLimit::line, line()},
         {&DistanceToLimit::C_MPa, category()},
         {&DistanceToLimit::gamma, factor()},
         {&DistanceToLimit::sigma_MPa, {.name = "sigma", .unit = "MPa", .meaning = "rms of the stress", .lower = 0, .upper = 300, .lower_open = true}},
         {&DistanceToLimit::nu_Hz, {.name = "nu", .unit = "Hz", .meaning = "cycles a second", .lower = 0, .upper = 1000, .lower_open = true}},
         {&DistanceToLimit::v_mm_s, {.name = "v", .unit = "mm/s", .meaning = "mean speed", .lower = 0, .upper = 60000, .lower_open = true}},
         {&DistanceToLimit::D, {.name = "D", .unit = "-", .meaning = "damage limit; 0.3 .. 0.5 for random loads is common practice, no source", .lower = 0, .upper = 1, .lower_open = true}}},
        &distance_formula};
    return c;
}

template <> const Clause<YearsToLimit>& clause<YearsToLimit>()
{
    static const Clause<YearsToLimit> c{
        made("FA-5", "Years until the damage limit", "years = km/km_per_year", "-", "division", base::Label::computed),
        {{&YearsToLimit::km, {.name = "km", .unit = "km", .meaning = "distance to the limit (FA-4)", .lower = 0, .upper = none}},
         {&YearsToLimit::km_per_year, {.name = "km_per_year", .unit = "km", .meaning = "distance a year", .lower = 0, .upper = 1e6, .lower_open = true}}},
        [](const YearsToLimit& in) { return base::covered(in.km / in.km_per_year, 1); }};
    return c;
}

base::Resistance block_damage(const BlockDamage& in) { return resistance(in); }
base::Resistance random_damage(const RandomDamage& in) { return resistance(in); }
base::Resistance three_band(const ThreeBandDamage& in) { return resistance(in); }
base::Resistance distance_to_limit(const DistanceToLimit& in) { return resistance(in); }
base::Resistance years_to_limit(const YearsToLimit& in) { return resistance(in); }

} // namespace thinskin::strength
