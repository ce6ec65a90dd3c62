#include "base/largest.h"
#include "checks/bar_rows.h"
#include "checks/checks.h"
#include "checks/fastener_rows.h"

namespace thinskin::checks {

namespace {

int side_index(const std::string& side) { return side == "left" ? 0 : side == "right" ? 1 : side == "bottom" ? 2 : 3; }

std::vector<results::FastenerForce> end_forces(const Demands& d, const std::string& angle, const std::string& side, const std::string& fastener)
{
    std::vector<results::FastenerForce> out;
    for (const results::EndForce& e : *d.ends)
        if (e.name == angle && e.end == side)
            for (const results::FastenerForce& f : e.fasteners)
                if (f.name == fastener) out.push_back(f);
    return out;
}

/// Can the fasteners hold a moment about the panel edge?
bool one_behind_the_other(const layout::Angle& a, const layout::MemberEnd& end)
{
    const auto along = [&](const layout::Stack& f) { return f.at.x * a.bar.along.x + f.at.y * a.bar.along.y; };
    for (const layout::Stack& f : end.fasteners)
        if (std::abs(along(f) - along(end.fasteners.front())) > 2 * f.hardware.d) return true;
    return false;
}

void end_rows(const Demands& d, const layout::Angle& a, const layout::MemberEnd& end, std::vector<results::Check>& out)
{
    const std::string name = a.bar.name + " " + end.side;
    const Place place{"end fixing/" + name, "reinforcement", a.bar.name, "end fixing of " + name, false, fmt::format("reinforcement.angles.{}.ends.{}.fasteners", a.bar.name, end.side), ""};
    if (end.fasteners.empty()) {
        out.push_back(not_covered(place, "the end is tied to the frame, but by which fasteners is not said"));
        return;
    }
    if (!d.layout->frames[static_cast<std::size_t>(side_index(end.side))].inner) {
        Place p = place;
        p.lift_with = "panel.frame.inner";
        out.push_back(not_covered(p, "the sheet of the frame that the end is fixed to is not given"));
        return;
    }
    if (end.rotational_stiffness.value_or(0) > 0 && !one_behind_the_other(a, end)) {
        out.push_back(not_covered(place, "the end is said not to turn freely; one fastener, or fasteners side by side, hold no moment: it takes two, one behind the other along the angle"));
        return;
    }
    for (const layout::Stack& s : end.fasteners) {
        const auto rows = stack_rows({&s, "reinforcement", a.bar.name, end_forces(d, a.bar.name, end.side, s.name)});
        out.insert(out.end(), rows.begin(), rows.end());
    }
}

/// Free length between the places where the angle is held.
double unbraced(const layout::Angle& a)
{
    if (!a.ends[0].tied || !a.ends[1].tied) return a.bar.length();
    return std::hypot(a.ends[1].port.x - a.ends[0].port.x, a.ends[1].port.y - a.ends[0].port.y);
}

std::vector<results::FastenerForce> of_fastener(const Demands& d, const std::string& name)
{
    std::vector<results::FastenerForce> out;
    for (const auto& f : *d.fasteners)
        if (f.name == name) out.push_back(f);
    return out;
}

/// At the bolts of the brackets and at the end's own fasteners.
void lying_leg_rows(const Demands& d, const layout::Angle& a, std::vector<results::Check>& out)
{
    std::vector<const layout::Stack*> on_bar;
    for (const layout::Stack* s : d.layout->outer_stacks())
        if (s->plies.back().part == a.bar.name || s->plies.front().part == a.bar.name) on_bar.push_back(s);
    const std::size_t of_brackets = on_bar.size();
    for (const layout::MemberEnd& e : a.ends)
        for (const layout::Stack& s : e.fasteners) on_bar.push_back(&s);
    for (std::size_t i = 0; i < on_bar.size(); ++i) {
        const layout::Stack& s = *on_bar[i];
        const Place place{"lying leg/" + a.bar.name + "/" + s.name, "reinforcement", a.bar.name, fmt::format("lying leg of {} at {}", a.bar.name, s.name), false, "", ""};
        std::vector<results::FastenerForce> forces = i < of_brackets ? of_fastener(d, s.name) : std::vector<results::FastenerForce>{};
        if (i >= of_brackets)
            for (const layout::MemberEnd& e : a.ends)
                for (const auto& f : end_forces(d, a.bar.name, e.side, s.name)) forces.push_back(f);
        out.push_back(lying_leg_row(place, a.bar, s, on_bar, forces));
    }
}

void frame_member_rows(const Demands& d, std::vector<results::Check>& out)
{
    static const char* sides[] = {"left", "right", "bottom", "top"};
    for (std::size_t i = 0; i < 4; ++i) {
        const layout::Frame& f = d.layout->frames[i];
        const std::string name = fmt::format("frame {}", sides[i]);
        const auto forces = of_member(*d.members, name);
        if (forces.empty()) continue;
        double worst = 0;
        for (const auto& m : forces) base::keep_largest(worst, m.shear_N);
        if (!f.section || !f.inner) {
            out.push_back(not_covered({"frame member/" + name, "reinforcement", name, "bending of the frame member " + name, false, "panel.frame.section", ""},
                                      fmt::format("the angles pull on it with up to {:.0f} N; its section is not given", worst)));
            continue;
        }
        auto rows = bar_rows({name, "reinforcement", name, &*f.section, &f.inner->material, 0, forces});
        out.insert(out.end(), rows.begin(), rows.end());
    }
}

} // namespace

std::vector<results::Check> reinforcement(const Demands& d)
{
    std::vector<results::Check> out;
    for (const layout::Angle& a : d.layout->angles) {
        const auto rows = bar_rows({a.bar.name, "reinforcement", a.bar.name, &a.bar.section, &a.bar.material, unbraced(a), of_member(*d.members, a.bar.name)});
        out.insert(out.end(), rows.begin(), rows.end());
        lying_leg_rows(d, a, out);
        for (const layout::MemberEnd& e : a.ends)
            if (e.tied) end_rows(d, a, e, out);
    }
    rib_rows(d, out);
    strap_rows(d, out);
    plate_rows(d, out);
    frame_member_rows(d, out);
    return out;
}

} // namespace thinskin::checks
