#pragma once
#include "model/case.h"

/// Item, brackets, fasteners and reinforcement; see fields.h.
namespace thinskin::casefile {

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
    v("name", f.name);
    v("at", f.at);
    v("use", f.use);
    v("foot", f.foot);
}

template <class V> void fields(V& v, model::ItemLoad& l)
{
    v("name", l.name);
    v("force", l.force);
    v("at", l.at);
    v("both_ways", l.both_ways);
    v("wind", l.wind);
}

template <class V> void fields(V& v, model::Person& p)
{
    v("at", p.at);
    v("mass", p.mass);
    v("allowed", p.allowed);
}

template <class V> void fields(V& v, model::Tether& t)
{
    v("tied_to", t.tied_to);
    v("slack", t.slack);
    v("length", t.length);
    v("stretch", t.stretch);
    v("stiffness", t.stiffness);
    v("strength", t.strength);
    v("anchor_strength", t.anchor_strength);
    v("source", t.source);
}

template <class V> void fields(V& v, model::Item& i)
{
    v("name", i.name);
    v("mass", i.mass);
    v("mass_tolerance", i.mass_tolerance);
    v("snow", i.snow);
    v("water", i.water);
    v("centre_of_mass", i.centre_of_mass);
    v("box", i.box);
    v("running_frequency", i.running_frequency);
    v("running_acceleration", i.running_acceleration);
    v("running_time_per_year", i.running_time_per_year);
    v("natural_frequency", i.natural_frequency);
    v("fixings", i.fixings);
    v("loads", i.loads);
    v("person", i.person);
    v("air_speed", i.air_speed);
    v("tether", i.tether);
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
    v("countersink", k.countersink);
    v("fit", k.fitted);
    v("sleeve", k.sleeve);
    v("head_diameter", k.head_diameter);
    v("flange", k.flange);
    v("shear_strength", k.shear_strength);
    v("tension_strength", k.tension_strength);
    v("sheet_strength", k.sheet_strength);
    v("strength_source", k.strength_source);
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

} // namespace thinskin::casefile
