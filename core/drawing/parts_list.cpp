#include "drawing/canvas.h"
#include "drawing/kinds.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace thinskin::drawing {

namespace {

std::string mm(double v) { return millimetres(v); }
std::string place(Point p) { return fmt::format("[{}, {}]", mm(p.x), mm(p.y)); }
std::string place(const layout::Vec3& p) { return fmt::format("[{}, {}, {}]", mm(p[0]), mm(p[1]), mm(p[2])); }
Point middle(Point a, Point b, double f = 0.5) { return {a.x + f * (b.x - a.x), a.y + f * (b.y - a.y)}; }

std::string seen(model::Seen s) { return s == model::Seen::seen ? "seen" : s == model::Seen::tapped ? "found by tapping" : "only assumed"; }

class List {
public:
    explicit List(const layout::Layout& l) : l_(l) {}

    void row(const Part& part, const std::string& name, const std::string& text, const std::string& checked_as, std::vector<Point> e, std::vector<Point> s)
    {
        out.push_back({{static_cast<int>(out.size()) + 1, part, name, text, checked_as}, std::move(e), std::move(s)});
    }

    void skin()
    {
        const layout::Sheet& k = l_.skin;
        row({PartKind::skin, "skin"}, "skin", fmt::format("{} x {} mm, {} {:.2f} mm, {:.2f} mm without its coating", mm(l_.width), mm(l_.height), k.material.name, k.nominal, k.core), "skin",
            {{0.5 * l_.width, 0.9 * l_.height}}, {{-k.nominal / 2, 0.9 * l_.height}});
    }

    void frames()
    {
        static constexpr std::array<const char*, 4> names{"frame left", "frame right", "frame bottom", "frame top"};
        for (std::size_t i = 0; i < 4; ++i) {
            const layout::Frame& f = l_.frames[i];
            if (!f.given) continue;
            std::string text = fmt::format("{} mm wide, {} mm deep", mm(f.width), mm(f.depth));
            if (!f.section_text.empty()) text += ", " + f.section_text;
            if (f.inner) text += fmt::format(", inner sheet {} {:.2f} mm", f.inner->material.name, f.inner->nominal);
            const double w = f.width / 2;
            const std::array<Point, 4> at{Point{w, 0.86 * l_.height}, {l_.width - w, 0.86 * l_.height}, {0.6 * l_.width, w}, {0.6 * l_.width, l_.height - w}};
            row({PartKind::frame, names[i] + 6}, names[i], text + "; " + seen(f.seen), names[i], {at[i]}, {});
        }
    }

    void behind()
    {
        const double z = -l_.skin.nominal;
        for (const layout::Opening& o : l_.openings)
            row({PartKind::skin, o.name}, o.name, fmt::format("opening, {} x {} mm from {}, {}", mm(o.high.x - o.low.x), mm(o.high.y - o.low.y), place(o.low), o.stiffened ? "edge stiffened" : "edge free"), "", {{(2 * o.low.x + o.high.x) / 3, (o.low.y + o.high.y) / 2}}, {});
        for (const layout::Rib& r : l_.ribs)
            row({PartKind::rib, r.name}, r.name, rib_text(r), r.name,
                {middle(r.from, r.to, 0.7)}, {});
        for (const layout::Angle& a : l_.angles) {
            const Point at = a.bar.on_bolt_line(0.55 * a.bar.length());
            row({PartKind::angle, a.bar.name}, a.bar.name, angle_text(a), a.bar.name, {at}, {{a.bar.face_z + a.bar.standing * 0.7 * a.bar.section.h, a.bar.heel(0.5 * a.bar.length()).y}});
        }
        for (const layout::Strap& t : l_.straps)
            row({PartKind::strap, t.name}, t.name, fmt::format("strap, {}, {}, from {} to {} mm, slack {} mm", t.section.designation, t.material.name, place(t.from), place(t.to), mm(t.slack)), t.name,
                {{0.6 * t.from[0] + 0.4 * t.to[0], 0.6 * t.from[1] + 0.4 * t.to[1]}}, {{0.6 * t.from[2] + 0.4 * t.to[2], 0.6 * t.from[1] + 0.4 * t.to[1]}});
        if (!l_.source) return;
        const auto box = [&](PartKind kind, const std::string& name, const std::string& what, const model::Box2& b, model::Face face) {
            const Point low{b.from.x.value, b.from.y.value}, high{low.x + b.size.x.value, low.y + b.size.y.value};
            row({kind, name}, name, fmt::format("{}, {} the skin, from {} to {} mm", what, face == model::Face::inside ? "behind" : "on", place(low), place(high)), name, {middle(low, high, 0.85)}, {{z, high.y}});
        };
        for (const auto& p : l_.source->reinforcement.backing_plates) box(PartKind::plate, p.name, fmt::format("plate {} mm, {}", mm(p.thickness.value), p.material), p.box, p.face);
        for (const auto& b : l_.source->reinforcement.boards) box(PartKind::board, b.name, fmt::format("board {} mm, {}", mm(b.thickness.value), b.wood), b.box, b.face);
    }

    void brackets()
    {
        for (const layout::Bracket& b : l_.brackets) {
            std::string text = fmt::format("leg {} {}, y {} to {} mm, bolt line x {}; arm {} {}, {} mm long, top at y {}", b.leg.section.designation, b.leg.material.name, mm(b.leg.from.y), mm(b.leg.to.y),
                                           mm(b.x), b.arm_section.designation, b.arm_material.name, mm(b.arm_length), mm(b.arm_top_y));
            if (b.has_brace) text += fmt::format("; brace {} {}, from y {} to {} mm out on the arm", b.brace_section.designation, b.brace_material.name, mm(b.brace_from_y), mm(b.brace_to_z));
            const double y = b.leg.from.y + 0.45 * (b.leg.to.y - b.leg.from.y);
            row({PartKind::bracket, b.name}, "bracket " + b.name, text, b.name, {{b.web_x, y}}, {{0.6 * b.arm_length, b.arm_top_y - 0.5 * b.arm_section.h}});
        }
    }

    void hung()
    {
        if (!l_.item) return;
        const layout::Item& i = *l_.item;
        const Part part{PartKind::item, i.name};
        std::string text = fmt::format("{} kg (up to {:.1f} kg counted), centre of mass {} mm", mm(i.mass), i.design_mass(), place(i.centre));
        if (i.has_box) text += fmt::format(", box {} x {} x {} mm", mm(i.box_size[0]), mm(i.box_size[1]), mm(i.box_size[2]));
        const Point e = i.has_box ? Point{i.box_from[0] + 0.8 * i.box_size[0], i.box_from[1] + 0.75 * i.box_size[1]} : Point{i.centre[0], i.centre[1]};
        const Point s = i.has_box ? Point{i.box_from[2] + 0.75 * i.box_size[2], i.box_from[1] + 0.75 * i.box_size[1]} : Point{i.centre[2], i.centre[1]};
        row(part, i.name, text, i.name, {e}, {s});
    }

    void door()
    {
        if (!l_.door || !l_.door->has_hinges || l_.door->hinge_heights.empty()) return;
        const layout::Door& d = *l_.door;
        std::string heights;
        for (double y : d.hinge_heights) heights += (heights.empty() ? "" : ", ") + mm(y);
        row({PartKind::hinge, "hinges"}, "hinges", fmt::format("heights {} mm, pin line at x {}, z {} mm", heights, mm(d.pin_x), mm(d.pin_z)), "hinges", {{d.pin_x, d.hinge_heights.back()}}, {{d.pin_z, d.hinge_heights.back()}});
    }

    /// Check strap and end stop: where their force acts and what is known of them.
    void stays()
    {
        if (!l_.door || !l_.door->has_hinges) return;
        const layout::Door& d = *l_.door;
        const auto stay = [&](const char* name, double lever, double height, const std::string& known) {
            const double x = d.pin_x + (d.hinges_right ? -lever : lever);
            row({PartKind::check_strap, name}, name, fmt::format("line {} mm off the hinge line, height {} mm{}", mm(lever), mm(height), known), name, {{x, height}}, {{-l_.skin.nominal, height}});
        };
        if (d.strap) stay("check strap", d.strap->lever, d.strap->height, d.strap->holds ? fmt::format(", holds {:.0f} N m", *d.strap->holds / 1000) : "");
        if (d.end_stop) stay("end stop", d.end_stop->lever, d.end_stop->height, d.end_stop->strength ? fmt::format(", bears {:.0f} N", *d.end_stop->strength) : "");
    }

    /// One row for each kind of fastener, with the names of all that are of it.
    void fasteners()
    {
        struct Kind { const layout::Stack* first; std::string names; int count; bool end; };
        std::vector<Kind> kinds;
        const auto add = [&kinds](const layout::Stack& s, bool end) {
            auto k = std::find_if(kinds.begin(), kinds.end(), [&](const Kind& x) { return x.first->hardware.kind == s.hardware.kind && x.end == end; });
            if (k == kinds.end()) kinds.push_back({&s, s.name, 1, end});
            else {
                k->names += ", " + s.name;
                ++k->count;
            }
        };
        for (const layout::Stack* s : l_.outer_stacks()) add(*s, false);
        for (const layout::MemberEnd* e : l_.member_ends())
            for (const layout::Stack& s : e->fasteners) add(s, true);
        for (const layout::Strap& t : l_.straps)
            for (const layout::StrapEnd& e : t.ends)
                for (const layout::Stack& s : e.fasteners) add(s, true);
        for (const layout::Plate& p : l_.plates)
            for (const layout::PlateFastener& f : p.fasteners) add(f.stack, !f.side.empty());
        for (const Kind& k : kinds)
            row({k.end ? PartKind::end_fixing : PartKind::fastener, k.first->hardware.kind}, k.first->hardware.kind, fastener_text(k.first->hardware, k.count, k.names), "", {k.first->at}, {});
    }

    void gauges()
    {
        if (!l_.source) return;
        for (const auto& g : l_.source->gauges)
            row({PartKind::gauge, g.name}, "gauge " + g.name, fmt::format("at {} mm, movement relative to the {}", place(Point{g.at.x.value, g.at.y.value}), g.relative_to), "", {{g.at.x.value, g.at.y.value}}, {});
    }

    std::vector<Numbered> out;

private:
    static std::string rib_text(const layout::Rib& r)
    {
        std::string text = fmt::format("rib, {}, {}, from {} to {} mm; {}", r.section.designation, r.material.name, place(r.from), place(r.to), seen(r.seen));
        for (const layout::MemberEnd& e : r.ends)
            if (e.tied) text += fmt::format("; {} end fixed to the frame by {}{}", e.side, e.fasteners.size(), e.turning_fixed ? " so that it does not turn" : "");
        return text;
    }

    static std::string angle_text(const layout::Angle& a)
    {
        std::string text = fmt::format("angle behind the skin, {}, {}, bolt line from {} to {} mm", a.bar.section.designation, a.bar.material.name, place(a.bar.from), place(a.bar.to));
        if (!a.inside) text.replace(text.find("behind"), 6, "on");
        for (const layout::MemberEnd& e : a.ends) text += fmt::format("; {} end {}", e.side, e.tied ? fmt::format("tied to the frame by {}", e.fasteners.size()) : "free");
        return text;
    }

    static std::string fastener_text(const layout::Hardware& w, int count, const std::string& names)
    {
        std::string text = fmt::format("{} off, {} {}", count, type_of(w.type), w.size);
        if (!w.grade.empty()) text += " " + w.grade;
        if (w.hole > 0) text += fmt::format(", hole {} mm", mm(w.hole));
        if (w.head_washer) text += fmt::format(", head washer {}x{}", mm(w.head_washer->diameter), mm(w.head_washer->thickness));
        if (w.nut_washer) text += fmt::format(", nut washer {}x{}", mm(w.nut_washer->diameter), mm(w.nut_washer->thickness));
        return text + ": " + names;
    }

    const layout::Layout& l_;
};

} // namespace

std::vector<Numbered> parts_list(const layout::Layout& l)
{
    List list(l);
    list.skin();
    list.frames();
    list.behind();
    list.brackets();
    list.fasteners();
    list.hung();
    list.door();
    list.stays();
    list.gauges();
    return std::move(list.out);
}

std::vector<Label> names(const layout::Layout& l, double h)
{
    std::vector<Label> all;
    const auto add = [&](const std::string& name, Point at, double clear) { all.push_back({at, name, {PartKind::fastener, name}, 0.95 * h, clear, false}); };
    for (const layout::Stack* s : l.outer_stacks()) add(s->name, s->at, s->hardware.head_washer ? s->hardware.head_washer->diameter / 2 : s->hardware.d);
    return all;
}

} // namespace thinskin::drawing
