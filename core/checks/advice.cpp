#include "checks/advice_places.h"
#include "checks/checks.h"

#include <algorithm>
#include <fmt/core.h>

/// The second line of the output and the last of each row: what would help, and where the case says so.
namespace thinskin::checks {

namespace {

using base::Status;
using base::Verdict;

bool starts(const std::string& text, const char* with) { return text.rfind(with, 0) == 0; }

const results::Check* first_not_covered(const results::Outcome& o)
{
    for (const results::Check& c : o.checks)
        if (c.required && c.status == Status::not_covered) return &c;
    return nullptr;
}

bool large_deflection(const results::Outcome& o)
{
    return std::any_of(o.checks.begin(), o.checks.end(), [](const results::Check& c) { return c.required && c.status == Status::not_covered && starts(c.note, "large deflection"); });
}

bool any_end_tied(const layout::Layout& l)
{
    return std::any_of(l.angles.begin(), l.angles.end(), [](const layout::Angle& a) { return a.ends[0].tied || a.ends[1].tied; });
}

/// An item that stands on its own feet on the panel has no bracket whose top bolts could be named.
bool on_feet(const layout::Layout& l) { return l.brackets.empty(); }

bool in_bare_skin(const layout::Stack& s)
{
    using Role = layout::Ply::Role;
    return std::none_of(s.plies.begin(), s.plies.end(), [](const layout::Ply& p) { return p.role == Role::angle || p.role == Role::plate || p.role == Role::rib || p.role == Role::frame_inner; });
}

/// Of a bracket's top bolt and its lowest the first with nothing behind it.
const layout::Stack* bare_end_of_leg(const layout::Layout& l)
{
    for (const layout::Bracket& b : l.brackets) {
        if (b.fasteners.empty()) continue;
        const auto [low, high] = std::minmax_element(b.fasteners.begin(), b.fasteners.end(), [](const layout::Stack& a, const layout::Stack& c) { return a.at.y < c.at.y; });
        for (const layout::Stack* s : {&*high, &*low})
            if (in_bare_skin(*s)) return s;
    }
    return nullptr;
}

Advice advice_for_skin(const layout::Layout& l)
{
    if (l.nothing_hung()) return {"What would help: a rib under the load.", {"panel.ribs"}};
    if (l.angles.empty())
        return {fmt::format("What would help: {0}, both ends bolted to the frame. One rail behind the {1} alone leaves the {2} to push the lower skin in.",
                            on_feet(l) ? "an angle behind the skin at the height of the upper feet and one at the lower feet" : "an angle behind the skin at the height of the top bolts and one at the foot", on_feet(l) ? "upper feet" : "top bolts",
                            on_feet(l) ? "lower ones" : "foot"),
                {"reinforcement.angles"}};
    const std::string first = "reinforcement.angles[" + l.angles.front().bar.name + "]";
    if (!any_end_tied(l)) return {"What would help: carry the angles on to the frame and bolt both ends there; an angle that stops short hands its pull back to the thin skin.", {first + ".ends"}};
    if (const layout::Stack* bare = bare_end_of_leg(l)) return {fmt::format("What would help: an angle behind {} as well, both ends bolted to the frame; nothing but the skin holds it there.", bare->name), {"reinforcement.angles"}};
    return {"What would help: stiffer angles or a shorter span between their ends, so that the skin follows less.", {first + ".section", first + ".ends"}};
}

struct Hint { const char* check; const char* words; std::vector<At> at; };
const std::vector<Hint>& hints()
{
    static const std::vector<Hint> all{
        {"hinges/", "a lighter item, or the item closer to the hinge line and to the door; a rest under the closed door does not help while it is open.", {At::mass, At::item_place}},
        {"slam/", "a lighter item, or more margin in what the slam uses up first.", {At::mass}},
        {"end stop", "a lighter item, or a stop that is stronger, softer or farther from the hinge line.", {At::mass}},
        {"weld", "a longer or larger weld, or a gusset.", {At::joint}},
        {"plate bending", "a thicker plate, or larger washers on it.", {At::section, At::washer}},
        {"plate yield line", "a thicker plate, or a larger washer on it.", {At::section, At::washer}},
        {"plate rim", "a thicker plate or larger washers on it, or carry it on to the frame: a plate in the middle of a panel leaves the pull to the skin.", {At::section, At::washer, At::plate_box}},
        {"rim stress", "a larger and thinner plate carried on to the frame, or angles: a small stiff plate cracks the skin at its rim. Round its corners and take off the burr.", {At::plate_box, At::section, At::new_angle}},
        {"latch", "a lighter item, or a second latch.", {At::mass, At::latches}},
        {"pull-through", "a larger washer of at least 2 mm, thicker sheet, or a plate under it.", {At::washer, At::sheet}},
        {"bearing", "more bolts in the row, a larger bolt, or a doubler on the thin sheet.", {At::fasteners, At::size, At::sheet}},
        {"tear-out", "a hole farther from the edge.", {At::hole}},
        {"edge distance", "a hole farther from the edge.", {At::hole}},
        {"spacing", "holes farther apart.", {At::hole}},
        {"repeated", "more bolts, or a doubler on the thin sheet; a thin sheet tires at its holes.", {At::fasteners, At::sheet}},
        {"lying leg", "a thicker angle, or the bolt closer to the heel.", {At::section, At::gauge}},
        {"bolt", "a larger bolt or a higher class.", {At::size, At::grade}},
        {"fatigue/", "less stress there: a larger or more fasteners, thicker sheet, a longer weld, or a shorter arm; half of the stress lasts 8 to 32 times as long.", {At::fasteners, At::joint, At::arm}},
        {"vehicle/front", "less mass, or the item nearer to the rear axle: a steering axle that is too light does not steer.", {At::mass, At::item_place}},
        {"vehicle/", "less mass, or load left at home: above its plate the vehicle may not be driven.", {At::mass}},
        {"tether", "less slack, a tether that stretches more, or a stronger one on a stronger place.", {At::tether}},
        {"skin stress", "angles behind the skin, or stiffer ones.", {At::new_angle}},
        {"skin deflection", "stiffer angles behind the skin with their ends on the frame.", {At::first_angle, At::new_angle}},
        {"screw", "bolts with nuts and washers instead of screws, or more and larger screws.", {At::use, At::fasteners, At::size}},
        {"shear with tension", "more or larger fasteners, or bolts with nuts and washers instead.", {At::fasteners, At::size, At::use}},
        {"pull-out", "bolts with nuts and washers instead of screws, more screws, or thicker sheet at their tips.", {At::use, At::fasteners}},
        {"pull-over", "a larger head or washer, thicker sheet, or bolts instead of screws.", {At::washer, At::use}},
        {"rivet", "bolts with nuts and washers instead of rivets, or more and larger rivets.", {At::use, At::fasteners, At::size}},
        {"insert", "bolts with nuts and washers instead of inserts, or more and larger inserts.", {At::use, At::fasteners, At::size}},
        {"pull of the insert", "bolts with nuts and washers instead of inserts, thicker sheet, or more inserts.", {At::use, At::fasteners}},
        {"mount", "a larger bolt or more mounts.", {At::size, At::mounts}},
        {"arm to leg", "a longer or larger weld, or a gusset.", {At::joint}},
        {"brace to", "a longer or larger weld, or a gusset.", {At::joint}},
        {"brace", "a heavier brace, or its foot lower on the leg.", {At::brace, At::brace_foot}},
    };
    return all;
}

const Hint& hint_for(const results::Check& g, const layout::Layout& l)
{
    static const Hint frame{"frame", "a longer leg whose top bolts and their angle sit higher, nearer to hinge or latch (bolts farther apart in height pull less, and a pull near a hinge bends the frame less), a further angle with bolts of the bracket through it, or a doubler on the frame.",
                            {At::first_leg, At::new_angle, At::frame_section, At::frame_sheet}};
    static const Hint under_feet{"frame", "the upper feet and their angle nearer to hinge or latch, or a doubler on the frame.", {At::new_angle, At::frame_section, At::frame_sheet}};
    static const Hint other{"", "a heavier section or a shorter span there.", {At::section}};
    if (starts(g.part, "frame")) return on_feet(l) ? under_feet : frame;
    const auto h = std::find_if(hints().begin(), hints().end(), [&g](const Hint& k) { return starts(g.id, k.check); });
    return h == hints().end() ? other : *h;
}

/// The frame is the vehicle's: nobody buys it thicker.
std::string measured_words(const std::vector<std::string>& at)
{
    const bool of_vehicle = std::any_of(at.begin(), at.end(), [](const std::string& key) { return starts(key, "panel.frame"); });
    return of_vehicle ? " The frame is the vehicle's, measured and not chosen: type in a thicker one only where a doubler is put on." : "";
}

Advice advice_for(const results::Check& g, const layout::Layout& l)
{
    const bool slam = starts(g.load_case, "slam");
    const Hint& h = hint_for(g, l);
    Advice a{std::string("What would help: ") + h.words + (slam ? " Buffers that stop the door more softly help every part." : ""), places_of(h.at, g, l)};
    a.words += measured_words(a.at);
    if (slam) a.at.insert(starts(g.part, "frame") ? a.at.begin() : a.at.end(), "door.slam.stop"); // before what is the vehicle's
    return a;
}

Advice lifted(const results::Check& c, const layout::Layout& l) { return c.lift_with.empty() ? Advice{} : Advice{"What would lift it: " + c.lift_with + ".", places_to_lift(c.lift_with, l)}; }

} // namespace

Advice advice(const results::Outcome& o, const layout::Layout& l)
{
    if (o.verdict == Verdict::not_solved)
        return {!o.not_solved.empty() && o.not_solved.front().find("free to") != std::string::npos ? "What would help: tie the part named above to the frame, or give it a fastener that stops the movement."
                                                                                                 : "What would help: a stiffer or simpler structure there; the figures of this case are not for use.",
                {}};
    const bool skin_carries = large_deflection(o);
    if (o.verdict == Verdict::fail && o.governing) return starts(o.governing->id, "skin stress") || (skin_carries && !any_end_tied(l)) ? advice_for_skin(l) : advice_for(*o.governing, l);
    if (skin_carries) return advice_for_skin(l);
    if (const results::Check* open = first_not_covered(o); open && !open->lift_with.empty()) return lifted(*open, l);
    if (!o.governing) return {};
    Advice more = advice_for(*o.governing, l);
    more.words = "To gain more" + more.words.substr(std::string("What would help").size());
    return more;
}

Advice help(const results::Check& c, const layout::Layout& l)
{
    if (c.status == Status::not_covered) return starts(c.note, "large deflection") ? advice_for_skin(l) : lifted(c, l);
    return starts(c.id, "skin stress") ? advice_for_skin(l) : advice_for(c, l);
}

} // namespace thinskin::checks
