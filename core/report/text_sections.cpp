#include "report/door_rows.h"
#include "report/figures.h"
#include "report/standing.h"
#include "report/table.h"
#include "report/text_parts.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace thinskin::report {

std::string bullet_list(const std::vector<std::string>& items, int width)
{
    std::string s;
    for (const std::string& item : items) s += wrapped("  - ", item, width);
    return s;
}

std::string load_path_lines(const Outcome& o)
{
    if (o.load_path.empty()) return "";
    Table table({{"from"}, {"to"}, {"force, N", Align::right}});
    for (const results::PathStep& p : o.load_path) table.row({p.from, p.to, fixed(p.force_N, 0)});
    return heading("Load path in load case " + o.load_path_case) + table.text();
}

namespace {

std::string buckling_text(double factor)
{
    if (factor == 0) return "not run";
    return std::isinf(factor) && factor > 0 ? "no compression" : fixed(factor, 1);
}

/// The load case with the largest deflection stands for all in the short form.
std::vector<const results::SkinState*> skin_rows(const Outcome& o, bool all)
{
    std::vector<const results::SkinState*> rows;
    for (const results::SkinState& k : o.skin) rows.push_back(&k);
    if (all || rows.empty()) return rows;
    const auto less = [](const auto* a, const auto* b) { return a->max_deflection_mm < b->max_deflection_mm; };
    return {*std::max_element(rows.begin(), rows.end(), less)};
}

std::string stands_summary(const Outcome& o)
{
    const auto n = std::count_if(o.skin.begin(), o.skin.end(), [](const auto& k) { return k.stands; });
    return fmt::format("Theory: {}. The figures stand in {} of {} load cases.", o.skin_theory.empty() ? "not said" : o.skin_theory, n, o.skin.size());
}

} // namespace

std::string skin_lines(const Outcome& o, const TextOptions& t)
{
    if (o.skin.empty()) return "";
    Table table({{"load case"}, {"theory"}, {"deflection, mm", Align::right}, {"by linear theory, mm", Align::right}, {"stress, MPa", Align::right}, {"stretch stress (i), MPa", Align::right},
                 {"buckling factor (iii)", Align::right}, {"hem shear flow, N/mm", Align::right}, {"stands"}});
    for (const results::SkinState* k : skin_rows(o, t.detail))
        table.row({k->load_case, k->theory, fixed(k->max_deflection_mm, 2), fixed(k->linear_deflection_mm, 2), fixed(k->max_von_mises_MPa, 1), fixed(k->max_slope_stress_MPa, 2),
                   buckling_text(k->buckling_factor), fixed(k->hem_shear_flow_N_mm, 2), k->stands ? "yes" : "no"});
    std::string s = heading("Skin") + wrapped("", stands_summary(o), t.width) + table.text();
    std::vector<std::string> why;
    for (const results::SkinState* k : skin_rows(o, t.detail))
        if (!k->stands && !k->why_not.empty()) why.push_back(k->load_case + ": " + k->why_not);
    return s + bullet_list(why, t.width);
}

namespace {

std::string door_force_lines(const Outcome& o, const TextOptions& t)
{
    Table table({{"place"}, {"door"}, {"load case"}, {"force on the body"}});
    for (const DoorRow& r : door_rows(o, t.detail)) table.row({r.place, r.state, r.load_case, r.words});
    if (table.empty()) return "";
    std::string s = heading("What the door puts on the body") + table.text();
    if (t.detail) s += wrapped("  - ", "a latch, stop, rest or check strap that is not listed in a load case bears nothing in it; several latches are taken one at a time", t.width);
    for (const results::DoorState& state : o.open_door.states)
        if (t.detail) s += wrapped("  - ", state.name + ": " + state.derivation, t.width);
    return s;
}

} // namespace

std::string door_lines(const Outcome& o, const TextOptions& t)
{
    std::string s = door_force_lines(o, t);
    if (o.door_sag) s += wrapped("", door_sag_sentence(*o.door_sag), t.width);
    if (!o.door_ratios.known) return s;
    const results::DoorRatios& r = o.door_ratios;
    return heading("Door with the item, times the bare door")
           + fmt::format("  weight moment {}, hinge couple {}, inertia about the hinges {}, slam force {}\n", fixed(r.moment, 2), fixed(r.hinge_couple, 2),
                         fixed(r.inertia, 2), fixed(r.slam_force, 2))
           + s;
}

std::string stack_lines(const Outcome& o)
{
    if (o.stacks.empty()) return "";
    Table table({{"fastener"}, {"stack, from head to nut, mm of base metal"}});
    for (const results::StackLine& k : o.stacks) table.row({k.fastener, k.line});
    return heading("Stacks") + table.text();
}

namespace {

std::string assumption_line(const results::Assumption& a)
{
    const bool run = a.effect_on_governing_margin != "not run";
    return fmt::format("{}: {} ({}){}", a.what, a.value, a.from, run ? "; governing margin " + a.effect_on_governing_margin : "");
}

} // namespace

std::string assumption_lines(const Outcome& o, const TextOptions& t)
{
    if (o.assumptions.empty()) return "";
    std::string s = heading("Assumed, because nobody measured it");
    for (const results::Assumption& a : o.assumptions)
        s += wrapped("  - ", assumption_line(a), t.width);
    const auto run = std::count_if(o.assumptions.begin(), o.assumptions.end(), [](const auto& a) { return a.effect_on_governing_margin != "not run"; });
    return s + wrapped("", run == 0 ? "Effects on the governing margin: not run; --detail runs those that have another end." : "Effects on the governing margin: not run for the others.", t.width);
}

std::string list_lines(const Outcome& o, const TextOptions& t)
{
    std::string s;
    if (!o.cautions.empty()) s += heading("Cautions") + bullet_list(o.cautions, t.width);
    s += heading("See to on the vehicle");
    for (const std::string_view item : see_to_on_the_vehicle) s += wrapped("  - ", item, t.width);
    if (!o.exclusions.empty()) s += heading("Never part of this result") + bullet_list(o.exclusions, t.width);
    return s;
}

std::string balance_lines(const Outcome& o, const TextOptions& t)
{
    if (o.balance.bodies.empty()) return "";
    std::string s = heading("Balance") + fmt::format("  forces and moments balance to {:.1e} of the load (limit 1e-08)\n", o.balance.worst_relative_error);
    if (!t.detail) return s + "  error of the grid: not run; --detail works it out on a second one\n";
    Table table({{"body"}, {"load case"}, {"force error", Align::right}, {"moment error", Align::right}});
    for (const results::BodyBalance& b : o.balance.bodies)
        table.row({b.body, b.load_case, fmt::format("{:.1e}", b.force_error), fmt::format("{:.1e}", b.moment_error)});
    return s + table.text()
           + fmt::format("  grid: {} nodes, {} unknowns, {} joints, spacing {} mm; error estimate: {}\n", o.grid.nodes, o.grid.unknowns, o.grid.joints,
                         fixed(o.grid.spacing_mm, 1), o.grid.error_estimate);
}

} // namespace thinskin::report
