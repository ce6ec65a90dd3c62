#pragma once
#include "model/case.h"

/// Which key belongs to which field, once for reader and writer. What a key means (unit, default, range, words) is the
/// schema's business; the order here is the order there. A visitor offers
///   v(key, field)               a value, a block, a list of blocks
///   v.inside(key, f)            a block that has no struct of its own
///   v.unless_copy(is_copy, f)   keys that a copy takes from its original
///   v.ends, v.frames, v.rest, v.kinds   the shapes that are not plain blocks
namespace thinskin::casefile {

template <class V> void fields(V& v, model::Job& j)
{
    v("title", j.title);
    v("number", j.number);
    v("vehicle", j.vehicle);
    v("prepared_by", j.prepared_by);
    v("notes", j.notes);
}

template <class V> void fields(V& v, model::Road& r)
{
    v("surface", r.surface);
    v("basis", r.basis);
    v("distance_per_year", r.distance_per_year);
}

template <class V> void fields(V& v, model::Sheet& s)
{
    v("material", s.material);
    v("thickness", s.thickness);
    v("coating", s.coating);
    if (v.has("crown")) v("crown", s.crown); // a frame's inner sheet has none
}

template <class V> void fields(V& v, model::EdgeCondition& e) { v("rotational_stiffness", e.rotational_stiffness); }

template <class V> void fields(V& v, model::Frame& f)
{
    v("width", f.width);
    v("depth", f.depth);
    v("inner", f.inner);
    v("section", f.section);
    v("seen", f.seen);
}

template <class V> void fields(V& v, model::EndFastener& f)
{
    v("name", f.name);
    v("at", f.at);
    v("use", f.use);
}

template <class V> void fields(V& v, model::MemberEnd& e)
{
    v("to", e.to);
    v("fasteners", e.fasteners);
    v("rotational_stiffness", e.rotational_stiffness);
}

template <class V> void fields(V& v, model::Rib& r)
{
    v("name", r.name);
    v("from", r.from);
    v("to", r.to);
    v("section", r.section);
    v("material", r.material);
    v("lying", r.lying);
    v("seen", r.seen);
    v.ends("ends", r.ends, r.from, r.to);
}

template <class V> void fields(V& v, model::Cavity& c)
{
    v("depth", c.depth);
    v("inner_panel", c.inner_panel);
}

template <class V> void fields(V& v, model::Panel& p)
{
    v("kind", p.kind);
    v("faces", p.faces);
    v("width", p.width);
    v("height", p.height);
    v("skin", p.skin);
    v.inside("edges", [&] {
        v("left", p.edges[static_cast<std::size_t>(model::Side::left)]);
        v("right", p.edges[static_cast<std::size_t>(model::Side::right)]);
        v("bottom", p.edges[static_cast<std::size_t>(model::Side::bottom)]);
        v("top", p.edges[static_cast<std::size_t>(model::Side::top)]);
    });
    v("edges_in_plane", p.edges_in_plane);
    v.frames("frame", p.frame);
    v("cavity", p.cavity);
    v("ribs", p.ribs);
}

template <class V> void fields(V& v, model::HingeEvidence& e)
{
    v("kind", e.kind);
    v("mass", e.mass);
    v("at", e.at);
    v("state", e.state);
    v("note", e.note);
}

template <class V> void fields(V& v, model::Hinges& h)
{
    v("side", h.side);
    v("heights", h.heights);
    v.inside("pin", [&] {
        v("x", h.pin_x);
        v("z", h.pin_z);
    });
    v("evidence", h.evidence);
}

template <class V> void fields(V& v, model::Latch& l) { v("at", l.at); }

template <class V> void fields(V& v, model::Slam& s)
{
    v("edge_speed", s.edge_speed);
    v("stop", s.stop);
}

template <class V> void fields(V& v, model::Door& d)
{
    v("mass", d.mass);
    v("centre_of_mass", d.centre_of_mass);
    v("hinges", d.hinges);
    v("latches", d.latches);
    v.rest("rest", d.rest);
    v("opening_angle", d.opening_angle);
    v("slam", d.slam);
}

template <class V> void fields(V& v, model::Box3& b)
{
    v("from", b.from);
    v("size", b.size);
}

template <class V> void fields(V& v, model::Box2& b)
{
    v("from", b.from);
    v("size", b.size);
}

template <class V> void fields(V& v, model::ItemFixing& f)
{
    v("at", f.at);
    v("use", f.use);
    v("foot", f.foot);
}

template <class V> void fields(V& v, model::Item& i)
{
    v("name", i.name);
    v("mass", i.mass);
    v("mass_tolerance", i.mass_tolerance);
    v("centre_of_mass", i.centre_of_mass);
    v("box", i.box);
    v("running_frequency", i.running_frequency);
    v("fixings", i.fixings);
}

template <class V> void fields(V& v, model::Leg& l)
{
    v("from", l.from);
    v("to", l.to);
    v("section", l.section);
    v("material", l.material);
    v("lying", l.lying);
    v("gauge", l.gauge);
}

template <class V> void fields(V& v, model::Arm& a)
{
    v("at", a.at);
    v("length", a.length);
    v("section", a.section);
    v("material", a.material);
}

template <class V> void fields(V& v, model::Brace& b)
{
    v("from", b.from);
    v("to_arm", b.to_arm);
    v("section", b.section);
    v("material", b.material);
}

template <class V> void fields(V& v, model::JointWeld& j)
{
    v("weld", j.weld);
    v("bolt", j.bolt);
}

template <class V> void fields(V& v, model::Joints& j)
{
    v("arm_leg", j.arm_leg);
    v("brace_leg", j.brace_leg);
    v("brace_arm", j.brace_arm);
}

template <class V> void fields(V& v, model::Mount& m)
{
    v("at", m.at);
    v("use", m.use);
    v("kind", m.kind);
    v("stiffness", m.stiffness);
}

template <class V> void fields(V& v, model::Fastener& f)
{
    v("name", f.name);
    v("at", f.at);
    v("use", f.use);
}

template <class V> void fields(V& v, model::Bracket& b)
{
    v("name", b.name);
    v("copy_of", b.copy_of);
    v("mirror_of", b.mirror_of);
    v("x", b.x);
    v("rename", b.rename);
    v.unless_copy(!b.copy_of.empty() || !b.mirror_of.empty(), [&] {
        v("leg", b.leg);
        v("arm", b.arm);
        v("brace", b.brace);
        v("joints", b.joints);
        v("mounts", b.mounts);
        v("fasteners", b.fasteners);
    });
}

template <class V> void fields(V& v, model::FastenerKind& k)
{
    v("type", k.type);
    v("size", k.size);
    v("grade", k.grade);
    v("head", k.head);
    v("head_washer", k.head_washer);
    v("nut_washer", k.nut_washer);
    v("hole", k.hole);
    v("fit", k.fitted);
    v("sleeve", k.sleeve);
}

template <class V> void fields(V& v, model::Angle& a)
{
    v("name", a.name);
    v("copy_of", a.copy_of);
    v("from", a.from);
    v.unless_copy(!a.copy_of.empty(), [&] {
        v("to", a.to);
        v("gauge", a.gauge);
        v("section", a.section);
        v("material", a.material);
        v("face", a.face);
        v("lying", a.lying);
        v("seen", a.seen);
        v.ends("ends", a.ends, a.from, a.to ? *a.to : a.from);
    });
}

template <class V> void fields(V& v, model::BackingPlate& p)
{
    v("name", p.name);
    v("box", p.box);
    v("thickness", p.thickness);
    v("material", p.material);
    v("face", p.face);
    v("fasteners", p.fasteners);
}

template <class V> void fields(V& v, model::Strap& s)
{
    v("name", s.name);
    v("from", s.from);
    v("to", s.to);
    v("section", s.section);
    v("material", s.material);
    v("slack", s.slack);
    v.ends("ends", s.ends, model::Point2{s.from.x, s.from.y}, model::Point2{s.to.x, s.to.y});
}

template <class V> void fields(V& v, model::Board& b)
{
    v("name", b.name);
    v("box", b.box);
    v("thickness", b.thickness);
    v("wood", b.wood);
    v("face", b.face);
    v("fasteners", b.fasteners);
}

template <class V> void fields(V& v, model::Reinforcement& r)
{
    v("angles", r.angles);
    v("backing_plates", r.backing_plates);
    v("straps", r.straps);
    v("boards", r.boards);
}

template <class V> void fields(V& v, model::NoDrill& z)
{
    v.inside("circle", [&] {
        v("at", z.at);
        v("radius", z.radius);
    });
    v("why", z.why);
}

template <class V> void fields(V& v, model::PanelForce& f)
{
    v("at", f.at);
    v("force", f.force);
    v("spread_over", f.spread_over);
    v("when", f.when);
}

template <class V> void fields(V& v, model::PanelPressure& p)
{
    v("over", p.over);
    v("value", p.value);
    v("when", p.when);
}

template <class V> void fields(V& v, model::PanelMass& m)
{
    v("at", m.at);
    v("mass", m.mass);
}

template <class V> void fields(V& v, model::Gauge& g)
{
    v("name", g.name);
    v("at", g.at);
    v("relative_to", g.relative_to);
}

template <class V> void fields(V& v, model::Case& c)
{
    v("format", c.format);
    v("job", c.job);
    v("rules", c.rules);
    v("road", c.road);
    v("panel", c.panel);
    v("door", c.door);
    v("item", c.item);
    v("brackets", c.brackets);
    v.kinds("fastener_kinds", c.fastener_kinds);
    v("reinforcement", c.reinforcement);
    v("no_drill", c.no_drill);
    v("forces", c.forces);
    v("pressures", c.pressures);
    v("masses", c.masses);
    v("gauges", c.gauges);
    v.inside("analysis", [&] { v("skin", c.skin); });
}

} // namespace thinskin::casefile
