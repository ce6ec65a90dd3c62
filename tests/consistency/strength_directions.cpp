// Which way each symbol moves a capacity. Thicker, stronger, wider, shorter may never cost strength; where a clause does it by itself
// the row states how much and why.
#include "strength/cards.h"
#include "directions.h"

using namespace thinskin;
using thinskin::tests::Directions;

namespace {

const std::map<std::string, Directions>& directions()
{
    static const std::map<std::string, Directions> all{
        {"BB-1", {{"d", {+1, 0.0101}}, // C d falls by 1 % between d/t = 20 and 22
                  {"t", {+1}}, {"Fu", {+1}}, {"mf", {+1}}}},
        {"BB-2", {{"d", {+1}}, {"t", {+1}}, {"Fu", {+1}}}},
        {"BB-3", {{"d", {+1}}, {"t", {+1}}, {"Fu", {+1}}, {"lc", {+1}}}},
        {"TO-1", {{"t", {+1}}, {"Fu", {+1}}, {"e_net", {+1}}, {"n", {+1}}}},
        {"PO-1", {{"t1", {+1}}, {"Fu1", {+1}}, {"dh", {+1}}, {"washer", {0}}, {"dw", {+1}}, {"tw", {+1}}}}, // a washer smaller than the head
        {"PU-1", {{"t", {+1}}, {"Fu", {+1}}, {"dm", {+1}}}},
        {"ED-1", {{"d", {+1}}}},
        {"SP-1", {{"d", {+1}}}},
        {"SK-1", {{"Fy", {+1}}}},
        {"SK-2", {{"Fy", {+1}}, {"r", {+1, 0.055}}, // the chart is lowest at r/b near 0.65, 5 % below that of full round ends
                  {"b", {0}}, // at a given radius the corner is sharper, the opening less of a slit
                  {"a", {-1}}}},
        {"SF-1", {{"t", {+1}}, {"Fy", {+1}}}},
        {"RL-1", {{"Rn", {+1}}}},
        {"BT-1", {{"d", {+1}}, {"Fu", {+1}}}},
        {"BV-1", {{"d", {+1}}, {"Fu", {+1}}}},
        {"BI-1", {{"d", {+1}}, {"Fu", {+1}}, {"V", {-1}}}},
        {"BG-1", {{"As", {+1}}, {"fy", {+1}}, {"gap", {-1}}}},
        {"AB-1", {{"b", {0}}, // a longer leg buckles sooner but resists twisting more, at a given Sx
                  {"t", {+1}}, {"Sx", {+1}},
                  {"Fy", {+1, 0.0091}}, // 0.9 % where the leg becomes slender
                  {"E", {+1}}, {"Lb", {-1}}, {"Cb", {+1}}, {"toe", {-1}}, {"restraint", {+1}}}},
        {"AT-1", {{"J", {+1}}, {"t", {-1}}, {"Fy", {+1}}}}, // at a given J the thicker wall has the larger stress
        {"LL-1", {{"t", {+1}}, {"Fy", {+1}}, {"a", {-1}}, {"washer", {+1}}, {"available", {+1}}}},
        {"TN-1", {{"Ag", {+1}}, {"Fy", {+1}}}},
        {"TN-2", {{"Ag", {+1}}, {"t", {-1}}, // at a given gross area the thicker bar loses more to its hole
                  {"n", {-1}}, {"dh", {-1}}, {"U", {+1}}, {"Fu", {+1}}}},
        {"BC-1", {{"A", {+1}}, {"r", {+1, 0.0005}}, {"L", {-1, 0.0005}}, {"b_t", {0}}, {"Fy", {+1, 0.0005}}, {"E", {+1, 0.0005}}, // joint of E3-2 and E3-3
                  {"ends", {0}}}}, // other radius of gyration
        {"IA-1", {{"P/Pc", {0}}, {"Mx/Mcx", {0}}, {"My/Mcy", {0}}}},
        {"RB-1", {{"w_held", {-1}}, {"w_free", {-1}}, {"t", {+1}}, {"Fy", {+1}}, {"E", {+1}}}},
        {"AL-1", {{"d", {+1}}, {"t", {+1}}, {"Ftu", {+1}}, {"e", {+1}}}},
        {"AL-2", {{"d", {+1}}, {"t1", {+1}}, {"t2", {+1}}, {"Fu1", {+1}}, {"Fu2", {+1}}, {"e1", {+1}}, {"e2", {+1}}}},
        {"AL-3", {{"d", {+1}}, {"t", {+1}}, {"Fty", {+1}}}},
        {"AL-4", {{"t", {+1}}, {"Ftu", {+1}}, {"Fty", {+1}}, {"D", {+1}}, {"dh", {-1}}, {"eccentric", {-1}}}},
        {"AL-5", {{"t", {+1}}, {"Ftu", {+1}}, {"dm", {+1}}}},
        {"AL-6", {{"b", {0}}, // as AB-1
                  {"t", {+1}}, {"Sx", {+1}}, {"Fcy", {+1}}, {"E", {+1}}, {"Lb", {-1}}}},
        {"AL-7", {{"A", {+1}}, {"r", {+1}}, {"L", {-1}}, {"b_t", {-1}}, {"Fcy", {+1}}, {"E", {+1}}, {"aged", {0}}}},
        {"AL-8", {{"A", {+1}}, {"t", {-1}}, // at a given area the thicker part loses more to its hole
                  {"n", {-1}}, {"dh", {-1}}, {"U", {+1}}, {"Fty", {+1}}, {"Ftu", {+1}}}},
        {"BX-1", {{"h", {+1}}, {"b", {+1}}, {"t", {+1}}, {"Fy", {+1}}, {"E", {+1}}}},
        {"CF-1", {{"b", {+1}}, {"h", {0}}, // beyond h = b it is bent the strong way, and a bar many times as long as deep tips
                  {"Lb", {-1}}, {"Fy", {+1}}, {"E", {+1}}}},
        {"WE-1", {{"w", {+1}}, {"FEXX", {+1}}}},
        {"WE-2", {{"t", {+1}}, {"Fu", {+1}}, {"L", {-1}}, {"direction", {0}}}},
        {"BT-2", {{"d", {+1}}, {"grade", {0}}}}, // a designation, not a size
        {"BV-2", {{"d", {+1}}, {"grade", {0}}, {"threads", {+1}}}},
        {"BI-2", {{"d", {+1}}, {"grade", {0}}, {"threads", {+1}}, {"V", {-1}}}},
        {"SC-1", {{"d", {+1}}, {"t1", {0}}, // a thicker sheet under the head can turn bearing into tilting: see its joint
                  {"t2", {+1}}, {"Fu1", {+1}}, {"Fu2", {+1}}}},
        {"SC-2", {{"d", {+1}}, {"tc", {+1}}, {"Fu2", {+1}}, {"thin_sheet", {-1}}}},
        {"SC-3", {{"t1", {+1}}, {"Fu1", {+1}}, {"dh", {+1}}, {"washer", {0}}, {"dw", {+1}}, {"tw", {+1}}, {"eccentric", {-1}}}},
        {"SC-4", {{"Pnvs", {+1}}}},
        {"SC-5", {{"Pnts", {+1}}}},
        {"SC-6", {{"Q", {-1}}, {"T", {-1}}, {"d", {+1}}, {"t1", {+1}}, {"t2", {0}}, {"Fu1", {+1}}, {"dh", {+1}}, {"washer", {0}}, {"dw", {+1}},
                  {"tw", {+1}}, {"eccentric", {-1}}}}, // t2 only decides whether it is covered
        {"SC-7", {{"Q", {-1}}, {"T", {-1}}, {"d", {+1}}, {"t2", {+1}}, {"tc", {+1}}, {"Fu2", {+1}}, {"Fy2", {0}}, {"thin_sheet", {-1}}}},
        {"SC-8", {{"V", {-1}}, {"T", {-1}}, {"Pnvs", {+1}}, {"Pnts", {+1}}}},
        {"SC-9", {{"Q", {-1}}, {"T", {-1}}, {"Qa", {+1}}, {"Ta", {+1}}}},
        {"TO-2", {{"t", {+1}}, {"Fu", {+1}}, {"e_net", {+1}}, {"n", {+1}}}},
        {"ED-2", {{"d", {+1}}}},
        {"SP-2", {{"d", {+1}}}},
        {"ED-3", {{"d", {+1}}}},
        {"SP-3", {{"d", {+1}}}},
        {"ED-4", {{"d_hole", {+1}}}},
        {"SP-4", {{"d_hole", {+1}}}},
        {"RV-1", {{"Fv_min", {+1}}}},
        {"RV-2", {{"Ft_min", {+1}}}},
        {"RV-3", {{"t1", {+1}}, {"Fu1", {+1}}, {"dh", {+1}}}},
        {"RV-4", {{"d", {+1}}, {"t", {+1}}, {"t1", {+1}}, {"Fu", {+1}}, {"e1", {+1}}}},
        {"IN-1", {{"df", {+1}}, {"dhole", {+1}}, {"t", {+1}}, {"Fu", {+1}}}},
        {"IN-2", {{"F", {+1}}}},
        {"CS-1", {{"t", {+1}}, {"h", {-1}}}},
        {"CS-2", {{"t", {+1}}, {"h", {-1}}, {"dhole", {+1}}, {"Fu", {+1}}}},
        {"WR-1", {{"tw", {+1}}, {"fyw", {+1}}, {"t", {-1}}, {"Fu", {-1}}}}, // a stronger skin bends the washer sooner
        {"PL-1", {{"a", {-1}}, {"tb", {+1}}, {"s", {+1}}, {"fyb", {+1}}}},
        {"PL-2", {{"a", {+1}}, {"tb", {+1}}, {"s", {+1}}, {"fyb", {+1}}, {"t", {-1}}, {"Fu", {-1}}, {"bends", {+1}}}},
        {"WS-1", {{"D", {+1}}, {"G", {+1}}, {"pt", {+1}}, {"C_D", {+1}}, {"C_M", {+1}}, {"C_t", {+1}}}},
        {"WS-2", {{"DH", {+1}}, {"G", {+1}}, {"tns", {+1}}, {"C_D", {+1}}, {"C_M", {+1}}, {"C_t", {+1}}}},
        {"WS-3", {{"D", {0}}, // bands of Fyb fall with it, penetration counts in diameters
                  {"Dr", {+1}}, {"G", {+1}}, {"p", {+1}}, {"ts", {+1, 0.02}}, // IIIs dips before it rises
                  {"Fus", {+1}}, {"C_D", {+1}}, {"C_M", {+1}}, {"C_t", {+1}}}},
        {"WS-4", {{"W", {+1}}, {"Z", {+1}}, {"a", {0}}}}, // from Z to W, whichever is larger
        // a damage, or a distance until it is reached
        {"FA-1", {{"line", {0}}, {"C", {-1}}, {"gamma", {+1}}, {"S", {+1}}, {"n", {+1}}}},
        {"FA-2", {{"line", {0}}, {"C", {-1}}, {"gamma", {+1}}, {"sigma", {+1}}, {"n", {+1}}}},
        {"FA-3", {{"line", {0}}, {"C", {-1}}, {"gamma", {+1}}, {"sigma", {+1}}, {"n", {+1}}}},
        {"FA-4", {{"line", {0}}, {"C", {+1}}, {"gamma", {-1}}, {"sigma", {-1}}, {"nu", {-1}}, {"v", {+1}}, {"D", {+1}}}},
        {"FA-5", {{"km", {+1}}, {"km_per_year", {-1}}}},
        {"HI-1", {{"n", {+1}}, {"door", {0}}, {"Fn", {0}}, {"Ft", {0}}, {"Fz", {0}}}}, // an index: see its own case below
    };
    return all;
}

} // namespace

TEST_SUITE_BEGIN("consistency: directions of the clauses");

TEST_CASE("thicker, stronger, larger, shorter: no clause loses strength, except by the amount that its row states")
{
    tests::check_all(strength::cards(), directions(), {"HI-1"});
}

TEST_CASE("HI-1: the index grows with each force's size, not with its sign, and with the number of hinges")
{
    const auto index = [](std::vector<double> in) {
        for (const base::Card* card : strength::cards())
            if (card->id == "HI-1") return card->evaluate(in).nominal;
        return -1.0;
    };
    const double start = index({2, 0, 100, 200, 300});
    CHECK(start > 0);
    CHECK(index({2, 0, -100, -200, -300}) == start);
    CHECK(index({2, 0, 101, 200, 300}) > start);
    CHECK(index({2, 0, 100, -201, 300}) > start);
    CHECK(index({2, 0, 100, 200, 301}) > start);
    CHECK(index({3, 0, 100, 200, 300}) > start); // the same force on one of three hinges, each proved for less
}

TEST_SUITE_END();
