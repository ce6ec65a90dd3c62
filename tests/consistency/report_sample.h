#pragma once
#include "results/results.h"

#include <string>

namespace thinskin::tests {

/// A made-up outcome with one row of everything; no figure means anything.
inline results::Check sample_check(const std::string& part, const std::string& title, double demand, double capacity, base::Status status)
{
    results::Check c;
    c.id = title + "/" + part;
    c.formula = "BB-2";
    c.title = title;
    c.group = "fixing";
    c.part = part;
    c.load_case = "pothole";
    c.demand = demand;
    c.capacity = capacity;
    c.unit = "N";
    c.status = status;
    c.source = "a standard";
    c.edition = "2016";
    c.label = "from memory";
    c.inputs = {{"d", 8.0}, {"t", 0.76}};
    return c;
}

inline void add_sample_checks(results::Outcome& o)
{
    o.checks.push_back(sample_check("L1", "bearing of the skin", 600, 1305, base::Status::pass));
    o.checks.push_back(sample_check("L1", "tension of the bolt", 500, 9000, base::Status::judgement));
    results::Check open = sample_check("hinges", "hinge strength", 0, 0, base::Status::not_covered);
    open.group = "door";
    open.note = "nobody knows what the hinges carry";
    open.lift_with = "door.hinges.evidence";
    o.checks.push_back(open);
    o.governing = o.checks.front();
    results::Group g;
    g.name = "fixing";
    g.status = base::Verdict::pass;
    g.least_margin = o.checks.front().margin();
    g.part = "L1";
    g.judgements = 1;
    o.groups = {g};
}

inline void add_sample_forces(results::Outcome& o)
{
    results::FastenerForce f;
    f.name = "L1";
    f.part = "left";
    f.load_case = "pothole";
    f.tension_N = 341;
    f.hand_tension_N = 200;
    f.difference = "prying 100 N, pivot shift 41 N";
    f.shear_rule = "one row carries all";
    f.plies = {{"skin", 1, -298, 298}};
    o.fasteners = {f};
    results::MemberForce m;
    m.name = "upper rail";
    m.load_case = "pothole";
    m.moment_y_Nm = 61;
    o.members = {m};
    results::EndForce e;
    e.name = "upper rail";
    e.end = "left";
    e.load_case = "pothole";
    e.force_N = {0, 1, 521};
    e.hand_N = 500;
    e.fasteners = {f};
    o.member_ends = {e};
    o.mounts = {{"left mount 1", "pothole", {1, 2, 3}, {4, 5, 6}, true, ""}};
    o.joints = {{"arm-leg", "left", "pothole", {1, 2, 3}, {4, 5, 6}, true, ""}};
    o.contacts = {{"left", "pothole", 361, {190, 410}}};
    o.load_path = {{"item", "bracket left", 596}, {"bracket left", "skin", 596}};
    o.load_path_case = "pothole";
    o.gauges = {{"above left bracket", "parked", {0, -0.1, 0.4}, "frame"}};
    o.hinges = {{"upper", "closed", "pothole", {756, 2082, 259}}};
    o.latches = {{"latch 1", "closed", "pothole", {0, 0, 86}}};
    o.stops = {{"stop", "closed", "slam outward", {0, 0, 900}}};
    o.stacks = {{"L1", "head | leg 4.0 | skin 0.76 | angle 4.0 | nut"}};
}

inline results::Outcome sample_outcome()
{
    results::Outcome o;
    o.case_file = "cases/sample.yaml";
    o.sha256 = std::string(64, 'a');
    o.title = "sample";
    o.rules = "allowable_strength";
    o.verdict = base::Verdict::pass;
    o.headline = "the skin round bolt L1 is used most, in load case pothole";
    o.advice = "nothing needs to be added";
    o.dynamic_factor = 3.0;
    o.dynamic_basis = "quasi_static";
    o.dynamic_derivation = "road factor, already dynamic.";
    results::LoadCase l;
    l.name = "pothole";
    l.acceleration_g = {0, -3, 0};
    l.source = "catalogue, unsealed";
    l.theory = "linear";
    o.load_cases = {l};
    add_sample_checks(o);
    add_sample_forces(o);
    o.door_ratios.moment = 2.1;
    o.door_ratios.known = true;
    results::SkinState k;
    k.load_case = "pothole";
    k.max_deflection_mm = 1.5;
    k.max_von_mises_MPa = 60;
    k.buckling_factor = 4.2;
    k.stands = true;
    o.skin = {k};
    o.skin_theory = "linear";
    o.weight.item_kg = 36;
    o.weight.total_kg = 70.7;
    o.balance = {1e-14, {{"whole", "pothole", 1e-14, 2e-14}}};
    o.grid.nodes = 100;
    o.assumptions = {{"panel.skin.coating", "0.04 mm", "default", "-0.02"}};
    o.cautions = {"hole L1 is close to a rib"};
    o.exclusions = {"crash retention", "corrosion", "law"};
    o.timing.solver_ms = 42;
    return o;
}

} // namespace thinskin::tests
