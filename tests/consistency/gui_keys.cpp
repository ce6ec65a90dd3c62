// Keys that come and go through the window, the field that an advice leads to, and a proposed scheme taken into the file.
#include "casefile/writer.h"
#include "presentation/keys.h"
#include "presentation/proposals.h"
#include "search/apply.h"
#include "support/gui.h"
#include "worker/study.h"

#include <algorithm>
#include <set>

using namespace thinskin;
using namespace thinskin::gui;
using tests::take;

namespace {

const Section& section(const std::vector<InputGroup>& groups, const std::string& path)
{
    for (const InputGroup& g : groups)
        for (const Section& s : g.sections)
            if (s.path == path) return s;
    FAIL("no section " << path);
    return groups.front().sections.front();
}

bool has(const std::vector<std::string>& all, const std::string& one) { return std::find(all.begin(), all.end(), one) != all.end(); }

std::vector<std::string> comments_of(const std::string& text)
{
    std::vector<std::string> out;
    std::istringstream in(text);
    for (std::string line; std::getline(in, line);)
        if (const auto at = line.find('#'); at != std::string::npos) out.push_back(line.substr(at));
    return out;
}

} // namespace

TEST_SUITE_BEGIN("consistency");

TEST_CASE("a fastener kind gets another name: all who use it follow in one step, its comments stay, undo brings the bytes back")
{
    Document d = tests::demo_document();
    const std::string before = d.text();
    const std::string name = "M8, class 8.8: \"long\"";
    take(d, rename_part(*d.current(), "fastener_kinds[M8 through bolt]", name));
    take(d, rename_part(*d.current(), "fastener_kinds[M8 bolt]", "mount bolt"));
    const model::Case& c = *d.current();
    CHECK(std::none_of(c.fastener_kinds.begin(), c.fastener_kinds.end(), [](const auto& k) { return k.name == "M8 bolt" || k.name == "M8 through bolt"; }));
    for (const model::Fastener& f : c.brackets[0].fasteners) CHECK(f.use == name);
    for (const model::Mount& m : c.brackets[0].mounts) CHECK(m.use == "mount bolt");
    CHECK(comments_of(d.text()) == comments_of(before));
    CHECK_FALSE(rename_part(c, "fastener_kinds[M6 bolt]", "left").ok());
    CHECK_FALSE(rename_part(c, "fastener_kinds[M6 bolt]", "").ok());
    REQUIRE(d.undo());
    REQUIRE(d.undo());
    CHECK(d.text() == before);
}

TEST_CASE("optional keys: everything that a section offers can be filled in or is refused in words, and what was added can be left out again")
{
    Document d = tests::demo_document();
    const std::string before = d.text();
    const NewKey mass = new_key(*d.current(), "vehicle", UnitSystem::metric);
    CHECK_FALSE(mass.fields.empty());
    CHECK_FALSE(add_key(mass, {}).ok()); // nothing that nobody measured is filled in
    const NewKey notes = new_key(*d.current(), "job.notes", UnitSystem::metric);
    take(d, add_key(notes, {"spare wheel stays below"}));
    CHECK(d.current()->job.notes == "spare wheel stays below");
    CHECK(has(section(input_groups(d, UnitSystem::metric), "job").can_remove, "job.notes"));
    take(d, remove_key(*d.current(), "job.notes"));
    CHECK(d.current()->job.notes.empty());
    const NewKey rib = new_key(*d.current(), "panel.ribs", UnitSystem::us);
    REQUIRE(rib.entry);
    std::vector<std::string> typed;
    for (const Field& f : rib.fields) typed.push_back(f.path == "panel.ribs.name" ? "rib 1" : f.path == "panel.ribs.from" ? "100 mm, 1200 mm" : f.path == "panel.ribs.to" ? "640 mm, 1200 mm" : f.path == "panel.ribs.section" ? "hat 40x25x1.0" : "DC01");
    take(d, add_key(rib, typed));
    REQUIRE(d.current()->panel.ribs.size() == 1);
    CHECK(d.current()->panel.ribs[0].from.x.text == "100 mm");
    typed[1] = "somewhere";
    CHECK_FALSE(add_key(rib, typed).ok());
    while (d.undo()) {}
    CHECK(d.text() == before);
    CHECK_FALSE(remove_key(*d.current(), "panel.width").ok());
}

TEST_CASE("optional keys: each that a shipped case can still get has a form, each that it can do without is optional")
{
    for (const std::string name : {"condenser_door", "bottle_locker_wall", "ladder_rack"}) {
        const Document d(tests::edited_text(name), name);
        std::set<std::string> offered;
        for (const InputGroup& g : input_groups(d, UnitSystem::metric)) {
            std::vector<std::string> all = g.can_add;
            for (const Section& s : g.sections) {
                all.insert(all.end(), s.can_add.begin(), s.can_add.end());
                for (const std::string& path : s.can_remove) CHECK(remove_key(*d.current(), path).ok());
            }
            for (const std::string& path : all) {
                CAPTURE(path);
                CHECK(offered.insert(path).second);
                CHECK_FALSE(new_key(*d.current(), path, UnitSystem::metric).fields.empty());
                CHECK_FALSE(key_words("", path).empty());
            }
        }
    }
}

TEST_CASE("what would help: each place that an advice names is a field, a form or a button of the window")
{
    for (const std::string name : {"condenser_door", "condenser_door_screws"}) {
        const Document d(tests::edited_text(name), name);
        const auto groups = input_groups(d, UnitSystem::metric);
        const results::Outcome& o = tests::check_case(name);
        CHECK_FALSE(o.advice_at.empty());
        std::size_t with = 0;
        for (const results::Check& c : o.checks) {
            CAPTURE(c.id);
            CAPTURE(c.help);
            with += c.help_at.empty() ? 0 : 1;
            for (const std::string& key : c.help_at) {
                CAPTURE(key);
                CHECK(spot_of(groups, *d.current(), key).found());
            }
        }
        CHECK(with > o.checks.size() * 8 / 10);
    }
}

TEST_CASE("what would help: the places of the demo's advice")
{
    const Document d = tests::demo_document();
    const auto groups = input_groups(d, UnitSystem::metric);
    const model::Case& c = *d.current();
    const auto field = [&](const std::string& key) { return spot_of(groups, c, key).field; };
    CHECK(field("reinforcement.angles[upper rail].section") == "reinforcement.angles[0].section"); // a copy takes it from there
    CHECK(field("brackets[right].leg.gauge") == "brackets[0].leg.gauge");                          // a mirror too
    CHECK(field("brackets[left].fasteners[L2].at") == "brackets[0].fasteners[1].at");
    CHECK(field("fastener_kinds[M8 through bolt].head_washer") == "fastener_kinds[M8 through bolt].head_washer");
    CHECK(field("brackets[right].fasteners[R2].use") == "brackets[0].fasteners[1].use"); // R2 mirrors L2
    CHECK(field("door.slam.stop") == "door.slam.stop");
    CHECK(field("panel.frame.inner.thickness") == "panel.frame.inner.thickness");
    CHECK(spot_of(groups, c, "fastener_kinds[M8 bolt].head_washer").add == "fastener_kinds[M8 bolt].head_washer"); // not given yet
    CHECK(spot_of(groups, c, "reinforcement.angles").add == "reinforcement.angles");
    CHECK(spot_of(groups, c, "reinforcement.backing_plates").add == "reinforcement.backing_plates");
    CHECK_FALSE(spot_of(groups, c, "no such key").found());
    const results::Outcome& o = tests::check_case("condenser_door");
    REQUIRE(o.governing);
    CHECK(o.advice_at == std::vector<std::string>{"reinforcement.angles[lower rail].section", "reinforcement.angles[lower rail].gauge", "door.slam.stop"});
}

TEST_CASE("a scheme is taken in one step: the file reads as the scheme, comments elsewhere stay, undo brings the bytes back")
{
    Document d(tests::edited_text("condenser_door_screws"), "screws.yaml");
    const std::string before = d.text();
    search::Choices k;
    k.behind = search::Behind::two_angles;
    k.section = "angle 40x40x4";
    k.ends = {2, "M6"};
    k.bolt = {"M8", "8.8", "", 8, 24, 2};
    const model::Case scheme = search::applied(layout::written_out(*d.current()), k);
    SchemeRow row;
    row.number = 3;
    take(d, take_scheme(*d.current(), scheme, row));
    CHECK(d.undo_name() == "Scheme 3");
    CHECK(casefile::write(*d.current()) == casefile::write(scheme));
    for (const std::string key : {"brackets", "reinforcement"}) CHECK(casefile::block_text(*d.current(), key) == casefile::block_text(scheme, key));
    CHECK(comments_of(d.text()).size() + 3 >= comments_of(before).size());
    for (const std::string line : {"panel:", "door:"}) CHECK(d.text().find(before.substr(before.find(line), 120)) != std::string::npos);
    CHECK(take_scheme(*d.current(), scheme, row).edit.changes.empty());
    REQUIRE(d.undo());
    CHECK(d.text() == before);
}

TEST_CASE("study: proposals and the spread on a thread of their own, told step by step; stopped, what there is so far comes")
{
    const auto c = std::make_shared<const model::Case>(tests::read_case(tests::edited_text("condenser_door_screws", {{"skin: automatic", "skin: linear"}})));
    Study study;
    study.spread(c, -0.9, 2);
    CHECK(study.progress().kind == StudyKind::spread);
    REQUIRE(study.wait_idle(120));
    const auto spread = study.poll();
    REQUIRE(spread);
    REQUIRE(spread->spread);
    CHECK(spread->spread->samples == 2);
    CHECK_FALSE(spread_shown(*spread->spread).headline.empty());
    CHECK(study.poll() == nullptr);
    study.propose(c, false, 6, 1);
    study.stop();
    REQUIRE(study.wait_idle(120));
    const auto found = study.poll();
    if (found) CHECK((found->stopped || !found->why.empty() || found->proposed));
    study.propose(c, false, 6, 1);
    study.drop();
    REQUIRE(study.wait_idle(120));
    CHECK(study.poll() == nullptr);
    CHECK(study.progress().kind == StudyKind::none);
}

TEST_CASE("proposal in words: masses up, margins down, the closest one without a number")
{
    results::Proposal p;
    results::ProposedScheme s;
    s.number = 1;
    s.words = "one angle";
    s.holes = 8;
    s.skin_holes = 4;
    s.added_kg = 3.01;
    s.margin = 0.129;
    s.verdict = base::Verdict::pass;
    s.tight = {{"lying leg", "rail", "slam inward", 0.129}, {"bearing", "left", "parked", 0.5}};
    s.robust = results::ProposedScheme::Robust{{-0.01, base::Verdict::fail}, "skin: thinner", {-0.05, base::Verdict::fail}, {}};
    p.front = {s};
    ProposalShown shown = proposal_shown(p, UnitSystem::metric);
    REQUIRE(shown.schemes.size() == 1);
    CHECK(shown.schemes[0].margin == "+0.12");
    CHECK(shown.schemes[0].figures.find("3.1 kg") != std::string::npos);
    CHECK(shown.schemes[0].governing == "lying leg (slam inward)");
    CHECK(shown.schemes[0].robust.find("-0.01") != std::string::npos);
    CHECK(proposal_shown(p, UnitSystem::us).schemes[0].figures.find("6.7 lb") != std::string::npos); // 3.01 kg / 0.45359237 = 6.64 lb
    p.closest = s;
    p.front.clear();
    p.relaxations = {{"a lighter item", base::Verdict::pass, 0.1, true}};
    shown = proposal_shown(p, UnitSystem::metric);
    REQUIRE(shown.schemes.size() == 1);
    CHECK(shown.schemes[0].number == 0);
    CHECK_FALSE(shown.holds);
    CHECK(shown.changes.front() == "a lighter item: enough, margin +0.10");
    CHECK(progress_words("schemes", 3, 10, 12.2) == "schemes: 3 of 10, about 13 s left");
}

TEST_SUITE_END();
