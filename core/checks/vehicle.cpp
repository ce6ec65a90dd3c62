#include "checks/checks.h"
#include "checks/rows.h"

#include <cmath>

/// Plated masses of the vehicle. A plate is the law's, not a strength: no factor.
namespace thinskin::checks {

namespace {

const model::Vehicle* given(const Demands& d)
{
    const auto& v = d.layout->source->vehicle;
    return d.added && v ? &*v : nullptr;
}

bool axle_given(const model::Vehicle* v) { return v && v->rear_axle_plate && v->rear_axle_weighed; }

Limit plate(double kg, const model::Vehicle& v)
{
    return {kg, "kg", "plated mass, no factor", v.source.empty() ? "case file, vehicle; whose figure is not said" : "case file, vehicle: " + v.source, v.source.empty() ? "assumed" : "as given"};
}

results::Check payload_row(const results::Added& a, const model::Vehicle& v)
{
    const Place p{"vehicle/payload", "vehicle", "vehicle", "what the job adds against the payload left", false, "", "item with its tolerance, brackets and reinforcement; crew, tools and load have to be in the weighing"};
    results::Check c = against_limit(p, {"standing", a.kg, true, ""}, plate(v.payload_left->value, v));
    if (v.payload_left->value == 0 && a.kg > 0) { // nothing left is a figure, not a missing one
        c.status = base::Status::fail;
        c.note = "the vehicle has no payload left";
    }
    return c;
}

/// Weighed and added against the plate, as wholes: the margin is that of the axle, not of what is left on it.
results::Check axle_row(const results::Added& a, const model::Vehicle& v)
{
    Place p{"vehicle/rear axle", "vehicle", "vehicle", "rear axle against its plate", false, "road.overhang and road.wheelbase", ""};
    if (!a.rear_axle_kg) return not_covered(p, a.why_no_axle);
    p.note = fmt::format("{:.1f} kg of the {:.1f} kg added come onto the rear axle by its overhang (AC-23), the front axle carries {:.1f} kg less", *a.rear_axle_kg, a.kg, -*a.front_axle_kg);
    return against_limit(p, {"standing", v.rear_axle_weighed->value + *a.rear_axle_kg, true, ""}, plate(v.rear_axle_plate->value, v));
}

/// What is left on the steering axle against the least it has to keep.
results::Check steering_row(const results::Added& a, const model::Vehicle& v)
{
    Place p{"vehicle/front axle", "vehicle", "vehicle", "steering axle against its least mass", false, "road.overhang and road.wheelbase", ""};
    if (!a.front_axle_kg) return not_covered(p, a.why_no_axle);
    const double left = v.front_axle_weighed->value + *a.front_axle_kg;
    p.note = fmt::format("what hangs behind the rear axle takes {:.1f} kg off it (AC-23); standing level, so a slope and driving off take more", -*a.front_axle_kg);
    Limit limit = plate(left, v);
    limit.rule = "what is left on the axle, no factor";
    results::Check c = against_limit(p, {"standing", v.front_axle_least->value, true, ""}, limit);
    if (!(left > 0) && std::isfinite(left)) { // nothing left is a figure, not a missing one
        c.status = base::Status::fail;
        c.note = "nothing is left on the steering axle";
    }
    return c;
}

bool steering_given(const model::Vehicle* v) { return v && v->front_axle_least && v->front_axle_weighed; }

} // namespace

std::vector<results::Check> vehicle(const Demands& d)
{
    std::vector<results::Check> out;
    const model::Vehicle* v = given(d);
    if (v && v->payload_left) out.push_back(payload_row(*d.added, *v));
    if (axle_given(v)) out.push_back(axle_row(*d.added, *v));
    if (steering_given(v)) out.push_back(steering_row(*d.added, *v));
    return out;
}

std::vector<std::string> vehicle_not_checked(const Demands& d)
{
    std::vector<std::string> out;
    if (!d.layout->item || !d.added) return out;
    const model::Vehicle* v = given(d);
    if (!v || !v->payload_left) out.push_back(fmt::format("payload: the job adds {:.1f} kg; whether the vehicle may carry that is not checked; lifted by vehicle.payload_left", d.added->kg));
    if (!axle_given(v)) out.push_back(fmt::format("rear axle: {}; not checked; lifted by vehicle.rear_axle_plate and rear_axle_weighed",
                                                  d.added->rear_axle_kg ? fmt::format("the job adds {:.1f} kg to it", *d.added->rear_axle_kg) : "what hangs behind it adds more than its own mass"));
    if (!steering_given(v)) out.push_back("steering axle: what hangs behind the rear axle relieves it; not checked; lifted by vehicle.front_axle_least and front_axle_weighed");
    return out;
}

} // namespace thinskin::checks
