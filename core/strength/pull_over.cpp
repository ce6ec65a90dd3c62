// Notation (AISI S100-16 J4.4.2; EN 1993-1-8 Table 3.4)
//   t1, Fu1   sheet under the head        dh   head      dw, tw   separate washer      d'w   effective diameter
//   dm        mean of across-flats and across-points of head or nut
#include "strength/pull_over.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <limits>
#include <numbers>

namespace thinskin::strength {

namespace {

constexpr double largest_counted = 19.1;    // 3/4 in
constexpr double smallest_in_tension = 7.94; // 5/16 in
constexpr double washer_thin = 1.27, washer_thick = 1.6, thick_above = 15.9;

/// The clause's demands on head and washer; empty = met.
std::string head_or_washer_refused(const PullOver& in)
{
    if (in.washer == 0)
        return in.dh_mm >= smallest_in_tension ? "" : fmt::format("dh = {:g} mm: a head below {:g} mm may not be counted in tension", in.dh_mm, smallest_in_tension);
    if (!(in.dw_mm >= smallest_in_tension))
        return fmt::format("dw = {:g} mm: a washer below {:g} mm may not be counted in tension", in.dw_mm, smallest_in_tension);
    const double least = in.dw_mm > thick_above ? washer_thick : washer_thin;
    if (!(in.tw_mm >= least))
        return fmt::format("tw = {:g} mm: a separate washer of {:g} mm has to be {:g} mm thick; without it the head alone counts", in.tw_mm, in.dw_mm, least);
    return {};
}

base::Resistance pull_over_formula(const PullOver& in)
{
    if (std::string why = head_or_washer_refused(in); !why.empty()) return base::not_covered(std::move(why));
    return base::covered(1.5 * in.t1_mm * effective_pull_over_diameter(in) * in.Fu1_MPa, 3.00);
}

base::Resistance punching_formula(const Punching& in)
{
    return base::covered(0.6 * std::numbers::pi * in.dm_mm * in.t_mm * in.Fu_MPa, 2.0);
}

} // namespace

double effective_pull_over_diameter(const PullOver& in)
{
    const double spread = in.dh_mm + 2 * in.tw_mm + in.t1_mm;
    if (std::isnan(in.washer + in.dw_mm + spread)) return std::numeric_limits<double>::quiet_NaN(); // std::min would lose it
    if (in.washer == 0) return std::min(in.dh_mm, largest_counted);
    return std::min({spread, in.dw_mm, largest_counted});
}

template <> const Clause<PullOver>& clause<PullOver>()
{
    static const Clause<PullOver> c{
        {.id = "PO-1",
         .title = "Pull-over of a sheet under a head or washer",
         .formula = "Pnov = 1.5 t1 d'w Fu1, d'w = min(dh + 2 tw + t1, dw, 19.1 mm) with a separate washer, min(dh, 19.1 mm) without",
         .unit = "N",
         .rule = "allowable_strength",
         .source = "AISI S100-16 J4.4.2",
         .edition = "2016",
         .label = base::Label::read_in_copy,
         .range = "written for screws of 2.03 to 6.35 mm: under a larger bolt it is judgement. The clause limits no thickness; 0.5 to 4.76 mm "
                  "is our range (judgement). Read in a copy made by others, the form agrees with published tables. Ours, on the safe side: a solid washer counts up to 19.1 mm, and "
                  "has to be 1.27 mm thick on the thinnest sheet as well (the clause: 0.61 mm up to 0.686 mm of sheet)",
         .not_for = "sheet of low ductility (tests came out low in thin and hard sheet), domed or plastic washers, eccentric pull (half of it), "
                    "a plate's own bending, repeated load, aluminium"},
        {{&PullOver::t1_mm, {.name = "t1", .unit = "mm", .meaning = "core thickness of the sheet under the head", .lower = 0.5, .upper = 4.76}},
         {&PullOver::Fu1_MPa, {.name = "Fu1", .unit = "MPa", .meaning = "tensile strength of that sheet", .lower = 200, .upper = 690}},
         {&PullOver::dh_mm, {.name = "dh", .unit = "mm", .meaning = "head or nut, across flats", .lower = 0, .upper = 60, .lower_open = true}},
         {&PullOver::washer, {.name = "washer", .unit = "-", .meaning = "1 separate solid steel washer, 0 head alone", .choices = {0, 1}}},
         {&PullOver::dw_mm, {.name = "dw", .unit = "mm", .meaning = "washer diameter (0 without)", .lower = 0, .upper = 100}},
         {&PullOver::tw_mm, {.name = "tw", .unit = "mm", .meaning = "washer thickness (0 without)", .lower = 0, .upper = 10}}},
        &pull_over_formula};
    return c;
}

template <> const Clause<Punching>& clause<Punching>()
{
    static const Clause<Punching> c{
        {.id = "PU-1",
         .title = "Punching of a thick ply under a head or nut",
         .formula = "Rn = 0.6 pi dm t Fu",
         .unit = "N",
         .rule = "allowable_strength",
         .source = "form of EN 1993-1-8 Table 3.4, with a factor of 2.0",
         .edition = "2005",
         .label = base::Label::judgement,
         .range = "plies of 3 mm and more; the form was read, the factor under this rule set is judgement",
         .not_for = "thin sheet, which dishes and tears long before it is punched (PO-1); bending of the ply"},
        {{&Punching::t_mm, {.name = "t", .unit = "mm", .meaning = "thickness of the ply", .lower = 3, .upper = 40}},
         {&Punching::Fu_MPa, {.name = "Fu", .unit = "MPa", .meaning = "tensile strength of the ply", .lower = 200, .upper = 700}},
         {&Punching::dm_mm, {.name = "dm", .unit = "mm", .meaning = "mean of across-flats and across-points of head or nut", .lower = 5, .upper = 60}}},
        &punching_formula};
    return c;
}

base::Resistance pull_over(const PullOver& in) { return resistance(in); }
base::Resistance punching(const Punching& in) { return resistance(in); }

const base::Card& pull_over_card() { return clause<PullOver>().card(); }
const base::Card& punching_card() { return clause<Punching>().card(); }

} // namespace thinskin::strength
