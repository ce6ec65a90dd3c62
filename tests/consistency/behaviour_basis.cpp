// The road's basis and the solver's own frequency: pulses and random vibration need to know how the item swings where it hangs.
#include "actions/load_cases.h"
#include "idealise/vibration.h"
#include "support/cases.h"
#include "support/near.h"

#include <algorithm>

using namespace thinskin;
using tests::check_near_rel;

namespace {

const tests::Edits on_class_c{{"basis: quasi_static", "basis: random_vibration\n  roughness: C\n  speed: 60 km/h"}};

tests::Edits with(tests::Edits edits, const std::pair<std::string, std::string>& more)
{
    edits.push_back(more);
    return edits;
}

} // namespace

TEST_CASE("a basis without a measured frequency takes the solver's, the same that --detail lists, and runs every driving case")
{
    const tests::Analysed& a = tests::analysed("condenser_door_made_good", on_class_c, pipeline::Depth::full);
    const results::Outcome& o = *a.analysis.outcome;
    const auto Hz = idealise::lowest_hung_Hz(o.vibration);
    REQUIRE(Hz);
    const auto wanted = actions::dynamic_factor(*a.analysis.layout, *Hz);
    check_near_rel(o.dynamic_factor, wanted.value, 1e-12);
    CHECK(o.dynamic_derivation == wanted.derivation);
    CHECK(o.load_cases.size() == tests::check_case("condenser_door_made_good").load_cases.size());
}

TEST_CASE("a measured frequency goes before the solver's, and a stiffer mount is shaken less")
{
    const results::Outcome& by_solver = tests::check_case("condenser_door_made_good", on_class_c);
    const results::Outcome& measured = tests::check_case("condenser_door_made_good", with(on_class_c, {"\nitem:\n", "\nitem:\n  natural_frequency: 30 Hz\n"}));
    CHECK(measured.dynamic_derivation.find("30 Hz measured") != std::string::npos);
    CHECK(measured.dynamic_factor < by_solver.dynamic_factor);
}

TEST_CASE("of the two estimates the lower counts: twice the low one, or the upper bound")
{
    results::Vibration v;
    CHECK_FALSE(idealise::lowest_hung_Hz(v));
    v.run = true;
    CHECK_FALSE(idealise::lowest_hung_Hz(v));
    const auto mode = [](double Hz, double hung) { results::NaturalMode m; m.frequency_Hz = Hz; m.hung_share = hung; return m; };
    v.modes = {mode(9, 0.01), mode(20, 0.9)};                  // the first is the skin by itself
    CHECK(*idealise::lowest_hung_Hz(v) == 20);
    v.with_frame = {mode(8, 0.8)};
    CHECK(*idealise::lowest_hung_Hz(v) == 16);
    v.with_frame = {mode(19, 0.8)};
    CHECK(*idealise::lowest_hung_Hz(v) == 20);
}
