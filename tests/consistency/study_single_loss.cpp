#include "studies/single_loss.h"
#include "report/json.h"
#include "report/text.h"
#include "support/cases.h"
#include "support/near.h"

#include <algorithm>
#include <cmath>
#include <map>

// One thing lost at a time: removing never helps, the loss is named, the same bytes run to run.
using namespace thinskin;
using base::Verdict;
using results::Loss;

namespace {

struct Ran { model::Case source; results::Outcome as_is; };

Ran run(const std::string& name, const tests::Edits& edits = {})
{
    Ran r{tests::read_case(tests::edited_text(name, edits)), {}};
    pipeline::Workspace w;
    const pipeline::Analysis a = pipeline::analyse(r.source, w);
    REQUIRE(a.outcome);
    r.as_is = *a.outcome;
    studies::add_single_loss(r.source, w, r.as_is);
    REQUIRE(r.as_is.single_loss);
    return r;
}

/// Worked out once for all tests of this file.
const Ran& made_good()
{
    static const Ran r = run("condenser_door_made_good");
    return r;
}

const Loss* loss(const results::Outcome& o, const std::string& what)
{
    for (const Loss& l : o.single_loss->losses)
        if (l.what == what) return &l;
    return nullptr;
}

results::Outcome outcome_of(const model::Case& c)
{
    pipeline::Workspace w;
    const pipeline::Analysis a = pipeline::analyse(c, w);
    REQUIRE(a.outcome);
    return *a.outcome;
}

} // namespace

TEST_SUITE_BEGIN("single loss");

TEST_CASE("a case written out without copies and mirrors has the same margins, check by check")
{
    const auto& r = made_good();
    const results::Outcome out = outcome_of(layout::written_out(r.source));
    REQUIRE(out.checks.size() == r.as_is.checks.size());
    for (std::size_t i = 0; i < out.checks.size(); ++i) {
        CHECK(out.checks[i].id == r.as_is.checks[i].id);
        CHECK(out.checks[i].load_case == r.as_is.checks[i].load_case);
        CHECK(out.checks[i].demand == r.as_is.checks[i].demand);
        CHECK(out.checks[i].capacity == r.as_is.checks[i].capacity);
    }
}

TEST_CASE("every fastener of every group is lost once: two in each bracket, two in each of four angle ends, four mounts, the skin")
{
    std::map<std::string, int> kinds;
    for (const Loss& l : made_good().as_is.single_loss->losses) ++kinds[l.kind];
    CHECK(kinds["fastener"] == 2 * 2 + 4 * 2);
    CHECK(kinds["mount"] == 4);
    CHECK(kinds["skin"] == 1);
    for (const char* what : {"fastener L1 of left", "fastener L2 of left", "fastener R1 of right", "fastener R2 of right", "fastener lower rail left 1", "fastener upper rail right 2"}) {
        CAPTURE(what);
        CHECK(loss(made_good().as_is, what));
    }
}

TEST_CASE("losing anything never raises the least margin, nor makes the verdict better")
{
    const results::Outcome& o = made_good().as_is;
    for (const Loss& l : o.single_loss->losses) {
        CAPTURE(l.what);
        REQUIRE(l.least_margin);
        CHECK(*l.least_margin <= o.governing->margin() + 1e-9);
        CHECK(l.verdict >= o.verdict);
    }
}

TEST_CASE("the loss that turns the job to fail is named in the first line, and the verdict over all losses is fail")
{
    const results::Outcome& o = made_good().as_is;
    REQUIRE(o.verdict == Verdict::pass);
    const Loss& worst = o.single_loss->losses[o.single_loss->worst];
    CHECK(worst.verdict == Verdict::fail);
    CHECK(o.single_loss->verdict == Verdict::fail);
    const std::string text = report::check_text(o), first = text.substr(0, text.find('\n'));
    CAPTURE(first);
    CHECK(first.rfind("PASSES: ", 0) == 0);
    CHECK(first.find("FAILS without " + worst.what) != std::string::npos);
    for (const Loss& l : o.single_loss->losses)
        if (l.verdict == Verdict::fail) CHECK(*worst.least_margin <= *l.least_margin);
}

TEST_CASE("a loss is the case without it: the top left bolt taken out of the file gives the same margins")
{
    // The file's right bracket mirrors the left, so it is written out here by hand of the test: both copies of the name stand apart.
    model::Case c = layout::written_out(made_good().source);
    c.brackets[0].fasteners.pop_back(); // L2
    const results::Outcome o = outcome_of(c);
    const Loss* l = loss(made_good().as_is, "fastener L2 of left");
    REQUIRE(l);
    CHECK(l->verdict == o.verdict);
    CHECK(*l->least_margin == o.governing->margin());
    REQUIRE(l->hit);
    CHECK(l->hit->after < *l->hit->before);
}

TEST_CASE("by hand: the three bolts that are left carry the whole weight of item and brackets, 9.80665 m/s2 times their mass")
{
    // Vertical equilibrium, determinate whatever is stiff: the skin takes no vertical force but through a bolt.
    model::Case c = layout::written_out(made_good().source);
    c.brackets[0].fasteners.pop_back(); // L2
    const results::Outcome o = outcome_of(c);
    const double hung_kg = 36 * 1.05 + o.weight.brackets_kg; // the item with its tolerance
    double sum = 0;
    for (const char* name : {"L1", "R1", "R2"}) sum += tests::fastener(o, name, "parked").shear_y_N;
    tests::check_near_rel(std::abs(sum), hung_kg * 9.80665, 1e-6);
}

TEST_CASE("the only fastener of a bracket: no figure and no pass, it lets go")
{
    model::Case c = layout::written_out(made_good().source);
    c.brackets[0].fasteners.pop_back();
    const auto losses = studies::single_losses(c, 0.1);
    const auto alone = std::find_if(losses.begin(), losses.end(), [](const studies::LossEdit& e) { return e.what == "fastener L1 of left"; });
    REQUIRE(alone != losses.end());
    CHECK(alone->alone == "it is the only fastener of left");
}

TEST_CASE("rust: none asked, none taken; more than the sheet is nothing left; a thinner skin by what is asked")
{
    const model::Case& c = made_good().source;
    const auto has_skin = [](const std::vector<studies::LossEdit>& all) { return std::any_of(all.begin(), all.end(), [](const auto& e) { return e.kind == "skin"; }); };
    CHECK_FALSE(has_skin(studies::single_losses(c, 0)));
    CHECK_FALSE(has_skin(studies::single_losses(c, std::nan(""))));
    CHECK_FALSE(studies::single_losses(c, 0.9).back().alone.empty());
    tests::check_near_rel(studies::single_losses(c, 0.1).back().edited.panel.skin.thickness.value, c.panel.skin.thickness.value - 0.1, 1e-12);
}

TEST_CASE("a strap lost and a strap slack are one row; a slack strap pulls nothing")
{
    const model::Case c = tests::read_case(tests::edited_text("ladder_rack"));
    const auto losses = studies::single_losses(c, 0.1);
    const auto slack = std::find_if(losses.begin(), losses.end(), [](const auto& e) { return e.kind == "strap"; });
    REQUIRE(slack != losses.end());
    CHECK(slack->what == "left strap slack, or without LS2, or without LS1");
    const results::Outcome o = outcome_of(slack->edited);
    REQUIRE(o.verdict == Verdict::pass);
    for (const results::MemberForce& m : o.members)
        if (m.name == "left strap") CHECK(m.axial_N == 0);
}

TEST_CASE("the same bytes from run to run; a study that was not run leaves an empty list and a sentence")
{
    CHECK(report::check_json(run("plain_panel").as_is) == report::check_json(run("plain_panel").as_is));
    const std::string none = report::check_json(outcome_of(tests::read_case(tests::edited_text("plain_panel"))));
    CHECK(none.find("\"single_loss\": []") != std::string::npos);
    CHECK(none.find("\"single_loss_verdict\": null") != std::string::npos);
}

TEST_CASE("stopped before the end: the outcome stays as it was")
{
    const model::Case c = tests::read_case(tests::edited_text("plain_panel"));
    pipeline::Workspace w;
    results::Outcome o = outcome_of(c);
    std::stop_source stop;
    stop.request_stop();
    studies::add_single_loss(c, w, o, {}, stop.get_token());
    CHECK_FALSE(o.single_loss);
}

TEST_SUITE_END();
