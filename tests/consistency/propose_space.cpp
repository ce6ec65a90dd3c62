#include "search/apply.h"
#include "search/prepare.h"
#include "search/search.h"
#include "search/space.h"

#include "support/cases.h"
#include "support/propose.h"

#include <algorithm>

// What else a scheme may be made of: fasteners that the case brings along, straps, bolts that hit ribs. Nothing is solved here but once.
using namespace thinskin;
using namespace thinskin::search;

namespace {

model::Case with_wishes(const std::string& name, const tests::Edits& edits = {})
{
    model::Case c = tests::read_case(tests::edited_text(name, edits));
    if (!c.propose) c.propose = default_wishes();
    return c;
}

using tests::prepared;

bool standing(const Candidate& k) { return k.state != State::impossible; }

} // namespace

TEST_SUITE_BEGIN("propose: space");

TEST_CASE("screws of the case are offered under their own name and stay as the case has them")
{
    model::Case c = with_wishes("condenser_door_screws");
    const std::vector<Choices> all = space_of(c).schemes;
    const auto own = [](const Choices& k) { return k.bolt.own == "4.8 screw"; };
    const auto first = std::find_if(all.begin(), all.end(), own);
    REQUIRE(first != all.end());
    const model::Case edited = applied(layout::written_out(c), *first);
    CHECK(edited.fastener_kinds.size() >= c.fastener_kinds.size());
    const layout::Result r = layout::resolve(edited);
    REQUIRE(r.layout);
    for (const layout::Stack* s : r.layout->outer_stacks()) {
        CHECK(s->hardware.type == layout::Hardware::Type::screw);
        CHECK(s->hardware.own_shear == 5200); // N, as the case says
    }
    CHECK(words(*first).find("4.8 screw") != std::string::npos);
    c.propose->not_use = {"screws"};
    const Space without = space_of(c);
    CHECK(without.cautions.empty());
    CHECK(std::none_of(without.schemes.begin(), without.schemes.end(), own));
}

TEST_CASE("rivets of the case go with everything behind the skin, inserts with nothing behind it alone")
{
    model::Case c = with_wishes("condenser_door");
    for (const char* type : {"rivet", "insert"}) {
        c.fastener_kinds.emplace_back().name = std::string("own ") + type;
        c.fastener_kinds.back().type = type;
        c.fastener_kinds.back().size = std::string(type) == "rivet" ? "4.8 mm" : "M6";
    }
    int rivets_behind = 0, inserts = 0;
    for (const Choices& k : space_of(c).schemes) {
        if (k.bolt.own == "own rivet" && k.behind == Behind::two_angles) ++rivets_behind;
        if (k.bolt.own != "own insert") continue;
        ++inserts;
        CHECK(k.behind == Behind::nothing);
    }
    CHECK(rivets_behind > 0);
    CHECK(inserts > 0);
}

TEST_CASE("straps go from each arm to the frame above, count their holes and mass, and never run through the item")
{
    const model::Case c = with_wishes("ladder_rack", {{"size: [900 mm, 190 mm, 240 mm]", "size: [900 mm, 190 mm, 130 mm]"}}); // clear of the straps
    const Searched s = prepared(c);
    const Candidate* strapped = nullptr;
    const Candidate* bare = nullptr;
    for (const Candidate& k : s.candidates)
        if (k.choices.straps && standing(k)) {
            strapped = &k;
            break;
        }
    REQUIRE(strapped);
    for (const Candidate& k : s.candidates) {
        Choices same = k.choices;
        same.straps = true;
        if (!k.choices.straps && standing(k) && words(same) == words(strapped->choices)) bare = &k;
    }
    REQUIRE(bare);
    CHECK(strapped->worth.holes == bare->worth.holes + 2); // one in the frame for each of two straps
    CHECK(strapped->mass_kg > bare->mass_kg);
    CHECK(strapped->points > bare->points);
    const model::Case edited = applied(s.written, strapped->choices);
    const layout::Result r = layout::resolve(edited);
    REQUIRE(r.layout);
    REQUIRE(r.layout->straps.size() == 2);
    for (const layout::Strap& t : r.layout->straps) CHECK(t.acts());
    const Searched demo = prepared(with_wishes("condenser_door")); // there the unit stands between arm and frame
    int through = 0;
    for (const Candidate& k : demo.candidates) {
        if (!k.choices.straps) continue;
        CHECK(!standing(k));
        through += k.why.find("would run through the item") != std::string::npos ? 1 : 0;
    }
    CHECK(through > 0);
}

TEST_CASE("where ribs must be hit the brackets move to the nearest upright rib, and what misses them is no scheme")
{
    const tests::Edits ribbed{{"  ribs: []\n", "  ribs: [{name: rib 1, from: [220 mm, 0 mm], to: [220 mm, 1520 mm], section: hat 40x25x40x1.0, material: DC04, seen: tapped}, {name: rib 2, from: [480 mm, 0 mm], to: [480 mm, 1520 mm], section: hat 40x25x40x1.0, material: DC04, seen: tapped}]\n"}};
    model::Case c = with_wishes("condenser_door_bare", ribbed);
    c.propose->not_use = {"plates", "angles"};
    c.propose->on_ribs = true;
    const Searched s = prepared(c);
    int left = 0;
    for (const Candidate& k : s.candidates) {
        if (!standing(k)) continue;
        ++left;
        const model::Case edited = applied(s.written, k.choices);
        const layout::Result r = layout::resolve(edited);
        REQUIRE(r.layout);
        for (const layout::Stack* f : r.layout->outer_stacks()) CHECK(std::any_of(f->plies.begin(), f->plies.end(), [](const layout::Ply& p) { return p.role == layout::Ply::Role::rib; }));
        CHECK(r.layout->brackets[0].x == 180); // the middle of the near foot of the hat at 220; it stood at 150, beside it
    }
    CHECK(left > 0);
    c.propose->sideways = mm(1); // no rib within reach
    for (const Candidate& k : prepared(c).candidates) CHECK(!standing(k));
}

TEST_SUITE_END();
