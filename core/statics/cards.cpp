#include "statics/cards.h"

#include "base/quantity.h"
#include "statics/door_rules.h"
#include "statics/rules.h"

#include <cmath>
#include <limits>

namespace thinskin::statics {

namespace {

using base::Card;
using base::Label;
using base::Resistance;
using base::Symbol;
using Values = std::vector<double>;

constexpr double none = std::numeric_limits<double>::infinity();

/// Why the inputs cannot be used; empty when all is well.
std::string out_of_range(const std::vector<Symbol>& symbols, const Values& in)
{
    if (in.size() != symbols.size()) return "wrong number of inputs";
    for (std::size_t i = 0; i < in.size(); ++i)
        if (std::string why = base::outside(symbols[i], in[i]); !why.empty()) return why;
    return "";
}

Symbol at_least_zero(std::string name, std::string unit, std::string meaning) { return {std::move(name), std::move(unit), std::move(meaning), 0, none, false}; }
Symbol above_zero(std::string name, std::string unit, std::string meaning) { return {std::move(name), std::move(unit), std::move(meaning), 0, none, true}; }

/// One card: its symbols and its formula as a function of them.
struct Rule {
    const char* id;
    const char* title;
    const char* formula;
    const char* unit;
    const char* source;
    Label label;
    const char* range;
    const char* not_for;
};

Card card(const Rule& r, std::vector<Symbol> symbols, Resistance (*evaluate)(const Values&))
{
    Card c;
    c.id = r.id;
    c.title = r.title;
    c.formula = r.formula;
    c.unit = r.unit;
    c.rule = "statics";
    c.source = r.source;
    c.label = r.label;
    c.range = r.range;
    c.not_for = r.not_for;
    c.symbols = std::move(symbols);
    c.evaluate = evaluate;
    return c;
}

const std::vector<Symbol>& symbols_of(const char* id)
{
    for (const Card& c : cards())
        if (c.id == id) return c.symbols;
    static const std::vector<Symbol> empty;
    return empty;
}

/// Range check by the card's own symbols, then the number; a negative one (a bolt beyond the other end) is not covered.
template <class Number> Resistance evaluated(const char* id, const Values& in, Number number)
{
    const std::string bad = out_of_range(symbols_of(id), in);
    if (!bad.empty()) return base::not_covered(bad);
    return base::covered(number(in), 1);
}

double g() { return base::gravity_m_s2; }

Card couple(const char* id, const char* title, const char* formula, const char* arm, Resistance (*evaluate)(const Values&))
{
    return card({id, title, formula, "N", "moment equilibrium of the door about a hinge", Label::computed, "two hinges, or the outermost of more; rigid door",
                 "the vertical force and its sharing; a middle hinge takes no part in the couple"},
                {at_least_zero("k", "g", "vertical factor, weight included"), at_least_zero("m", "kg", "mass"), at_least_zero(arm, "mm", "distance of the mass"),
                 above_zero("h", "mm", "spacing of the outermost hinges")},
                evaluate);
}

Card latch()
{
    return card({"ST-3", "Latch or stop of a closed door", "R = F y/y_L", "N", "moment equilibrium about the hinge line", Label::computed,
                 "one latch; several share in an unknown way", "weight, which has no moment about an upright hinge line"},
                {at_least_zero("F", "N", "force on the mass, out of the door"), at_least_zero("y", "mm", "distance of the mass from the hinge line"),
                 above_zero("y_L", "mm", "distance of the latch from the hinge line")},
                [](const Values& in) { return evaluated("ST-3", in, [](const Values& v) { return v[0] * v[1] / v[2]; }); });
}

Card lever()
{
    return card({"ST-4", "Lever rule, upper bolt of two", "T = M d1/(d1^2 + d2^2)", "N", "rigid leg turning about its edge, bolts in proportion to their distance",
                 Label::computed, "leg bearing on something stiff (angle, frame); on bare skin the pivot moves inward", "prying; a skin that gives way under the edge"},
                {at_least_zero("M", "N mm", "moment about the pivot edge"), above_zero("d1", "mm", "far bolt from the edge"),
                 at_least_zero("d2", "mm", "near bolt from the edge")},
                [](const Values& in) {
                    return evaluated("ST-4", in, [](const Values& v) { return v[0] * v[1] / (v[1] * v[1] + v[2] * v[2]); });
                });
}

Card beam()
{
    return card({"ST-5", "End reaction of an angle as a simple beam", "R = F (L - a)/L", "N", "simple beam on its two end ports", Label::computed,
                 "both ends tied to the frame", "an angle that stops short of the frame: the skin holds it"},
                {at_least_zero("F", "N", "pull of a bolt"), at_least_zero("a", "mm", "distance of the bolt from this end"), above_zero("L", "mm", "distance of the end ports")},
                [](const Values& in) { return evaluated("ST-5", in, [](const Values& v) { return v[0] * (v[2] - v[1]) / v[2]; }); });
}

Card group()
{
    return card({"ST-6", "Bolt group, shear of the bolt at (x, y)", "F = ((Px/n - M y/J)^2 + (Py/n + M x/J)^2)^0.5", "N",
                 "elastic vector method, equal bolts, rigid plate", Label::published_read, "two or more bolts that are apart",
                 "clearance holes, where one bolt may take it all"},
                {{"Px", "N", "force along x", -none, none, false}, {"Py", "N", "force along y", -none, none, false}, {"M", "N mm", "moment about the centroid", -none, none, false},
                 {"n", "-", "number of bolts", 2, none, false}, {"x", "mm", "bolt from the centroid", -none, none, false}, {"y", "mm", "bolt from the centroid", -none, none, false},
                 above_zero("J", "mm2", "sum of squared distances")},
                [](const Values& in) {
                    return evaluated("ST-6", in, [](const Values& v) { return std::hypot(v[0] / v[3] - v[2] * v[5] / v[6], v[1] / v[3] + v[2] * v[4] / v[6]); });
                });
}

Card prying()
{
    return card({"ST-7", "Prying bound of a leg pulled at its heel", "T = F (1 + a/b)", "N", "lever about the toe", Label::computed,
                 "the most a bolt can take; a stiff arm or brace keeps the leg from turning", "the part of it that really arises: the solver finds that"},
                {at_least_zero("F", "N", "pull"), at_least_zero("a", "mm", "heel to bolt"), above_zero("b", "mm", "bolt to toe")},
                [](const Values& in) { return evaluated("ST-7", in, [](const Values& v) { return prying_bound({.pull = v[0], .a = v[1], .b = v[2]}); }); });
}

Card brace()
{
    return card({"ST-8", "Brace under a pinned arm", "N = M L/(H z), L = (H^2 + z^2)^0.5", "N", "moment equilibrium of the arm about its root", Label::computed,
                 "pins at all joints", "arm bending at the root, which takes a part of the moment in a welded bracket; the brace's own weight"},
                {at_least_zero("M", "N mm", "moment of item and arm about the arm's root"), above_zero("H", "mm", "rise of the brace"), above_zero("z", "mm", "reach of the brace")},
                [](const Values& in) { return evaluated("ST-8", in, [](const Values& v) { return brace_force({.root_moment = v[0], .rise = v[1], .reach = v[2]}); }); });
}

Card index()
{
    return card({"ST-9", "Hinge index, rear door", "U = F_n n/11000 + F_t n/9000 + F_y n/9000", "-", "loads: UN Regulation 11, 03 series, 6.1.5.1 and 6.1.5.3, read as extracts; adding the terms: engineering judgement",
                 Label::judgement, "one-time loads to separation; vertical figure for back doors only", "pillar and door sheet, wear, repeated load"},
                {at_least_zero("F_n", "N", "worst hinge, out of the door"), at_least_zero("F_t", "N", "worst hinge, across the door"),
                 at_least_zero("F_y", "N", "vertical on that hinge"), {"n", "-", "number of hinges", 1, none, false}},
                [](const Values& in) { return evaluated("ST-9", in, [](const Values& v) { return v[3] * (v[0] / 11000 + v[1] / 9000 + v[2] / 9000); }); });
}

Card inertia()
{
    return card({"ST-10", "Inertia of a loaded door about its hinge line", "I = m_d (w^2/12 + y_d^2) + m (y^2 + e^2)", "kg mm2", "parallel axes; leaf of even mass over its width",
                 Label::computed, "rigid leaf, item as a point", "the item's own inertia about its centre"},
                {at_least_zero("m_d", "kg", "bare door"), above_zero("w", "mm", "width of the leaf"), at_least_zero("y_d", "mm", "its centre from the hinge line"),
                 at_least_zero("m", "kg", "added mass"), at_least_zero("y", "mm", "its distance from the hinge line"), at_least_zero("e", "mm", "its distance off the pin")},
                [](const Values& in) {
                    return evaluated("ST-10", in, [](const Values& v) { return v[0] * (v[1] * v[1] / 12 + v[2] * v[2]) + v[3] * (v[4] * v[4] + v[5] * v[5]); });
                });
}

Symbol any(std::string name, std::string unit, std::string meaning) { return {std::move(name), std::move(unit), std::move(meaning), -none, none, false}; }

Card leaning()
{
    return card({"ST-11", "Torque of a loaded door on a slope, worst direction", "M = g sin(alpha) (S_y^2 + S_e^2)^0.5", "N mm", "moment of the weight about a leaning hinge line", Label::computed,
                 "rigid door, any opening angle, the slope in the direction that turns it most", "wind, which comes on top; sum of AC-19 over the masses, which is more: their radii do not point the same way"},
                {any("S_y", "kg mm", "sum of mass times distance from the hinge line"), any("S_e", "kg mm", "sum of mass times distance off the pin"), {"alpha", "rad", "slope", 0, 0.6, false}},
                [](const Values& in) { return evaluated("ST-11", in, [](const Values& v) { return leaning_torque({.kg_y = v[0], .kg_e = v[1], .alpha = v[2]}); }); });
}

Card turned()
{
    return card({"ST-12", "Force of a hinge on the body, door opened by theta: part out of the closed door", "F = F_t sin(theta) + F_n cos(theta)", "N", "rotation of a vector", Label::computed,
                 "the part along the closed door is F_t cos(theta) - F_n sin(theta)", "its size, which no angle changes"},
                {any("F_t", "N", "force on the body along the leaf, away from the hinge line"), any("F_n", "N", "force on the body out of the leaf's face"), {"theta", "rad", "opening", 0, 6.2832, false}},
                [](const Values& in) { return evaluated("ST-12", in, [](const Values& v) { return turned_force({.F_t = v[0], .F_n = v[1], .theta = v[2]})[1]; }); });
}

Card stop_of_open()
{
    return card({"ST-13", "Stop of a door flung open", "S = pi I v_edge/(2 D y_edge r)", "N", "angular impulse of a half-sine; shape and duration of a door's stop: common practice, no source", Label::common_practice,
                 "rigid door, no rebound; v_edge up to 5 m/s, D 1 .. 500 ms", "the wind that goes on pushing; a stop that is not at r"},
                {at_least_zero("I", "kg mm2", "inertia of everything on the door about the hinge line (ST-10)"), {"v_edge", "mm/s", "speed of the free edge", 0, 5000, true}, {"D", "s", "duration of the stop", 0.001, 0.5, false},
                 above_zero("y_edge", "mm", "distance of the free edge from the hinge line"), above_zero("r", "mm", "distance of the stop's line from the hinge line")},
                [](const Values& in) { return evaluated("ST-13", in, [](const Values& v) { return open_stop({.I_kg_mm2 = v[0], .v_edge_mm_s = v[1], .y_edge = v[3], .D_s = v[2], .r = v[4]}); }); });
}

Card give()
{
    return card({"ST-14", "Give of a hinge from a sag test", "c = s h^2/(2 m g y^2)", "mm/N", "AC-20 turned round", Label::computed, "rigid leaf on two hinges that give alike; drop read where the mass hangs",
                 "a leaf that bends itself, which makes c too large; free play of worn pins"},
                {at_least_zero("s", "mm", "drop"), above_zero("h", "mm", "spacing of the outermost hinges"), above_zero("m", "kg", "mass hung"), above_zero("y", "mm", "where it hung, from the hinge line")},
                [](const Values& in) { return evaluated("ST-14", in, [](const Values& v) { return hinge_give({.s = v[0], .h = v[1], .m = v[2], .y = v[3]}); }); });
}

Card rest_that_gives()
{
    return card({"ST-15", "Rest under a closed door, from measured gives", "V = max(0, 2 c y_s (T - T_b)/h - gap)/(2 c y_s^2/h^2 + 1/k)", "N", "two springs in line that meet after a gap; AC-21 with the sag of AC-20", Label::computed,
                 "rigid leaf; between no rest and the rigid bound T h/y_s, both of which are shown", "judging the hinges: a rest wears, and is gone when the door opens; a bare door that already sits hard on it, which gets more"},
                {at_least_zero("c", "mm/N", "give of one hinge with its sheet, sideways (ST-14)"), above_zero("y_s", "mm", "distance of the rest from the hinge line"), above_zero("h", "mm", "spacing of the outermost hinges"),
                 at_least_zero("T", "N", "hinge couple of everything in this load case (ST-1)"), at_least_zero("T_b", "N", "hinge couple of the bare door at rest"), at_least_zero("gap", "mm", "gap under the bare door as it hangs"),
                 above_zero("k", "N/mm", "stiffness of the rest")},
                [](const Values& in) {
                    return evaluated("ST-15", in, [](const Values& v) { return giving_rest({.c = v[0], .y_s = v[1], .h = v[2], .T = v[3], .T_b = v[4], .gap = v[5], .k = v[6]}); });
                });
}

} // namespace

const std::vector<Card>& cards()
{
    static const std::vector<Card> all{
        couple("ST-1", "Hinge couple in the plane of the door", "T = k m g y/h", "y",
               [](const Values& in) { return evaluated("ST-1", in, [](const Values& v) { return v[0] * v[1] * g() * v[2] / v[3]; }); }),
        couple("ST-2", "Hinge couple out of the plane of the door", "N = k m g e/h", "e",
               [](const Values& in) { return evaluated("ST-2", in, [](const Values& v) { return v[0] * v[1] * g() * v[2] / v[3]; }); }),
        latch(), lever(), beam(), group(), prying(), brace(), index(), inertia(), leaning(), turned(), stop_of_open(), give(), rest_that_gives()};
    return all;
}

} // namespace thinskin::statics
