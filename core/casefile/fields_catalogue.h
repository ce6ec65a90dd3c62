#pragma once
#include "model/own_rows.h"

/// Rows of the case's own; see fields.h.
namespace thinskin::casefile {

template <class V> void origin(V& v, model::OwnRow& r)
{
    v("source", r.source);
    v("label", r.label);
}

template <class V> void fields(V& v, model::OwnMaterial& m)
{
    v("name", m.name);
    v("kind", m.kind);
    v("product", m.product);
    v("from", m.from);
    v("to", m.to);
    v("yield", m.yield);
    v("tensile", m.tensile);
    origin(v, m);
}

template <class V> void fields(V& v, model::OwnBoltGrade& g)
{
    v("name", g.name);
    v("yield", g.yield);
    v("tensile", g.tensile);
    origin(v, g);
}

template <class V> void fields(V& v, model::OwnScrew& s)
{
    v("name", s.name);
    v("diameter", s.diameter);
    v("head", s.head);
    origin(v, s);
}

template <class V> void fields(V& v, model::OwnRivet& r)
{
    v("name", r.name);
    v("diameter", r.diameter);
    v("head", r.head);
    v("shear", r.shear);
    v("tension", r.tension);
    origin(v, r);
}

template <class V> void fields(V& v, model::OwnRoad& r)
{
    v("name", r.name);
    v("down", r.down);
    v("up", r.up);
    v("lateral", r.lateral);
    v("fore_aft", r.fore_aft);
    origin(v, r);
}

template <class V> void fields(V& v, model::OwnPulse& p)
{
    v("name", p.name);
    v("shape", p.shape);
    v("peak", p.peak);
    v("duration", p.duration);
    origin(v, p);
}

template <class V> void fields(V& v, model::OwnRows& r)
{
    v("file", r.file);
    v("materials", r.materials);
    v("bolt_grades", r.bolt_grades);
    v("screws", r.screws);
    v("rivets", r.rivets);
    v("roads", r.roads);
    v("base_pulses", r.base_pulses);
}

} // namespace thinskin::casefile
