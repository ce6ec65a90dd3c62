#include "report/figures.h"
#include "report/table.h"
#include "report/text_parts.h"

#include <fmt/format.h>

namespace thinskin::report {
namespace {

using results::FastenerForce;
using results::Vec3;

std::string n0(double v) { return fixed(v, 0); }
std::string n1(double v) { return fixed(v, 1); }

std::string section(std::string_view title, const Table& table) { return table.empty() ? "" : heading(title) + table.text(); }

std::string load_cases(const Outcome& o, const TextOptions& t)
{
    Table table({{"load case"}, {"x, g", Align::right}, {"y, g", Align::right}, {"z, g", Align::right}, {"theory"}, {"door"}, {"source"}});
    std::string how;
    for (const results::LoadCase& c : o.load_cases) {
        table.row({c.name, fixed(c.acceleration_g[0], 2), fixed(c.acceleration_g[1], 2), fixed(c.acceleration_g[2], 2), c.theory,
                   c.door_closed ? "closed" : "open", c.source});
        if (!c.derivation.empty()) how += wrapped("  - ", c.name + ": " + c.derivation, t.width);
    }
    return section("Load cases: force on the masses, panel axes (x right, y up, z outward), weight included", table) + how;
}

Table fastener_table()
{
    return Table({{"fastener"}, {"load case"}, {"tension", Align::right}, {"hand", Align::right}, {"shear x", Align::right}, {"shear y", Align::right},
                  {"one row", Align::right}, {"hand", Align::right}, {"own pull", Align::right}, {"prying", Align::right}, {"into skin", Align::right}, {"largest", Align::right}, {"shear rule"}});
}

void fastener_row(Table& table, const FastenerForce& f)
{
    table.row({f.name, f.load_case, n0(f.tension_N), n0(f.hand_tension_N), n0(f.shear_x_N), n0(f.shear_y_N), n0(f.row_shear_N), n0(f.hand_shear_N),
               n0(f.own_pull_N), n0(f.prying_N), n0(f.skin_share_N), n0(f.spread_tension_N), f.shear_rule});
}

std::string difference_line(const std::string& name, const std::string& load_case, const std::string& text, const TextOptions& t)
{
    return text.empty() ? "" : wrapped("  - ", fmt::format("{} in {}: {}", name, load_case, text), t.width);
}

std::string under(std::string_view title, const std::string& lines) { return lines.empty() ? "" : fmt::format("  {}\n{}", title, lines); }

constexpr std::string_view by_more = "Where solver and hand sum differ by more than 1.5 times:";
constexpr std::string_view not_standing = "Linear figures that do not stand:";

std::string fasteners(const Outcome& o, const TextOptions& t)
{
    Table table = fastener_table();
    std::string differences, open;
    for (const FastenerForce& f : o.fasteners) {
        fastener_row(table, f);
        differences += difference_line(f.name, f.load_case, f.difference, t);
        if (!f.stands) open += difference_line(f.name, f.load_case, f.why_not, t);
    }
    return section("Fasteners, N: solver beside hand sum; largest: over the runs with the skin's bending stiffness times 0, 1 and 3", table)
           + under(by_more, differences) + under(not_standing, open);
}

std::string ply_forces(const Outcome& o)
{
    Table table({{"fastener"}, {"load case"}, {"ply"}, {"x, N", Align::right}, {"y, N", Align::right}, {"bearing, N", Align::right}});
    for (const FastenerForce& f : o.fasteners)
        for (const results::PlyForce& p : f.plies) table.row({f.name, f.load_case, p.part, n0(p.x_N), n0(p.y_N), n0(p.bearing_N)});
    return section("Forces of each ply on its fastener", table);
}

std::string members(const Outcome& o, const TextOptions& t)
{
    std::string open;
    Table table({{"member"}, {"load case"}, {"at, mm", Align::right}, {"axial, N", Align::right}, {"shear, N", Align::right}, {"moment y, N·m", Align::right},
                 {"moment z, N·m", Align::right}, {"torsion, N·m", Align::right}, {"stress, MPa", Align::right}, {"largest moment, N·m", Align::right}});
    for (const results::MemberForce& m : o.members) {
        table.row({m.name, m.load_case, n0(m.at_mm), n0(m.axial_N), n0(m.shear_N), n1(m.moment_y_Nm), n1(m.moment_z_Nm), n1(m.torsion_Nm), n1(m.stress_MPa),
                   n1(m.spread_moment_Nm)});
        if (!m.stands) open += difference_line(m.name, m.load_case, m.why_not, t);
    }
    return section("Members", table) + under(not_standing, open);
}

std::string ends(const Outcome& o, const TextOptions& t)
{
    Table table({{"member"}, {"end"}, {"load case"}, {"x, N", Align::right}, {"y, N", Align::right}, {"z, N", Align::right}, {"hand z, N", Align::right},
                 {"largest z, N", Align::right}});
    Table bolts = fastener_table();
    std::string differences, open;
    for (const results::EndForce& e : o.member_ends) {
        table.row({e.name, e.end, e.load_case, n0(e.force_N[0]), n0(e.force_N[1]), n0(e.force_N[2]), n0(e.hand_N), n0(e.spread_N)});
        differences += difference_line(e.name + " " + e.end, e.load_case, e.difference, t);
        if (!e.stands) open += difference_line(e.name + " " + e.end, e.load_case, e.why_not, t);
        for (const FastenerForce& f : e.fasteners) fastener_row(bolts, f);
    }
    return section("Member ends: force of the member on the frame", table)
           + under(by_more, differences) + under(not_standing, open) + section("End fasteners, N", bolts);
}

std::string name_of(const results::MountForce& m) { return m.name; }
std::string name_of(const results::JointForce& j) { return j.part.empty() ? j.name : j.part + " " + j.name; }

template <class Rows> std::string force_moment(std::string_view title, const Rows& rows)
{
    Table table({{"name"}, {"load case"}, {"x, N", Align::right}, {"y, N", Align::right}, {"z, N", Align::right}, {"Mx, N·m", Align::right},
                 {"My, N·m", Align::right}, {"Mz, N·m", Align::right}});
    for (const auto& r : rows)
        table.row({name_of(r), r.load_case, n0(r.force_N[0]), n0(r.force_N[1]), n0(r.force_N[2]), n1(r.moment_Nm[0]), n1(r.moment_Nm[1]), n1(r.moment_Nm[2])});
    return section(title, table);
}

template <class Rows> std::string door_forces(std::string_view title, const Rows& rows)
{
    Table table({{"name"}, {"state"}, {"load case"}, {"x, N", Align::right}, {"y, N", Align::right}, {"z, N", Align::right}});
    for (const auto& r : rows) table.row({r.name, r.state, r.load_case, n0(r.force_N[0]), n0(r.force_N[1]), n0(r.force_N[2])});
    return section(title, table);
}

std::string contacts(const Outcome& o)
{
    Table table({{"part"}, {"load case"}, {"resultant, N", Align::right}, {"at x, mm", Align::right}, {"at y, mm", Align::right}});
    for (const results::Contact& c : o.contacts) table.row({c.part, c.load_case, n0(c.resultant_N), n0(c.at_mm[0]), n0(c.at_mm[1])});
    return section("Contact (pushes)", table);
}

std::string gauges(const Outcome& o)
{
    Table table({{"gauge"}, {"load case"}, {"relative to"}, {"x, mm", Align::right}, {"y, mm", Align::right}, {"z, mm", Align::right}});
    for (const results::GaugeMove& g : o.gauges)
        table.row({g.name, g.load_case, g.relative_to, fixed(g.displacement_mm[0], 3), fixed(g.displacement_mm[1], 3), fixed(g.displacement_mm[2], 3)});
    return section("Gauges", table);
}

std::string timing(const Outcome& o)
{
    const results::Timing& t = o.timing;
    return fmt::format("\nsolver time, linear: {:.1f} ms (bodies {:.1f}, condense {:.1f}, load cases {:.1f} ms); large deflection: {:.1f} ms; natural frequencies: {:.1f} ms; checks: {:.1f} ms\n", t.solver_ms - t.large_ms,
                       t.bodies_ms, t.condense_ms, t.load_cases_ms, t.large_ms, t.vibration_ms, t.checks_ms);
}

} // namespace

std::string force_details(const Outcome& o, const TextOptions& t)
{
    return load_cases(o, t) + fasteners(o, t) + ply_forces(o) + members(o, t) + ends(o, t) + force_moment("Item mounts: force of the item on the arm", o.mounts)
           + force_moment("Bracket joints", o.joints) + contacts(o) + gauges(o) + door_forces("Hinges: force on the door", o.hinges)
           + door_forces("Latches: force on the door", o.latches) + door_forces("Stops and rests: force on the door", o.stops) + timing(o);
}

} // namespace thinskin::report
