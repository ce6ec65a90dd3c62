// The skin's stress beside what presses on it: settled where it decides, marked where it is not (ID-16).
#include "actions/load_cases.h"
#include "idealise/local_stress.h"
#include "support/cases.h"
#include "support/near.h"

#include <algorithm>

using namespace thinskin;
using tests::check_case;
using tests::check_near_rel;

namespace {

/// The slammed door on screws, by large deflection: legs dig into bare skin.
double slammed(double spacing, double local_grid)
{
    const model::Case c = tests::read_case(tests::edited_text("condenser_door_screws"));
    const layout::Result r = layout::resolve(c);
    REQUIRE(r.layout);
    std::vector<results::LoadCase> cases = actions::load_cases(*r.layout).cases;
    std::erase_if(cases, [](const results::LoadCase& l) { return l.name != actions::name_slam_inward; });
    idealise::Options options;
    options.grid_spacing = spacing;
    options.local_grid = local_grid;
    idealise::SkinCache skin;
    fem::ColumnCache columns;
    const auto s = idealise::build(*r.layout, options, skin);
    idealise::Solution sol = idealise::solve(*s, cases, columns, {});
    const auto large = fem::make_large(skin.skin);
    idealise::solve_large_cases(*s, sol, {actions::name_slam_inward}, columns, *large, {});
    idealise::Fields f = idealise::fields_with_large(*s, sol, idealise::fields(*s, sol, *skin.buckling, 84, {}), *large, {});
    idealise::settle_stress(*s, sol, *large, 84, f.skin, {});
    REQUIRE(f.skin.size() == 1);
    REQUIRE(f.skin[0].stress_settled);
    return f.skin[0].max_von_mises_MPa;
}

const results::SkinState& worst(const results::Outcome& o)
{
    return *std::max_element(o.skin.begin(), o.skin.end(), [](const auto& a, const auto& b) { return a.max_von_mises_MPa < b.max_von_mises_MPa; });
}

} // namespace

TEST_SUITE_BEGIN("behaviour: stress beside footprints");

TEST_CASE("Study: a finer grid of the panel or beside the footprints moves the stress of a skin pulled hard by less than 2 %")
{
    const double shown = slammed(30, 2.5);
    check_near_rel(slammed(20, 2.5), shown, 0.02);
    check_near_rel(slammed(30, 1.25), shown, 0.02);
}

TEST_CASE("a skin used by less than half is read from the panel's grid; one used by more is settled, and says where")
{
    const results::Outcome& calm = check_case("ladder_rack", {}, pipeline::Depth::settled);
    CHECK(std::none_of(calm.skin.begin(), calm.skin.end(), [](const auto& k) { return k.stress_settled; }));
    CHECK(tests::row(calm, "skin stress")->status == base::Status::judgement);
    const results::Outcome& hard = check_case("condenser_door_screws", {}, pipeline::Depth::settled);
    CHECK(worst(hard).stress_settled);
    CHECK(worst(hard).stress_at_mm[0] > 0);
    const double allowable = tests::row(hard, "skin stress")->capacity;
    for (const results::SkinState& k : hard.skin) { // none that is left could be more than what is settled
        CAPTURE(k.load_case);
        CHECK((k.stress_settled || 2 * k.max_von_mises_MPa <= std::max(allowable, worst(hard).max_von_mises_MPa)));
    }
}

TEST_CASE("between half and all of what the sheet bears: open as the panel's grid shows it, a verdict once settled")
{
    // The plain panel's pull, raised until its skin is used by more than half.
    const tests::Edits more{{"[0 N, 0 N, 5 N]", "[0 N, 0 N, 20 N]"}};
    const results::Outcome &shown = check_case("plain_panel", more), &settled = check_case("plain_panel", more, pipeline::Depth::settled);
    CHECK(tests::row(shown, "skin stress")->status == base::Status::not_covered);
    CHECK(tests::row(settled, "skin stress")->status == base::Status::judgement);
    CHECK(tests::row(settled, "skin stress")->utilisation() > 0.5);
    CHECK(tests::row(settled, "skin stress")->utilisation() < 1);
}

TEST_SUITE_END();
