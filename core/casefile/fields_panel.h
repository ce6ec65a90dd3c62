#pragma once
#include "model/case.h"

/// Job, road, panel and door; see fields.h.
namespace thinskin::casefile {

template <class V> void fields(V& v, model::Job& j)
{
    v("title", j.title);
    v("number", j.number);
    v("vehicle", j.vehicle);
    v("prepared_by", j.prepared_by);
    v("notes", j.notes);
}

template <class V> void fields(V& v, model::DensityPoint& p)
{
    v("at", p.at);
    v("value", p.value);
}

template <class V> void fields(V& v, model::Road& r)
{
    v("surface", r.surface);
    v("basis", r.basis);
    v("distance_per_year", r.distance_per_year);
    v("life_distance", r.life_distance);
    v("pulse", r.pulse);
    v("roughness", r.roughness);
    v("density", r.density);
    v("speed", r.speed);
    v("load", r.load);
    v("wheelbase", r.wheelbase);
    v("overhang", r.overhang);
    v("damping", r.damping);
}

template <class V> void fields(V& v, model::Vehicle& x)
{
    v("payload_left", x.payload_left);
    v("rear_axle_plate", x.rear_axle_plate);
    v("rear_axle_weighed", x.rear_axle_weighed);
    v("front_axle_least", x.front_axle_least);
    v("front_axle_weighed", x.front_axle_weighed);
    v("source", x.source);
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
    v("turning", e.turning);
    v("gap", e.gap);
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

template <class V> void fields(V& v, model::OpeningEdge& e)
{
    v("section", e.section);
    v("material", e.material);
}

template <class V> void fields(V& v, model::Opening& o)
{
    v("name", o.name);
    v("box", o.box);
    v("corner_radius", o.corner_radius);
    v("edge", o.edge);
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
    v("openings", p.openings);
}

template <class V> void fields(V& v, model::HingeEvidence& e)
{
    v("kind", e.kind);
    v("mass", e.mass);
    v("at", e.at);
    v("state", e.state);
    v("note", e.note);
}

template <class V> void fields(V& v, model::SagTest& s)
{
    v("mass", s.mass);
    v("at", s.at);
    v("sag", s.sag);
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
    v("sag_test", h.sag_test);
}

template <class V> void fields(V& v, model::Latch& l)
{
    v("at", l.at);
    v("strength", l.strength);
    v("source", l.source);
}

template <class V> void fields(V& v, model::Slam& s)
{
    v("edge_speed", s.edge_speed);
    v("stop", s.stop);
}

template <class V> void fields(V& v, model::CheckStrap& s)
{
    v("lever", s.lever);
    v("height", s.height);
    v("holds", s.holds);
    v("strength", s.strength);
    v("stop_strength", s.stop_strength);
}

template <class V> void fields(V& v, model::EndStop& s)
{
    v("lever", s.lever);
    v("height", s.height);
    v("strength", s.strength);
}

template <class V> void fields(V& v, model::OpenDoor& o)
{
    v("angles", o.angles);
    v("slope", o.slope);
    v("wind", o.wind);
    v("edge_speed", o.edge_speed);
    v("stop", o.stop);
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
    v("check_strap", d.check_strap);
    v("end_stop", d.end_stop);
    v("open", d.open);
}

} // namespace thinskin::casefile
