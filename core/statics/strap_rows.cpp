#include "base/quantity.h"
#include "statics/open_door.h"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>

namespace thinskin::statics {

namespace {

using base::Label;
using base::Status;
using results::Check;

constexpr double strap_factor = 2; ///< of a strap's or a stop's strength that does not count: engineering judgement
constexpr const char* strap_key = "door.check_strap";

Check row(const std::string& id, const std::string& title, const std::string& unit, const std::string& rule)
{
    Check c = door_row("check strap/" + id, title);
    c.unit = unit;
    c.rule = rule;
    c.source = "rigid-body statics of the open door";
    c.label = base::name(Label::judgement);
    c.range = "side-hinged door, rigid leaf; the strap alone holds and stops it";
    return c;
}

/// At most judgement: what a strap bears was told, not tested on this door.
Check judged(Check c, const std::optional<double>& given, double counts, const std::string& missing, const std::string& key)
{
    if (!given.has_value()) return not_covered(c, missing, key);
    c.capacity = *given * counts;
    if (!(std::isfinite(c.demand) && c.demand >= 0 && std::isfinite(c.capacity) && c.capacity > 0)) return not_covered(c, "a figure of the comparison is not a positive number", key);
    c.status = c.demand <= c.capacity ? Status::judgement : Status::fail;
    return c;
}

/// The figure of the state where it is largest; a state without an answer leaves the row without one.
template <class Figure> Check largest(Check c, const std::vector<HingeStatics>& states, Figure figure)
{
    for (const HingeStatics& s : states)
        if (const double v = figure(s); c.load_case.empty() || !(v <= c.demand)) {
            c.demand = v;
            c.load_case = s.load_case;
        }
    return c;
}

/// The strap as given, or one of which nothing is known.
const layout::Door::Strap& strap_of(const layout::Door& d)
{
    static const layout::Door::Strap unknown;
    return d.strap ? *d.strap : unknown;
}

/// The wind in which the door still stays, level and in the worst state: the wind's torque grows with the square of its speed.
std::string holds_up_to(const layout::Door& d, const std::vector<HingeStatics>& states)
{
    if (!d.wind || !strap_of(d).holds) return "";
    double still = 0, most = 0; // of the slope alone, of the worst state with the wind
    for (const HingeStatics& s : states) {
        const double torque = std::abs(s.torque_Nmm);
        if (!s.pushed) still = std::max(still, torque);
        else most = std::max(most, torque);
    }
    const double left = *strap_of(d).holds - still;
    if (!(left > 0 && most > still)) return "";
    return fmt::format("it stays up to a wind of {:.1f} m/s with its gusts", *d.wind / 1000 * std::sqrt(left / (most - still)));
}

Check hold_row(const layout::Door& d, const std::vector<HingeStatics>& states)
{
    Check c = row("hold", "check strap: holding the open door", "N m", "torque of slope and wind about the hinge line against the holding torque as measured, which wears");
    c.formula = d.slope ? "ST-11" : "AC-18";
    c = largest(c, states, [](const HingeStatics& s) { return std::abs(s.torque_Nmm) / 1000; });
    c = judged(c, strap_of(d).holds, 1e-3, "at what torque the held door begins to swing is not given", "door.check_strap.holds");
    if (c.status == Status::not_covered) return c;
    const std::string limit = holds_up_to(d, states);
    c.note = c.status == Status::fail ? "the door does not stay where it is held: it swings shut on somebody, or into its stop" : "the catch wears: measure it again at the re-check";
    if (!limit.empty()) c.note += "; " + limit;
    return c;
}

/// What takes a force about the hinge line: how far off it, and what it bears.
struct Holder { double lever; std::optional<double> strength; const char *missing, *key; };

/// Force of the strap or stop: the statics' own where it is given.
Check force_row(Check c, const std::vector<HingeStatics>& states, const Holder& by)
{
    for (const HingeStatics& s : states)
        if (!s.covered) return not_covered(c, s.load_case + ": " + s.reason, s.lift_with.empty() ? strap_key : s.lift_with);
    c = largest(c, states, [](const HingeStatics& s) { return std::abs(s.latch_N); });
    c.inputs = {{"lever, mm", by.lever}, {"factor", strap_factor}};
    c = judged(c, by.strength, 1 / strap_factor, by.missing, by.key);
    if (c.status != Status::not_covered) c.note = "half of the strength counts: engineering judgement, no source";
    return c;
}

/// Flung open: into a stop of its own, or into that of the strap.
Check stop_row(const layout::Door& d, const std::vector<HingeStatics>& flung)
{
    Check stop = row("stop", "stop of the door flung open", "N", "inertia of the whole door stopped by a half-sine, over the distance of what stops it from the hinge line, twice, against what that bears");
    stop.formula = "ST-13";
    if (!d.end_stop) return force_row(stop, flung, {strap_of(d).lever, strap_of(d).stop_strength, "what the end stop bears is not given", "door.check_strap.stop_strength"});
    stop.id = "end stop/stop";
    stop.part = "end stop";
    stop.range = "side-hinged door, rigid leaf; the stop takes it, the strap does not";
    return force_row(stop, flung, {d.end_stop->lever, d.end_stop->strength, "what the end stop bears is not given", "door.end_stop.strength"});
}

} // namespace

std::vector<Check> strap_rows(const layout::Layout& l, const std::vector<HingeStatics>& statics)
{
    const layout::Door& d = *l.door;
    std::vector<HingeStatics> held, flung;
    for (const HingeStatics& s : statics) {
        if (!s.open || !s.latch_needed) continue;
        (s.turns ? flung : held).push_back(s);
    }
    std::vector<Check> rows;
    if (!held.empty()) {
        rows.push_back(hold_row(d, held));
        Check pull = row("pull", "check strap: its force on the slope and in the wind", "N", "torque over the strap's lever, twice, against the strength");
        pull.formula = "AC-18";
        rows.push_back(force_row(pull, held, {strap_of(d).lever, strap_of(d).strength, "what the strap with its fixings bears is not given", "door.check_strap.strength"}));
    }
    if (!flung.empty()) rows.push_back(stop_row(d, flung));
    return rows;
}

} // namespace thinskin::statics
