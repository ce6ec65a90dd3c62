#include "actions/added_mass.h"

#include "actions/vehicle.h"

namespace thinskin::actions {

results::Added added(const layout::Layout& l)
{
    results::Added a;
    a.kg = l.reinforcement_mass;
    if (l.item) a.kg += l.item->design_mass();
    for (const layout::Bracket& b : l.brackets) a.kg += b.mass();
    const auto& road = l.source->road;
    if (!road || !road->wheelbase || !road->overhang) {
        a.why_no_axle = "road.wheelbase and road.overhang are not given";
        return a;
    }
    const base::Resistance rear = rear_axle({.m_kg = a.kg, .d_mm = road->overhang->value, .L_mm = road->wheelbase->value});
    if (!rear.covered) {
        a.why_no_axle = rear.reason;
        return a;
    }
    a.rear_axle_kg = rear.nominal;
    a.front_axle_kg = a.kg - rear.nominal;
    return a;
}

} // namespace thinskin::actions
