#pragma once
#include "casefile/fields_catalogue.h"
#include "casefile/fields_panel.h"
#include "casefile/fields_parts.h"
#include "model/case.h"

/// Which key belongs to which field, once for reader and writer. What a key means (unit, default, range, words) is the
/// schema's business; the order here is the order there. A visitor offers
///   v(key, field)               a value, a block, a list of blocks
///   v.inside(key, f)            a block that has no struct of its own
///   v.unless_copy(is_copy, f)   keys that a copy takes from its original
///   v.ends, v.frames, v.rest, v.kinds   the shapes that are not plain blocks
namespace thinskin::casefile {

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

template <class V> void fields(V& v, model::KeepOut& k)
{
    v("box", k.box);
    v("why", k.why);
}

template <class V> void fields(V& v, model::Propose& p)
{
    v("margin", p.margin);
    v("added_mass", p.added_mass);
    v("holes", p.holes);
    v("stock", p.stock);
    v("stock_only", p.stock_only);
    v("on_ribs", p.on_ribs);
    v("not_use", p.not_use);
    v("leg_down", p.leg_down);
    v("leg_up", p.leg_up);
    v("sideways", p.sideways);
    v("keep_out", p.keep_out);
}

template <class V> void fields(V& v, model::Case& c)
{
    v("format", c.format);
    v("job", c.job);
    v("rules", c.rules);
    v("catalogue", c.own);
    v("road", c.road);
    v("vehicle", c.vehicle);
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
    v.inside("analysis", [&] { v("skin", c.skin), v("grid", c.grid); });
    v("propose", c.propose);
}

} // namespace thinskin::casefile
