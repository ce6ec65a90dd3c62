// A clause may not know in which units it is worked: lengths times k and stresses times m scale its answer by the power that its unit
// says. The exceptions carry a figure in millimetres or newtons in the clause itself and are named.
#include "strength/angles.h"
#include "strength/bearing.h"
#include "strength/cards.h"
#include "formulary_samples.h"
#include "support/near.h"

#include <map>
#include <set>

using namespace thinskin;
using thinskin::tests::check_near_rel;
using thinskin::tests::covered_sample;

namespace {

struct Powers { int length, stress; };

const std::map<std::string, Powers>& powers()
{
    static const std::map<std::string, Powers> all{{"-", {0, 0}},   {"mm", {1, 0}},  {"mm2", {2, 0}}, {"mm3", {3, 0}}, {"mm4", {4, 0}},
                                                   {"MPa", {0, 1}}, {"N/mm", {1, 1}}, {"N", {2, 1}},   {"N mm", {3, 1}}, {"rad", {0, 0}},
                                                   {"Hz", {0, 0}},  {"mm/s", {1, 0}}, {"km", {1, 0}}};
    return all;
}

double scaled(const std::string& unit, double value, double k, double m)
{
    const Powers p = powers().at(unit);
    return value * std::pow(k, p.length) * std::pow(m, p.stress);
}

/// alpha per mm; 1.6 mm beside a hole; 19.1 mm cap and least washers or heads, 4.76 mm of a clause; newtons of a regulation; thin sheet in mm; stresses of
/// a table, 12 mm beside them; psi of the wood clauses; ksi under a root, 2.03 and 15.9 mm of the aluminium manual.
const std::set<std::string> carries_a_figure{"BB-2", "TN-2", "PO-1", "HI-1", "SC-2", "SC-3", "SC-6", "SC-7", "TO-2", "RV-3",
                                             "BT-1", "BV-1", "BI-1", "BT-2", "BV-2", "BI-2", "WS-1", "WS-2", "WS-3", "AL-3", "AL-4", "AL-6", "AL-7"};

} // namespace

TEST_SUITE_BEGIN("consistency: scaling of the clauses");

TEST_CASE("lengths times k and stresses times m scale every clause as its unit says")
{
    std::mt19937 random(3);
    constexpr double k = 1.03, m = 1.02;
    for (const base::Card* card : strength::cards()) {
        if (carries_a_figure.contains(card->id)) continue;
        CAPTURE(card->id);
        int compared = 0;
        for (int i = 0; i < 500 && compared < 100; ++i) {
            const auto values = covered_sample(*card, random);
            REQUIRE(values.has_value());
            std::vector<double> larger = *values;
            for (std::size_t j = 0; j < larger.size(); ++j) larger[j] = scaled(card->symbols[j].unit, larger[j], k, m);
            const base::Resistance after = card->evaluate(larger);
            if (!after.covered) continue;
            ++compared;
            check_near_rel(after.capacity, scaled(card->unit, card->evaluate(*values).capacity, k, m), 1e-9);
        }
        CHECK(compared > 20);
    }
}

TEST_CASE("a clause answers the same to its struct, to plain values and to its card")
{
    const strength::BoltBearing in{.d_mm = 8, .t_mm = 0.8, .Fu_MPa = 270, .mf = 0.75};
    const double capacity = strength::bolt_bearing(in).capacity;
    CHECK(strength::resistance(in).capacity == capacity);
    CHECK(strength::card_of(in).evaluate({8, 0.8, 270, 0.75}).capacity == capacity);
    CHECK(strength::inputs_of(in) == std::map<std::string, double>{{"d", 8}, {"t", 0.8}, {"Fu", 270}, {"mf", 0.75}});
    CHECK(&strength::card_of(in) == &strength::bolt_bearing_card());
}

TEST_CASE("AB-1: the detail is the clause, and a refused angle has no figures in it")
{
    strength::AngleBending in{.b_mm = 40, .t_mm = 4, .Sx_mm3 = 1553, .Fy_MPa = 235, .E_MPa = 200000, .Lb_mm = 670, .Cb = 1,
                              .toe = strength::toe_in_compression, .restraint = strength::unrestrained};
    CHECK(strength::angle_bending_detail(in).resistance.capacity == strength::angle_bending(in).capacity);
    in.Cb = 1.6;
    const strength::AngleBendingDetail refused = strength::angle_bending_detail(in);
    CHECK_FALSE(refused.resistance.covered);
    CHECK(refused.resistance.reason == "Cb = 1.6 is outside 1 .. 1.5");
    CHECK(refused.My_Nmm == 0);
    CHECK(refused.governs.empty());
}

TEST_SUITE_END();
