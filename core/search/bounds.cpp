// Notation: F whole force in the plane, P off the plane, M tilting moment, T and Q what one bolt bears in pull and shear, u utilisation.
#include "search/bounds.h"

#include "checks/checks.h"
#include "statics/door.h"
#include "statics/hand.h"

#include <algorithm>
#include <cmath>

namespace thinskin::search {

namespace {

bool starts(const std::string& text, const char* with) { return text.rfind(with, 0) == 0; }

/// 1 N of pull and of shear on every bolt of every bracket.
std::vector<results::FastenerForce> one_newton(const layout::Layout& l)
{
    std::vector<results::FastenerForce> out;
    for (const layout::Bracket& b : l.brackets)
        for (const layout::Stack& s : b.fasteners) {
            results::FastenerForce f;
            f.name = s.name;
            f.part = b.name;
            f.load_case = "one newton";
            f.tension_N = f.shear_x_N = f.row_shear_N = 1;
            out.push_back(f);
        }
    return out;
}

struct Ends { double foot = INFINITY, top = -INFINITY; };

Ends ends_of(const layout::Layout& l)
{
    Ends e;
    for (const layout::Bracket& b : l.brackets) {
        e.foot = std::min(e.foot, b.leg.from.y);
        e.top = std::max(e.top, b.leg.to.y);
    }
    return e;
}

/// Bolts of the bracket's smallest row: the one that may carry all of its shear.
double smallest_row(const layout::Bracket& b)
{
    double least = INFINITY;
    for (const layout::Stack& s : b.fasteners)
        least = std::min(least, static_cast<double>(std::count_if(b.fasteners.begin(), b.fasteners.end(), [&](const layout::Stack& o) { return std::abs(o.at.y - s.at.y) < 1; })));
    return least;
}

bool strapped_or_fitted(const layout::Layout& l)
{
    if (!l.straps.empty()) return true;
    return std::any_of(l.brackets.begin(), l.brackets.end(), [](const layout::Bracket& b) { return b.fasteners.empty() || b.fasteners.front().hardware.fitted; });
}

} // namespace

Asks asks(const results::Check& c)
{
    if (c.load_case == "geometry" || !c.has_numbers()) return Asks::neither;
    if (starts(c.id, "bolt tension/") || starts(c.id, "pull-through") || starts(c.id, "lying leg")) return Asks::pull;
    if (starts(c.id, "bolt shear/") || starts(c.id, "bearing")) return Asks::shear;
    return Asks::neither;
}

BoltCapacity strongest_bolt(const layout::Layout& l)
{
    const std::vector<results::FastenerForce> forces = one_newton(l);
    checks::Demands d;
    d.layout = &l;
    d.fasteners = &forces;
    // Rows of one fastener follow each other; the leg's own bolt name ends the id.
    std::vector<std::pair<std::string, BoltCapacity>> bolts;
    for (const layout::Bracket& b : l.brackets)
        for (const layout::Stack& s : b.fasteners) bolts.push_back({"/" + s.name, {INFINITY, INFINITY}});
    for (const results::Check& c : checks::fixing(d))
        for (auto& [name, one] : bolts) {
            const std::size_t at = c.id.find(name);
            if (at == std::string::npos || (at + name.size() < c.id.size() && c.id[at + name.size()] != '/')) continue;
            if (asks(c) == Asks::pull) one.pull = std::min(one.pull, c.capacity);
            if (asks(c) == Asks::shear) one.shear = std::min(one.shear, c.capacity);
        }
    if (bolts.empty()) return {}; // feet of an item: nothing is known here, and nothing is discarded
    BoltCapacity out{0, 0};
    for (const auto& b : bolts) out.pull = std::max(out.pull, b.second.pull), out.shear = std::max(out.shear, b.second.shear);
    return out;
}

std::optional<results::Check> broken_rule(const layout::Layout& l)
{
    const std::vector<results::FastenerForce> forces;
    const std::vector<results::MemberForce> members;
    const std::vector<results::EndForce> ends;
    const std::vector<results::RimStress> rims;
    checks::Demands d;
    d.layout = &l, d.fasteners = &forces, d.members = &members, d.ends = &ends, d.rims = &rims;
    for (const auto& group : {checks::fixing, checks::reinforcement})
        for (const results::Check& c : group(d))
            if (c.required && c.load_case == "geometry" && c.status == base::Status::fail && c.has_numbers()) return c;
    return std::nullopt;
}

std::vector<WholeDemand> whole_demands(const layout::Layout& l, const std::vector<results::LoadCase>& cases)
{
    std::vector<WholeDemand> out;
    const Ends e = ends_of(l);
    for (const results::LoadCase& lc : cases) {
        if (lc.on_item || l.brackets.empty()) continue; // the hand sum does not know the force
        const statics::HandFigures hand = statics::hand_figures(l, lc);
        double x = 0, y = 0;
        WholeDemand w;
        for (std::size_t i = 0; i < hand.brackets.size(); ++i) {
            const statics::BracketHand& b = hand.brackets[i];
            x += b.force_N[0], y += b.force_N[1], w.pull_N += b.force_N[2];
            w.about_foot_Nmm += b.moment_Nm * 1000 + b.force_N[2] * (l.brackets[i].leg.from.y - e.foot);
            w.about_top_Nmm += b.moment_top_Nm * 1000 + b.force_N[2] * (e.top - l.brackets[i].leg.to.y);
        }
        w.shear_N = std::hypot(x, y);
        out.push_back(w);
    }
    return out;
}

std::optional<double> bolts_bound(const layout::Layout& l, const std::vector<WholeDemand>& demands, const BoltCapacity& one)
{
    if (l.brackets.empty() || strapped_or_fitted(l)) return std::nullopt;
    const Ends e = ends_of(l);
    double in_rows = 0, bolts = 0, from_foot = 0, from_top = 0;
    for (const layout::Bracket& b : l.brackets) {
        in_rows += smallest_row(b);
        for (const layout::Stack& s : b.fasteners) bolts += 1, from_foot += s.at.y - e.foot, from_top += e.top - s.at.y;
    }
    double u = 0;
    for (const WholeDemand& w : demands)
        for (double share : {w.shear_N / (one.shear * in_rows), w.pull_N / (one.pull * bolts), w.about_foot_Nmm / (one.pull * from_foot), w.about_top_Nmm / (one.pull * from_top)})
            if (std::isfinite(share)) u = std::max(u, share);
    if (!(u > 0)) return std::nullopt;
    return 1 / (u * bound_slack) - 1;
}

std::optional<double> door_margin(const layout::Layout& l, const std::vector<results::LoadCase>& cases)
{
    if (!l.door) return std::nullopt;
    std::optional<double> least;
    for (const results::Check& c : statics::door_figures(l, cases).checks)
        if (c.required && c.has_numbers() && c.load_case != "geometry" && (!least || c.margin() < *least)) least = c.margin();
    return least;
}

} // namespace thinskin::search
