#include "checks/checks.h"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>

/// The first two lines of the output: verdict and what governs, then what would help.
namespace thinskin::checks {

namespace {

using base::Status;
using base::Verdict;

/// Rounded down to two decimals, never better than computed.
std::string margin_text(double m) { return !std::isfinite(m) || m > 5 ? "more than +5" : fmt::format("{:+.2f}", std::floor(m * 100) / 100); }

const results::Check* first_not_covered(const results::Outcome& o)
{
    for (const results::Check& c : o.checks)
        if (c.required && c.status == Status::not_covered) return &c;
    return nullptr;
}

/// A sentence for the job that holds but shakes.
std::string shaking(const results::Outcome& o)
{
    for (const results::Check& c : o.checks)
        if (c.group == "vibration" && c.status == Status::fail) return " But it shakes: " + c.title + ", see Natural frequencies.";
    return "";
}

std::string tightest(const results::Outcome& o)
{
    if (!o.governing) return "";
    const results::Check& g = *o.governing;
    return fmt::format("{} ({}), margin {}", g.title, g.load_case, margin_text(g.margin()));
}

bool starts(const std::string& text, const char* with) { return text.rfind(with, 0) == 0; }

bool large_deflection(const results::Outcome& o)
{
    return std::any_of(o.checks.begin(), o.checks.end(), [](const results::Check& c) { return c.required && c.status == Status::not_covered && starts(c.note, "large deflection"); });
}

bool any_end_tied(const layout::Layout& l)
{
    return std::any_of(l.angles.begin(), l.angles.end(), [](const layout::Angle& a) { return a.ends[0].tied || a.ends[1].tied; });
}

std::string advice_for_skin(const layout::Layout& l)
{
    if (l.nothing_hung()) return "What would help: a thicker skin or a rib under the load; a skin this thin leaves the linear theory of this version.";
    if (l.angles.empty())
        return "What would help: an angle behind the skin at the height of the top bolts and one at the foot, both ends bolted to the frame. One rail behind the top bolts alone leaves the foot to push the lower skin in.";
    if (!any_end_tied(l)) return "What would help: carry the angles on to the frame and bolt both ends there; an angle that stops short hands its pull back to the thin skin.";
    return "What would help: stiffer angles or a shorter span between their ends, so that the skin follows less.";
}

struct Hint { const char* check; const char* words; };
constexpr Hint hints[] = {
    {"hinges/", "a lighter item, or the item closer to the hinge line and to the door; a rest under the closed door does not help while it is open."},
    {"weld", "a longer or larger weld, or a gusset."},
    {"plate bending", "a thicker plate, or larger washers on it."},
    {"plate yield line", "a thicker plate, or a larger washer on it."},
    {"plate rim", "a thicker plate or larger washers on it, or carry it on to the frame: a plate in the middle of a panel leaves the pull to the skin."},
    {"rim stress", "a larger and thinner plate carried on to the frame, or angles: a small stiff plate cracks the skin at its rim. Round its corners and take off the burr."},
    {"latch", "a lighter item, or a second latch."},
    {"pull-through", "a larger washer of at least 2 mm, thicker sheet, or a plate under it."},
    {"bearing", "more bolts in the row, a larger bolt, or a doubler on the thin sheet."},
    {"tear-out", "a hole farther from the edge."},
    {"edge distance", "a hole farther from the edge."},
    {"spacing", "holes farther apart."},
    {"repeated", "more bolts, or a doubler on the thin sheet; a thin sheet tires at its holes."},
    {"lying leg", "a thicker angle, or the bolt closer to the heel."},
    {"bolt", "a larger bolt or a higher class."},
    {"fatigue/", "less stress there: a larger or more fasteners, thicker sheet, a longer weld, or a shorter arm; half of the stress lasts 8 to 32 times as long."},
    {"vehicle/", "less mass, or load left at home: above its plate the vehicle may not be driven."},
    {"tether", "less slack, a tether that stretches more, or a stronger one on a stronger place."},
    {"skin stress", "angles behind the skin, or stiffer ones."},
    {"skin deflection", "stiffer angles behind the skin with their ends on the frame."},
    {"mount", "a larger bolt or more mounts."},
    {"arm to leg", "a longer or larger weld, or a gusset."},
    {"brace", "a heavier brace, or its foot lower on the leg."},
};

std::string advice_for(const results::Check& g)
{
    if (starts(g.part, "frame")) return "What would help: a third point where the angles hand their pull to the frame, nearer to hinge or latch, or a doubler on the frame.";
    const std::string slam = starts(g.load_case, "slam") ? " Buffers that stop the door more softly help every part." : "";
    for (const Hint& h : hints)
        if (starts(g.id, h.check)) return std::string("What would help: ") + h.words + slam;
    return "What would help: a heavier section or a shorter span there.";
}

} // namespace

std::string headline(const results::Outcome& o)
{
    const results::Check* open = first_not_covered(o);
    const int judged = static_cast<int>(std::count_if(o.checks.begin(), o.checks.end(), [](const results::Check& c) { return c.required && c.status == Status::judgement; }));
    switch (o.verdict) {
    case Verdict::not_solved: return "NOT SOLVED: " + (o.not_solved.empty() ? std::string("no result") : o.not_solved.front());
    case Verdict::fail: return "FAILS: " + tightest(o) + "." + (large_deflection(o) ? " Not covered besides: figures that hang on the bending of the thin skin." : "");
    case Verdict::not_covered:
        return fmt::format("NOT COVERED: {}: {}.{}", open ? open->title : "nothing to check", open ? open->note : "the case has no part with a check", o.governing ? " Tightest of what is covered: " + tightest(o) + "." : "");
    case Verdict::pass: return fmt::format("PASSES: the tightest is {}.{}", tightest(o), judged > 0 ? fmt::format(" {} {} on judgement.", judged, judged == 1 ? "row passes" : "rows pass") : "") + shaking(o);
    }
    return "";
}

std::string advice(const results::Outcome& o, const layout::Layout& l)
{
    if (o.verdict == Verdict::not_solved)
        return !o.not_solved.empty() && o.not_solved.front().find("free to") != std::string::npos ? "What would help: tie the part named above to the frame, or give it a fastener that stops the movement."
                                                                                                : "What would help: a stiffer or simpler structure there; the figures of this case are not for use.";
    const bool skin_carries = large_deflection(o);
    if (o.verdict == Verdict::fail && o.governing) return starts(o.governing->id, "skin stress") || (skin_carries && !any_end_tied(l)) ? advice_for_skin(l) : advice_for(*o.governing);
    if (skin_carries) return advice_for_skin(l);
    if (const results::Check* open = first_not_covered(o); open && !open->lift_with.empty()) return "What would lift it: " + open->lift_with + ".";
    return o.governing ? "To gain more" + advice_for(*o.governing).substr(std::string("What would help").size()) : "";
}

std::string help(const results::Check& c, const layout::Layout& l)
{
    if (c.status == Status::not_covered) return starts(c.note, "large deflection") ? advice_for_skin(l) : c.lift_with.empty() ? "" : "What would lift it: " + c.lift_with + ".";
    return starts(c.id, "skin stress") ? advice_for_skin(l) : advice_for(c);
}

} // namespace thinskin::checks
