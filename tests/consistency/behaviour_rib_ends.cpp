#include "actions/load_cases.h"
#include "idealise/response.h"
#include "support/cases.h"
#include "support/near.h"

#include <cmath>

// Ends of ribs that are fixed to the frame: what they hold, what they hand on, and what keeps them from being checked.
using namespace thinskin;

namespace {

const std::string two = "fasteners: [{name: R1, at: [15 mm, 450 mm], use: M6}, {name: R2, at: [45 mm, 450 mm], use: M6}]";
const std::string mirrored_two = "fasteners: [{name: R3, at: [685 mm, 450 mm], use: M6}, {name: R4, at: [655 mm, 450 mm], use: M6}]";

/// The plain panel with a lying flat across its middle, hinged edges and a frame round it, by linear theory.
tests::Edits with_rib(const std::string& left, const std::string& right, const std::string& start = "0 mm", const std::string& edges = "hinged")
{
    const std::string rib = "  ribs:\n    - {name: rib, from: [" + start + ", 450 mm], to: [700 mm, 450 mm], section: flat 40x5, material: S235, lying: up, seen: seen, ends: {left: " + left + ", right: " + right + "}}\n";
    return {{"edges: {left: held, right: held, bottom: held, top: held}", "edges: {left: " + edges + ", right: " + edges + ", bottom: hinged, top: hinged}\n  frame: {width: 60 mm, depth: 30 mm, inner: {material: DC04, thickness: 1.2 mm, coating: 0.04 mm}}"},
            {"  edges_in_plane: fixed\n", "  edges_in_plane: fixed\n" + rib},
            {"analysis: {skin: automatic}", "fastener_kinds:\n  M6: {type: bolt, size: M6, grade: \"8.8\", head_washer: 18x1.6 mm, nut_washer: 18x1.6 mm}\nanalysis: {skin: linear}"}};
}

const results::Outcome& with(const std::string& left, const std::string& right) { return tests::check_case("plain_panel", with_rib(left, right)); }

const results::EndForce& end(const results::Outcome& o, const std::string& side)
{
    for (const results::EndForce& e : o.member_ends)
        if (e.name == "rib" && e.end == side) return e;
    FAIL("no end " << side);
    return o.member_ends.front();
}

std::string frame(const std::string& fasteners, const std::string& turning = "") { return "{to: frame, " + turning + fasteners + "}"; }

double sag(const results::Outcome& o) { return o.skin.front().max_deflection_mm; }

} // namespace

TEST_SUITE_BEGIN("behaviour: ends of ribs");

TEST_CASE("a rib fixed against turning moves less than one that may turn, a spring lies between, and a very stiff one is as fixed")
{
    const double free = sag(with(frame(two), frame(mirrored_two))), fixed = sag(with(frame(two, "turning: fixed, "), frame(mirrored_two, "turning: fixed, ")));
    const auto sprung = [](const std::string& k) { return sag(with(frame(two, "rotational_stiffness: " + k + " N·m/rad, "), frame(mirrored_two, "rotational_stiffness: " + k + " N·m/rad, "))); };
    CHECK(fixed < 0.6 * free);
    CHECK(sprung("100") < free);
    CHECK(sprung("100") > fixed);
    tests::check_near_rel(sprung("1e9"), fixed, 1e-5);
}

TEST_CASE("both ends of a rib hand the same to the frame, the whole pull together, and the body stays in balance")
{
    for (const std::string turning : {"", "turning: fixed, ", "rotational_stiffness: 100 N·m/rad, "}) {
        const auto& o = with(frame(two, turning), frame(mirrored_two, turning));
        const results::EndForce &l = end(o, "left"), &r = end(o, "right");
        tests::check_near_rel(l.force_N[2], r.force_N[2], 1e-6);
        CHECK(l.force_N[2] > 0);
        CHECK(l.force_N[2] + r.force_N[2] < 1.05 * 5); // the skin's edges beside the rib push back a little
        CHECK((std::abs(l.moment_Nm[1]) > 0) == !turning.empty());
        CHECK(o.balance.worst_relative_error <= 1e-8);
    }
}

TEST_CASE("each fastener of the end takes its part of the pull and of the moment; their rows have numbers")
{
    const auto& o = with(frame(two, "turning: fixed, "), "same_as_left");
    const results::EndForce& e = end(o, "left");
    REQUIRE(e.fasteners.size() == 2);
    const double couple = std::abs(e.moment_Nm[1]) * 1000 / 30; // 30 mm between the two
    tests::check_near_rel(e.fasteners[0].tension_N, e.force_N[2] / 2 + couple, 1e-9);
    tests::check_near_rel(e.fasteners[1].tension_N, e.force_N[2] + couple, 1e-9);
    for (const char* id : {"bolt tension/R1", "bolt tension/R2", "bolt tension/R1 mirrored"}) {
        INFO(id);
        REQUIRE(tests::row(o, id));
        CHECK(tests::row(o, id)->has_numbers());
    }
}

TEST_CASE("what keeps an end from being checked is said with the key that lifts it")
{
    const auto why = [](const std::string& left, const std::string& right = "{to: none}") {
        const results::Check* c = tests::row(with(left, right), "end fixing/rib left");
        REQUIRE(c);
        CHECK(c->status == base::Status::not_covered);
        return c->note;
    };
    CHECK(why("{to: frame}").find("by which fasteners") != std::string::npos);
    CHECK(why(frame("fasteners: [{name: R1, at: [30 mm, 450 mm], use: M6}]", "turning: fixed, ")).find("one behind the other") != std::string::npos);
    CHECK(why(frame("fasteners: [{name: R1, at: [30 mm, 520 mm], use: M6}]")).find("does not go through") != std::string::npos);
    const auto in_layout = [](const tests::Edits& edits, const char* words) {
        for (const results::Check& c : tests::check_case("plain_panel", edits).checks)
            if (c.note.find(words) != std::string::npos) return c.status == base::Status::not_covered;
        return false;
    };
    CHECK(in_layout(with_rib(frame(two), "{to: none}", "20 mm"), "stops 20 mm before the panel's edge"));
    CHECK(in_layout(with_rib(frame(two), "{to: none}", "0 mm", "held"), "would not let it"));
    CHECK_FALSE(in_layout(with_rib(frame(two, "turning: fixed, "), "{to: none}", "0 mm", "held"), "would not let it"));
}

TEST_CASE("with angles beside it a rib and its ends take the worst of the three skin stiffnesses: what each alone would give, the largest")
{
    const std::string ends = "{to: frame, turning: fixed, fasteners: [{at: [350 mm, 15 mm], use: M6 bolt}, {at: [350 mm, 45 mm], use: M6 bolt}]}";
    const std::string top = "{to: frame, turning: fixed, fasteners: [{at: [350 mm, 1505 mm], use: M6 bolt}, {at: [350 mm, 1475 mm], use: M6 bolt}]}";
    const model::Case c = tests::read_case(tests::edited_text("condenser_door_made_good", {{"  ribs: []", "  ribs: [{name: rib, from: [350 mm, 0 mm], to: [350 mm, 1520 mm], section: flat 30x3, material: S235, lying: right, ends: {bottom: " + ends + ", top: " + top + "}}]"}}));
    const layout::Result r = layout::resolve(c);
    REQUIRE(r.layout);
    std::vector<results::LoadCase> cases = actions::load_cases(*r.layout).cases;
    std::erase_if(cases, [](const results::LoadCase& l) { return l.name != "pothole"; });
    idealise::SkinCache skin;
    fem::ColumnCache columns;
    const auto s = idealise::build(*r.layout, {.grid_spacing = 45}, skin);
    idealise::Solution sol = idealise::solve(*s, cases, columns, {});
    REQUIRE(sol.solved);
    const auto pull = [&] { return idealise::rib_ends(*s, sol).front().fasteners.back().tension_N; };
    const auto stress = [&] { return idealise::rib_forces(*s, sol).front().stress_MPa; };
    const double worst = pull(), worst_stress = stress();
    const auto states = sol.runs[0].states;
    double largest = 0, as_it_is = 0, largest_stress = 0;
    for (std::size_t v = 0; v < states.size(); ++v) {
        if (states[v].status != fem::SolveStatus::solved) continue;
        sol.runs[0].states = {states[v], states[v], states[v]};
        if (v == 0) as_it_is = pull();
        largest = std::max(largest, pull());
        largest_stress = std::max(largest_stress, stress());
    }
    tests::check_near_rel(worst, largest, 1e-12);
    tests::check_near_rel(worst_stress, largest_stress, 1e-12);
    CHECK(worst > 1.1 * as_it_is); // the skin takes more of the pull when it counts three times as stiff
}

TEST_SUITE_END();
