#include "base/status.h"
#include "report/door_rows.h"
#include "report/figures.h"
#include "report/hardest.h"
#include "report/html.h"
#include "report/record_parts.h"
#include "report/text_parts.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace thinskin::report {
namespace {

std::string n0(double v) { return fixed(v, 0); }

std::string css_of(base::Verdict v) { return v == base::Verdict::pass ? "pass" : v == base::Verdict::fail ? "fail" : "open"; }

std::string legend(const drawing::Drawing& d, const std::map<std::string, std::string>& notes)
{
    HtmlTable t({{"no."}, {"part"}, {"what it is"}, {"least margin", true}});
    for (const drawing::LegendRow& r : d.legend) {
        const auto note = notes.find(r.checked_as);
        t.row({std::to_string(r.number), r.name, r.text, note != notes.end() && !r.checked_as.empty() ? note->second : "-"});
    }
    return t.html();
}

std::string acceleration(const results::LoadCase& c, std::size_t i) { return fixed(c.acceleration_g[i], 2); }

std::string theories(const Outcome& o)
{
    const auto n = std::count_if(o.skin.begin(), o.skin.end(), [](const auto& k) { return k.stands; });
    return fmt::format("Skin figures stand in {} of {} load cases.", n, o.skin.size());
}

} // namespace

std::vector<std::string> verdict_sentences(const Outcome& o, const RecordInputs& in)
{
    TextOptions t;
    t.strict = in.strict;
    t.width = 1 << 20; // one line a sentence
    std::vector<std::string> lines;
    const std::string text = verdict_lines(o, t);
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = std::min(text.find('\n', at), text.size());
        if (end > at) lines.push_back(text.substr(at, end - at));
        at = end + 1;
    }
    return lines;
}

std::string record_verdict(const Outcome& o, const RecordInputs& in)
{
    std::string s = fmt::format("<div class=\"verdict {}\">\n", css_of(o.verdict));
    const std::vector<std::string> lines = verdict_sentences(o, in);
    for (std::size_t i = 0; i < lines.size(); ++i) s += html_paragraph(lines[i], i == 0 ? "first" : "");
    s += "</div>\n";
    HtmlTable t({{"group"}, {"status"}, {"least margin", true}, {"part"}, {"check"}, {"failed", true}, {"not covered", true}, {"on judgement", true}});
    for (const results::Group& g : o.groups)
        t.row({g.name + (g.required ? "" : " (not required)"), std::string(base::name(g.status)), g.least_margin && o.verdict != base::Verdict::not_solved ? margin_text(*g.least_margin) : "-", g.part, g.check,
               std::to_string(g.failed), std::to_string(g.not_covered), std::to_string(g.judgements)},
              g.status == base::Verdict::fail ? "class=\"fail\"" : g.status == base::Verdict::pass ? "" : "class=\"open\"");
    s += t.html();
    const results::Weight& w = o.weight;
    if (w.total_kg > 0)
        s += html_paragraph(fmt::format("Weight: item {} kg, brackets {} kg, reinforcement {} kg, bare door {} kg: {} kg together.", fixed(w.item_kg, 1), fixed(w.brackets_kg, 1), fixed(w.reinforcement_kg, 1),
                                        fixed(w.door_kg, 1), fixed(w.total_kg, 1)));
    return s;
}

std::string record_drawing(const Outcome& o, const RecordInputs& in)
{
    if (!in.layout) return "";
    const SheetSize room{.notes = part_notes(o)};
    const Sheet sheet = draw_to_fit(*in.layout, &o, room);
    std::string caption = fmt::format("Drawn 1 : {}{}; do not measure off the print. Lengths in mm from the lower left corner of the skin (circle), seen from outside; z from its outer face. Dashed: behind the skin or hidden. Double-dotted: the item, and the zones where no hole is drilled. "
                                      "Cross and circle: bolt; disc: screw; disc in a circle: rivet; two circles: insert. Beside a part's number: its least margin; n.c.: a check of it is not covered.", sheet.scale, sheet.side_scale == sheet.scale ? "" : fmt::format(", the side view 1 : {}", sheet.side_scale));
    if (!o.load_path_case.empty() && o.verdict != base::Verdict::not_solved) caption += fmt::format(" Arrows in the side view, load case {}: force of the item on its arms; what all brackets and feet together pull (or push) on the parts behind each row of bolts.", o.load_path_case);
    return "<figure>\n" + svg(sheet, "Elevation and side view of " + (o.title.empty() ? std::string("the job") : o.title)) + "<figcaption>" + escaped(caption) + "</figcaption>\n</figure>\n" + legend(sheet.drawing, room.notes);
}

std::string record_values(const RecordInputs& in)
{
    HtmlTable t({{"block"}, {"values, each with where it was measured from"}}, "values");
    std::string block, line;
    const auto close = [&] {
        if (!line.empty()) t.row({block.empty() ? "-" : block, line});
        line.clear();
    };
    for (const InputRow& r : in.values) {
        const std::size_t dot = r.key.rfind('.');
        const std::string here = dot == std::string::npos ? "" : r.key.substr(0, dot);
        if (here != block) close();
        block = here;
        line += fmt::format("{}{}: {}{}", line.empty() ? "" : "; ", r.key.substr(dot == std::string::npos ? 0 : dot + 1), r.value, r.measured_from.empty() ? "" : " (" + r.measured_from + ")");
    }
    close();
    return t.html();
}

std::string record_load_cases(const Outcome& o)
{
    HtmlTable t({{"load case"}, {"x, g", true}, {"y, g", true}, {"z, g", true}, {"theory"}, {"door"}, {"source"}}, "two");
    for (const results::LoadCase& c : o.load_cases)
        t.row({c.name, acceleration(c, 0), acceleration(c, 1), acceleration(c, 2), c.theory, c.door_closed ? "closed" : "open", c.source}, "", escaped(c.derivation));
    if (t.empty()) return "";
    std::string s = html_paragraph("Force on the masses in g, weight included; panel axes: x right, y up, z out of the panel.");
    if (!o.dynamic_basis.empty()) s += html_paragraph(fmt::format("Road: {}{}. {}", o.dynamic_basis, o.dynamic_factor > 0 ? ", dynamic factor " + figure(o.dynamic_factor) : "", o.dynamic_derivation));
    return s + t.html();
}

std::string record_load_path(const Outcome& o)
{
    HtmlTable t({{"from"}, {"to"}, {"force, N", true}});
    for (const results::PathStep& p : o.load_path) t.row({p.from, p.to, n0(p.force_N)});
    return t.empty() ? "" : html_paragraph("Load case " + o.load_path_case + ".") + t.html();
}

std::string record_movements(const Outcome& o)
{
    HtmlTable skin({{"load case"}, {"deflection, mm", true}, {"stress, MPa", true}, {"stretch stress, MPa", true}, {"buckling factor", true}, {"hem shear flow, N/mm", true}, {"theory"}, {"stands"}}, "two");
    for (const results::SkinState& k : o.skin) {
        const std::string buckling = k.buckling_factor == 0 ? "not run" : std::isinf(k.buckling_factor) ? "no compression" : fixed(k.buckling_factor, 1);
        skin.row({k.load_case, fixed(k.max_deflection_mm, 2), fixed(k.max_von_mises_MPa, 1), fixed(k.max_slope_stress_MPa, 2), buckling, fixed(k.hem_shear_flow_N_mm, 2), k.theory, k.stands ? "yes" : "no"}, "",
                 k.stands ? "" : escaped(k.why_not));
    }
    HtmlTable gauges({{"gauge"}, {"load case"}, {"relative to"}, {"x, mm", true}, {"y, mm", true}, {"z, mm", true}});
    for (const results::GaugeMove* g_ : hardest(o.gauges, [](const auto& x) { return x.name; }, [](const auto& x) { return std::abs(x.displacement_mm[2]); })) {
        const results::GaugeMove& g = *g_;
        gauges.row({g.name, g.load_case, g.relative_to, fixed(g.displacement_mm[0], 3), fixed(g.displacement_mm[1], 3), fixed(g.displacement_mm[2], 3)});
    }
    if (skin.empty() && gauges.empty()) return "";
    return (skin.empty() ? "" : html_paragraph(theories(o))) + skin.html() + (gauges.empty() ? "" : html_paragraph("Gauges: of each the load case that moves it most out of the panel; all others are in result.json.")) + gauges.html();
}

std::string record_door(const Outcome& o)
{
    std::string s;
    if (o.door_ratios.known)
        s = html_paragraph(fmt::format("Door with the item, times the bare door: weight moment {}, hinge couple {}, inertia about the hinges {}, slam force {}.", fixed(o.door_ratios.moment, 2),
                                       fixed(o.door_ratios.hinge_couple, 2), fixed(o.door_ratios.inertia, 2), fixed(o.door_ratios.slam_force, 2)));
    HtmlTable t({{"force on the body at"}, {"door"}, {"load case"}, {"size and direction"}});
    for (const DoorRow& r : door_rows(o, false)) t.row({r.place, r.state, r.load_case, r.words});
    if (o.door_sag) s += html_paragraph(door_sag_sentence(*o.door_sag));
    HtmlTable states({{"open door"}, {"what acts, the vehicle standing"}, {"source"}});
    for (const results::DoorState& state : o.open_door.states) states.row({state.name, state.derivation, state.source});
    s += states.html();
    return s + (t.empty() ? "" : html_paragraph("Closed: of each place the load case with the largest force. Open: every angle for the weight alone, the widest angle for the other states, whose sizes are the same at each; all others are in result.json, where a latch, stop or strap that is not listed in a load case bears nothing in it.")) + t.html();
}

std::string record_stacks(const Outcome& o)
{
    HtmlTable t({{"fastener"}, {"stack, from head to nut, mm of base metal"}});
    for (const results::StackLine& k : o.stacks) t.row({k.fastener, k.line});
    return t.html();
}

std::string record_assumptions(const Outcome& o)
{
    HtmlTable t({{"what"}, {"value"}, {"from"}, {"effect on the governing margin"}});
    for (const results::Assumption& a : o.assumptions) t.row({a.what, a.value, a.from, a.effect_on_governing_margin});
    const auto run = std::count_if(o.assumptions.begin(), o.assumptions.end(), [](const auto& a) { return a.effect_on_governing_margin != "not run"; });
    return t.html() + (t.empty() ? "" : html_paragraph(run == 0 ? "Effects on the governing margin: not run; thinskin record --detail runs those that have another end." : "Where no effect is given, the assumption has no other end that could be run."));
}

std::string record_balance(const Outcome& o)
{
    if (o.balance.bodies.empty()) return "";
    HtmlTable t({{"body"}, {"load case"}, {"force error", true}, {"moment error", true}});
    for (const results::BodyBalance& b : o.balance.bodies) t.row({b.body, b.load_case, fmt::format("{:.1e}", b.force_error), fmt::format("{:.1e}", b.moment_error)});
    return html_paragraph(fmt::format("Forces and moments balance to {:.1e} of the load (limit 1e-08), worst load case of each body. Grid: {} nodes, {} unknowns, {} joints, spacing {} mm; error estimate: {}.",
                                      o.balance.worst_relative_error, o.grid.nodes, o.grid.unknowns, o.grid.joints, fixed(o.grid.spacing_mm, 1), o.grid.error_estimate))
           + t.html();
}

} // namespace thinskin::report
