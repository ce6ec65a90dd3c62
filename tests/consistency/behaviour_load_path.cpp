#include "actions/load_cases.h"
#include "idealise/response.h"
#include "support/cases.h"
#include "support/near.h"

#include <cmath>

// What the load path must do when a part of it is changed or taken away. Identities and directions, no outside numbers.
using namespace thinskin;
using tests::check_case;

namespace {

struct Model {
    model::Case source;
    layout::Layout layout;
    idealise::SkinCache skin;
    fem::ColumnCache columns;
    std::unique_ptr<idealise::Structure> structure;
    idealise::Solution solution;
};

std::unique_ptr<Model> solved(const std::string& text, std::vector<results::LoadCase> cases = {}, const idealise::Options& options = {})
{
    auto m = std::make_unique<Model>();
    m->source = tests::read_case(text);
    layout::Result r = layout::resolve(m->source);
    REQUIRE(r.layout);
    m->layout = *r.layout;
    if (cases.empty()) cases = actions::load_cases(m->layout).cases;
    m->structure = idealise::build(m->layout, options, m->skin);
    m->solution = idealise::solve(*m->structure, cases, m->columns, {});
    INFO(m->solution.where);
    REQUIRE(m->solution.solved);
    return m;
}

double linear_skin_move(const results::Outcome& o, const std::string& load_case)
{
    for (const auto& s : o.skin)
        if (s.load_case == load_case) return s.linear_deflection_mm;
    return NAN;
}

} // namespace

TEST_SUITE_BEGIN("behaviour: load path");

TEST_CASE("removing the end fixings lets the skin move more than 25 times as far by linear theory; the job falls on the skin")
{
    const tests::Edits loosened{{"ends:\n        left: {to: frame, fasteners: [{at: [45 mm, 420 mm], use: M6 bolt}, {at: [20 mm, 420 mm], use: M6 bolt}]}\n        right: same_as_left", "ends: {left: {to: none}, right: {to: none}}"},
                                {"from: [10 mm, 420 mm]", "from: [70 mm, 420 mm]"}, {"to: [730 mm, 420 mm]", "to: [670 mm, 420 mm]"}, {"from: [10 mm, 740 mm]", "from: [70 mm, 740 mm]"}};
    const auto tied = check_case("condenser_door_made_good"), loose = check_case("condenser_door_made_good", loosened);
    // About 25 times by linear theory (demo sheet: 0.4 against 11 mm); the ratio depends on both rails and the heel.
    const double ratio = linear_skin_move(loose, "pothole") / linear_skin_move(tied, "pothole");
    INFO("ratio ", ratio);
    // The hand sheet says about 25 for a rail that is joined to the skin along its whole length. Here it hands its pull over at
    // its ends, in points 60 mm from the held edge, and moves farther still.
    CHECK(ratio > 25);
    CHECK(tests::group(tied, "reinforcement")->status == base::Verdict::pass);
    CHECK(tests::group(loose, "panel")->status == base::Verdict::fail);
    CHECK(*tests::group(loose, "panel")->least_margin < -0.5);
    CHECK(*tests::group(tied, "panel")->least_margin > 0);
}

TEST_CASE("end forces and skin share of an angle equal the net pull of its bolts and its own weight, to 1e-8")
{
    const auto m = solved(tests::edited_text("condenser_door"));
    for (const idealise::Run& run : m->solution.runs)
        for (int angle = 0; angle < 2; ++angle) {
            CAPTURE(run.load_case.name);
            const idealise::Picture p = idealise::picture(*m->structure, m->solution, run, 0);
            double pull = 0, ends = 0, skin = 0, scale = 1;
            for (std::size_t i = 0; i < p.bolts.size(); ++i)
                if (m->structure->bolts[i].angle == angle) {
                    pull += p.bolts[i].tension - p.bolts[i].contact_beside;
                    skin += p.bolts[i].skin_share;
                    scale += p.bolts[i].tension + p.bolts[i].contact_beside;
                }
            for (const idealise::ContactJoint& c : m->structure->contacts)
                if (c.kind == idealise::ContactJoint::Kind::angle_skin && c.angle == angle) skin -= run.states[0].lambda(c.joint);
            for (std::size_t i = 0; i < p.ends.size(); ++i)
                if (m->structure->ends[i].angle == angle) ends += p.ends[i].force.z();
            const idealise::AngleBody& body = m->structure->angles[static_cast<std::size_t>(angle)];
            double own = 0;
            for (std::size_t k = 0; k < m->structure->loads.size(); ++k)
                if (const fem::Vector& f = m->structure->loads[k].on_body[static_cast<std::size_t>(body.body)]; f.size() > 0)
                    own += run.factors(static_cast<Eigen::Index>(k)) * body.frame.body.rigid_modes.col(2).dot(f);
            tests::check_near_abs(ends + skin, pull + own, 1e-8 * scale);
        }
}

namespace {

/// Bolt tension over a pull of 1 kN straight out at the web of the left leg, half-way between its bolts. The item hangs on
/// mounts so soft that they do not stop the leg from turning.
double prying_ratio(const std::string& section)
{
    results::LoadCase pull;
    pull.name = "pull at the web";
    pull.acceleration_g = {1, 0, 0};
    Model m;
    m.source = tests::read_case(tests::edited_text("condenser_door", {{"leg: {from: 400 mm, to: 760 mm, section: angle 40x40x4", "leg: {from: 400 mm, to: 760 mm, section: " + section},
                                                                      {"24x2 mm", "14x2 mm"},
                                                                      {"kind: rigid}", "kind: rubber, stiffness: 0.01 N/mm}"}}));
    const layout::Result r = layout::resolve(m.source);
    REQUIRE(r.layout);
    m.layout = *r.layout;
    m.structure = idealise::build(m.layout, {}, m.skin);
    idealise::Structure& s = *m.structure;
    const idealise::BracketBody& left = s.brackets[0];
    const int node = left.leg_node(580);
    fem::UnitLoad load;
    load.on_body.resize(s.assembly.bodies.size());
    fem::Vector& f = load.on_body[static_cast<std::size_t>(left.body)] = fem::Vector::Zero(left.frame.body.dofs);
    fem::add(f, fem::frame_port(left.frame, node, left.frame.model.nodes[static_cast<std::size_t>(node)], {0, 0, 1}), 1000);
    s.loads[0] = load;
    m.solution = idealise::solve(s, {pull}, m.columns, {});
    INFO(m.solution.where);
    REQUIRE(m.solution.solved);
    const idealise::Picture p = idealise::picture(s, m.solution, m.solution.runs[0], 0);
    return (p.bolts[0].tension + p.bolts[1].tension) / 1000;
}

} // namespace

TEST_CASE("a leg pulled at its heel pries by the lever rule F (1 + a/b); halving the toe distance follows it within 10 %")
{
    // a from the web's mid-plane (23 mm) to the bolt line, b from there to the toe.
    const double far = prying_ratio("angle 40x40x4"), near = prying_ratio("angle 32.5x32.5x4");
    INFO("bolt tension over pull: ", far, " and ", near);
    tests::check_near_rel(far, 1 + 23.0 / 15, 0.10);
    tests::check_near_rel(near, 1 + 23.0 / 7.5, 0.10);
    tests::check_near_rel(near / far, (1 + 23.0 / 7.5) / (1 + 23.0 / 15), 0.10);
}

TEST_CASE("ten times the contact stiffness, or half the grid moves no large demand by 2 %")
{
    const std::string text = tests::edited_text("condenser_door");
    const auto base_model = solved(text);
    idealise::Options stiff, fine;
    stiff.contact_compliance = 1e-7;
    fine.grid_spacing = 15;
    for (const idealise::Options& o : {stiff, fine}) {
        CAPTURE(o.contact_compliance);
        CAPTURE(o.grid_spacing);
        const auto other = solved(text, {}, o);
        for (std::size_t k = 0; k < base_model->solution.runs.size(); ++k) {
            const auto a = idealise::picture(*base_model->structure, base_model->solution, base_model->solution.runs[k], 0);
            const auto b = idealise::picture(*other->structure, other->solution, other->solution.runs[k], 0);
            double most_bolt = 0, most_end = 0;
            for (const auto& q : a.bolts) most_bolt = std::max(most_bolt, q.tension);
            for (const auto& q : a.ends) most_end = std::max(most_end, q.force.norm());
            for (std::size_t i = 0; i < a.bolts.size(); ++i) tests::check_near_abs(b.bolts[i].tension, a.bolts[i].tension, 0.02 * most_bolt);
            for (std::size_t i = 0; i < a.ends.size(); ++i) CHECK((b.ends[i].force - a.ends[i].force).norm() <= 0.02 * most_end);
        }
    }
}

TEST_CASE("the angle forces hardly know how stiff the skin is in bending; with floating angles they do, and say so")
{
    const auto tied = check_case("condenser_door"), loose = check_case("condenser_door_short_angles", {{"analysis: {skin: automatic}", "analysis: {skin: linear}"}});
    for (const auto& f : tied.fasteners) {
        CAPTURE(f.name);
        CAPTURE(f.load_case);
        CAPTURE(f.why_not);
        CHECK(f.stands);
    }
    bool any = false;
    for (const auto& f : loose.fasteners) any = any || !f.stands;
    CHECK(any);
}

TEST_CASE("scaling all loads of a load case by more than one lowers no demand")
{
    const std::string text = tests::edited_text("condenser_door");
    const auto once = solved(text);
    std::vector<results::LoadCase> larger;
    for (const idealise::Run& run : once->solution.runs) {
        results::LoadCase lc = run.load_case;
        for (double& a : lc.acceleration_g) a *= 1.3;
        lc.spin_rad_s2 *= 1.3;
        larger.push_back(lc);
    }
    const auto more = solved(text, larger);
    for (std::size_t k = 0; k < larger.size(); ++k) {
        CAPTURE(larger[k].name);
        const auto a = idealise::picture(*once->structure, once->solution, once->solution.runs[k], 0);
        const auto b = idealise::picture(*more->structure, more->solution, more->solution.runs[k], 0);
        for (std::size_t i = 0; i < a.bolts.size(); ++i) CHECK(b.bolts[i].tension >= a.bolts[i].tension * (1 - 1e-6));
        for (std::size_t i = 0; i < a.ends.size(); ++i) CHECK(b.ends[i].force.norm() >= a.ends[i].force.norm() * (1 - 1e-6));
        for (std::size_t i = 0; i < a.members.size(); ++i) CHECK(b.members[i].stress >= a.members[i].stress * (1 - 1e-6));
        for (std::size_t i = 0; i < a.mounts.size(); ++i) CHECK(b.mounts[i].norm() >= a.mounts[i].norm() * (1 - 1e-6));
    }
}

TEST_CASE("perturbing the idealisation leaves the hand figures unmoved: they do not know it")
{
    // Other edges move the solver's figures, not the hand's.
    const auto a = check_case("condenser_door"), b = check_case("condenser_door", {{"edges: {left: held, right: held, bottom: held, top: held}", "edges: {left: hinged, right: hinged, bottom: hinged, top: hinged}"}});
    REQUIRE(a.fasteners.size() == b.fasteners.size());
    bool moved = false;
    for (std::size_t i = 0; i < a.fasteners.size(); ++i) {
        CHECK(a.fasteners[i].hand_tension_N == b.fasteners[i].hand_tension_N);
        CHECK(a.fasteners[i].hand_shear_N == b.fasteners[i].hand_shear_N);
        moved = moved || a.fasteners[i].tension_N != b.fasteners[i].tension_N;
    }
    CHECK(moved);
}

TEST_CASE("A load case solved in a row with others gives what it gives alone: the same contacts, the same forces")
{
    for (const char* name : {"condenser_door_made_good", "spare_wheel_small_plate", "awning_wall", "ladder_rack", "condenser_door_bare"}) {
        const std::string text = tests::edited_text(name);
        const auto all = solved(text);
        REQUIRE(all->solution.runs.size() > idealise::together); // at least two rows
        for (const idealise::Run& run : all->solution.runs) {
            const auto alone = solved(text, {run.load_case});
            CAPTURE(name);
            CAPTURE(run.load_case.name);
            for (std::size_t v = 0; v < run.states.size(); ++v) {
                const fem::JointState &a = run.states[v], &b = alone->solution.runs.front().states[v];
                REQUIRE(a.status == b.status);
                if (a.status != fem::SolveStatus::solved) continue;
                CHECK((a.lambda - b.lambda).cwiseAbs().maxCoeff() <= 1e-8 * b.lambda.cwiseAbs().maxCoeff());
                CHECK(a.active == b.active);
            }
        }
    }
}

TEST_SUITE_END();
