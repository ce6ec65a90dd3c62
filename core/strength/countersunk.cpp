// Notation: t part under the head, h depth of its countersink, dhole hole below it, mm; Fu the part's tensile strength.
#include "strength/plates.h"

namespace thinskin::strength {

namespace {

base::Resistance formula(const CountersunkPullThrough& in)
{
    if (!(in.t_mm >= in.h_mm)) return base::not_covered("the part is thinner than the countersink is deep: the head sits in a cone of nothing");
    return base::covered(1.5 * in.dhole_mm * (in.t_mm - in.h_mm / 2) * in.Fu_MPa, 3.00);
}

} // namespace

template <> const Clause<CountersunkPullThrough>& clause<CountersunkPullThrough>()
{
    static const Clause<CountersunkPullThrough> c{
        {.id = "CS-2",
         .title = "Countersunk head pulled through its part",
         .formula = "Rn = 1.5 dhole (t - h/2) Fu",
         .unit = "N",
         .rule = "allowable_strength",
         .source = "PO-1 on the hole instead of the head, with the thickness of CS-1",
         .edition = "2016",
         .label = base::Label::judgement,
         .range = "parts at least as thick as the countersink is deep; no standard has a rule: the pull-over rule with the hole for the head's diameter, on the safe side",
         .not_for = "dimpled sheets, a sheet thinner than the head, repeated load"},
        {{&CountersunkPullThrough::t_mm, {.name = "t", .unit = "mm", .meaning = "thickness of the part under the head", .lower = 0.5, .upper = 25}},
         {&CountersunkPullThrough::h_mm, {.name = "h", .unit = "mm", .meaning = "depth of the countersink", .lower = 0, .upper = 12}},
         {&CountersunkPullThrough::dhole_mm, {.name = "dhole", .unit = "mm", .meaning = "hole below the countersink", .lower = 2, .upper = 30}},
         {&CountersunkPullThrough::Fu_MPa, {.name = "Fu", .unit = "MPa", .meaning = "tensile strength of the part", .lower = 80, .upper = 700}}},
        &formula};
    return c;
}

} // namespace thinskin::strength
