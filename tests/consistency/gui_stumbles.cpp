// What a reader stumbled on who saw the window for the first time, each with the date it was mended.
#include "presentation/compare.h"
#include "presentation/inputs.h"
#include "presentation/margins.h"
#include "support/gui.h"

using namespace thinskin;
using namespace thinskin::gui;
using tests::take;

TEST_SUITE_BEGIN("consistency");

// Fixed 2026-11-29: the third angle of this case lay in the latch's zone.
TEST_CASE("a further angle is clear of latch, hinges and other parts, or is refused in words")
{
    Document d(tests::edited_text("condenser_door_screws"), "screws.yaml");
    std::size_t added = 0;
    for (FieldEdit e = add_angle(*d.current()); e.ok(); e = add_angle(*d.current())) {
        take(d, e);
        ++added;
        const layout::Result r = layout::resolve(*d.current());
        const std::string first = r.diagnostics.empty() ? "" : base::format(r.diagnostics.front());
        CAPTURE(added);
        INFO(first);
        REQUIRE(r.layout);
        REQUIRE(added < 20);
    }
    CHECK(added >= 1);
    CHECK(add_angle(*d.current()).why.find("No free height") != std::string::npos);
    for (int k = 0; k < 3; ++k) {
        const FieldEdit e = add_fastener(*d.current(), "left");
        if (k == 0) CHECK(e.ok());
        if (!e.ok()) CHECK(e.why.find("No free place") != std::string::npos);
        else take(d, e);
        CHECK(layout::resolve(*d.current()).layout);
    }
}

TEST_CASE("with one angle behind the top bolts the advice stays with the foot in bare skin")
{
    Document d(tests::edited_text("condenser_door_screws"), "screws.yaml");
    take(d, add_angle(*d.current()));
    pipeline::Workspace w;
    const pipeline::Analysis a = pipeline::analyse(*d.current(), w, pipeline::Depth::margins);
    REQUIRE(a.outcome);
    const auto skin = std::find_if(a.outcome->checks.begin(), a.outcome->checks.end(), [](const results::Check& c) { return c.id == "skin stress"; });
    REQUIRE(skin != a.outcome->checks.end());
    CHECK(skin->help.find("an angle behind L1 as well") != std::string::npos);
    CHECK(skin->help_at == std::vector<std::string>{"reinforcement.angles"});
}

TEST_CASE("what is not worked out to the end is never a pass, and a fail stays one")
{
    results::Outcome o = tests::check_case("condenser_door_made_good");
    o.verdict = base::Verdict::pass;
    REQUIRE(verdict_lines(o).mark == Mark::pass);
    const VerdictLines so_far = verdict_so_far(o);
    CHECK(so_far.mark == Mark::not_covered);
    CHECK(so_far.word == "not decided yet");
    CHECK(so_far.headline.find("which is no pass") != std::string::npos);
    CHECK(so_far.advice.empty());
    std::vector<GroupRow> groups = group_rows(o);
    REQUIRE(std::any_of(groups.begin(), groups.end(), [](const GroupRow& g) { return g.mark == Mark::pass; }));
    take_so_far(groups);
    for (const GroupRow& g : groups) CHECK((g.mark != Mark::pass && g.status != "pass"));
    o.verdict = base::Verdict::fail;
    CHECK(verdict_so_far(o).mark == Mark::fail);
    CHECK(verdict_so_far(o).headline == o.headline);
}

TEST_CASE("what is not counted in the verdict says so, calmly, with its reason and a way to it")
{
    results::Outcome o = tests::check_case("condenser_door");
    o.verdict = base::Verdict::pass;
    o.aside = " But it shakes: wheel hop, see Natural frequencies.";
    o.headline = "PASSES: the tightest is x." + o.aside;
    results::Check shakes;
    shakes.id = "vibration/wheel hop";
    shakes.title = "wheel hop";
    shakes.group = "vibration";
    shakes.part = "condenser unit";
    shakes.required = false;
    shakes.status = base::Status::fail;
    shakes.demand = 2;
    shakes.capacity = 1;
    o.checks.push_back(shakes);
    const VerdictLines v = verdict_lines(o);
    CHECK(v.headline == "PASSES: the tightest is x.");
    CHECK(v.aside == "Not counted: it shakes with wheel hop");
    const auto card = margin_card(o, v.aside_check, v.aside_case);
    REQUIRE(card);
    CHECK(card->row.mark == Mark::aside);
    CHECK(card->row.status == "not met, not counted");
    CHECK(card->not_counted.starts_with("Not counted in the verdict."));
    CHECK(margin_rows(o).back().counted == false);
    CHECK(margin_card(o, o.checks.front().id, o.checks.front().load_case)->not_counted.empty());
}

TEST_CASE("what the changes are changes since is said in words")
{
    CHECK(compared_words(false, false, {"Move L2", "Move L2"}) == "change by the last step: Move L2");
    CHECK(compared_words(false, true, {"Move L2"}) == "change by the last step: Move L2 (linear, both)");
    CHECK(compared_words(false, false, {"Add angle 1", "Add angle 2"}) == "changes by the last 2 steps");
    CHECK(compared_words(true, false, {"Move L2"}) == "changes since the accepted state");
}

TEST_CASE("words of the file are said as a fitter says them, with the file's own beside them")
{
    CHECK(plain_words("quasi_static") == "factors of the road (quasi_static)");
    CHECK(plain_words("same_as_left") == "same as left");
    CHECK(plain_words("unsealed") == "unsealed");
    CHECK(plain_words("M8 through bolt") == "M8 through bolt");
}

TEST_SUITE_END();
