#include "actions/cards.h"

#include "actions/pulses.h"
#include "actions/quarter_car.h"
#include "actions/slam.h"
#include "actions/vehicle.h"
#include "base/quantity.h"

#include <cmath>
#include <limits>

namespace thinskin::actions {

namespace {

using base::Card;
using base::Label;
using base::Resistance;
using base::Symbol;

constexpr double none = std::numeric_limits<double>::infinity();

/// Why the inputs cannot be used; empty when all is well.
std::string out_of_range(const std::vector<Symbol>& symbols, const std::vector<double>& in)
{
    if (in.size() != symbols.size()) return "wrong number of inputs";
    for (std::size_t i = 0; i < in.size(); ++i)
        if (std::string why = base::outside(symbols[i], in[i]); !why.empty()) return why;
    return "";
}

const std::vector<Symbol> slam_symbols{{"v_edge", "mm/s", "speed of the free edge", 0, 5000, true},
                                       {"y", "mm", "distance of the mass from the pin line", 0, none, false},
                                       {"y_edge", "mm", "distance of the free edge from the pin line", 0, none, true},
                                       {"D", "s", "duration of the stop", 0.001, 0.5, false},
                                       {"e", "-", "rebound, 0 = none", 0, 1, false}};

const std::vector<Symbol> combined_symbols{{"down", "g", "total downward factor", 0, 20, false},
                                           {"lateral", "g", "sideways factor", 0, 20, false},
                                           {"fore_aft", "g", "factor along the vehicle", 0, 20, false}};

const std::vector<Symbol> force_symbols{{"m", "kg", "mass", 0, none, false}, {"a", "g", "factor, weight included in the vertical", -1000, 1000, false}};

Resistance slam(const std::vector<double>& in)
{
    const std::string bad = out_of_range(slam_symbols, in);
    if (!bad.empty()) return base::not_covered(bad);
    const auto a = half_sine_stop_g({.v_edge_mm_s = in[0], .y_mm = in[1], .y_edge_mm = in[2], .D_s = in[3], .e = in[4]});
    return a ? base::covered(*a, 1) : base::not_covered("an input is outside its range");
}

Resistance combined(const std::vector<double>& in)
{
    const std::string bad = out_of_range(combined_symbols, in);
    if (!bad.empty()) return base::not_covered(bad);
    return base::covered(std::hypot(in[0], 0.5 * in[1], 0.5 * in[2]), 1);
}

Resistance force(const std::vector<double>& in)
{
    const std::string bad = out_of_range(force_symbols, in);
    if (!bad.empty()) return base::not_covered(bad);
    return base::covered(std::abs(in[0] * in[1]) * base::gravity_m_s2, 1);
}

Card slam_card()
{
    Card c;
    c.id = "AC-1";
    c.title = "Half-sine stop of a slammed door";
    c.formula = "A = pi (v_edge y/y_edge) (1 + e)/(2 D g)";
    c.unit = "g";
    c.rule = "actions";
    c.source = "impulse of a half-sine; shape and duration of a door's stop: common practice, no source";
    c.label = Label::common_practice;
    c.range = "side-hinged doors; v_edge up to 5 m/s, D 1 .. 500 ms";
    c.not_for = "the mounted item's own response to the pulse; flexible doors; the check strap's strength";
    c.symbols = slam_symbols;
    c.evaluate = slam;
    return c;
}

Card combined_card()
{
    Card c;
    c.id = "AC-2";
    c.title = "Combined road state, resultant";
    c.formula = "a = (down^2 + (lateral/2)^2 + (fore_aft/2)^2)^0.5; the components are run with all signs";
    c.unit = "g";
    c.rule = "actions";
    c.source = "vertical factor with half of the others: common practice, no source";
    c.label = Label::common_practice;
    c.range = "quasi-static factors of the road catalogue";
    c.not_for = "crash, shock pulses, random vibration";
    c.symbols = combined_symbols;
    c.evaluate = combined;
    return c;
}

Card force_card()
{
    Card c;
    c.id = "AC-3";
    c.title = "Force of an acceleration on a mass";
    c.formula = "F = m a g0, g0 = 9.80665 m/s2 (size)";
    c.unit = "N";
    c.rule = "actions";
    c.source = "Newton's second law; standard gravity";
    c.label = Label::computed;
    c.range = "all";
    c.not_for = "factors that are to be multiplied with a second dynamic factor: they are total";
    c.symbols = force_symbols;
    c.evaluate = force;
    return c;
}

} // namespace

const std::vector<Card>& cards()
{
    static const std::vector<Card> all{
        slam_card(), combined_card(), force_card(),
        // docs/theory/shock_and_vibration.md
        clause<ShockResponse>().card(), clause<SpeedChange>().card(), clause<PsdSegment>().card(), clause<Miles>().card(), clause<SegmentResponse>().card(),
        clause<PeakFactor>().card(), clause<LevelCrossings>().card(), clause<RandomFactor>().card(), clause<RoadSpeed>().card(), clause<BodyRms>().card(),
        clause<Overhang>().card(), clause<MountOnCar>().card(),
        // docs/theory/vehicle.md
        clause<AirForce>().card(), clause<WindLimit>().card(), clause<CheckStrap>().card(), clause<SlopeTorque>().card(), clause<EdgeSag>().card(),
        clause<ElasticRest>().card(), clause<TetherCatch>().card(), clause<RearAxle>().card()};
    return all;
}

} // namespace thinskin::actions
