// Formulas of the actions and of rigid-body statics: which way each symbol moves them, and that they know nothing of units.
#include "actions/cards.h"
#include "directions.h"
#include "statics/cards.h"
#include "support/near.h"

using namespace thinskin;
using thinskin::tests::check_near_rel;
using thinskin::tests::covered_sample;
using thinskin::tests::Directions;

namespace {

/// More of it, more load; 0: both ways, with the reason where it is not plain.
const std::map<std::string, Directions>& directions()
{
    static const std::map<std::string, Directions> all{
        {"AC-1", {{"v_edge", {+1}}, {"y", {+1}}, {"y_edge", {-1}}, {"D", {-1}}, {"e", {+1}}}},
        {"AC-2", {{"down", {+1}}, {"lateral", {+1}}, {"fore_aft", {+1}}}},
        {"AC-3", {{"m", {+1}}, {"a", {0}}}}, // its size counts
        {"AC-4", {{"pulse", {0}}, {"kind", {0}}, {"A", {+1}}, {"D", {0}}, {"f", {0}}, {"zeta", {0}}}}, // a spectrum has peaks and valleys
        {"AC-5", {{"pulse", {-1}}, {"A", {+1}}, {"D", {+1}}}},
        {"AC-6", {{"f1", {0}}, {"P1", {+1}}, {"f2", {+1}}, {"P2", {+1}}}}, // f1: a shorter segment, but a flatter one
        {"AC-7", {{"f", {+1}}, {"zeta", {-1}}, {"P", {+1}}}},
        {"AC-8", {{"f", {0}}, {"zeta", {0}}, {"f1", {0}}, {"P1", {+1}}, {"f2", {0}}, {"P2", {+1}}}}, // resonance moves through the segment
        {"AC-9", {{"nu", {+1}}, {"T", {+1}}}},
        {"AC-10", {{"nu", {+1}}, {"T", {+1}}, {"k", {-1}}}},
        {"AC-11", {{"k", {+1}}, {"a", {+1}}}},
        {"AC-12", {{"Gd", {+1}}, {"v", {+1}}}},
        {"AC-13", {{"Gd", {+1}}, {"v", {+1}}, {"m_s", {-1}}, {"m_u", {+1}}, {"k_s", {+1}}, {"k_t", {+1}}, {"c", {0}}}}, // there is a best damper
        {"AC-14", {{"d", {+1}}, {"L", {-1}}, {"q", {+1}}}},
        {"AC-15", {{"Gd", {+1}}, {"v", {+1}}, {"m_s", {0}}, {"m_u", {0}}, {"k_s", {0}}, {"k_t", {0}}, {"c", {0}}, {"f", {0}}, {"zeta", {0}}}},
        {"AC-16", {{"C", {+1}}, {"A", {+1}}, {"v", {+1}}}},
        {"AC-17", {{"F", {+1}}, {"C", {-1}}, {"A", {-1}}}},
        {"AC-18", {{"C", {+1}}, {"A", {+1}}, {"v", {+1}}, {"y", {+1}}, {"r", {-1}}}},
        {"AC-19", {{"m", {+1}}, {"y", {+1}}, {"e", {+1}}, {"alpha", {+1}}, {"psi", {0}}}},
        {"AC-20", {{"c", {+1}}, {"m", {+1}}, {"y", {+1}}, {"y_edge", {+1}}, {"h", {-1}}}},
        {"AC-21", {{"s", {+1}}, {"gap", {-1}}, {"c_d", {-1}}, {"c_s", {-1}}}},
        {"AC-22", {{"m", {+1}}, {"s", {+1}}, {"k", {+1}}}},
        {"AC-23", {{"m", {+1}}, {"d", {+1}}, {"L", {-1}}}},
        {"ST-1", {{"k", {+1}}, {"m", {+1}}, {"y", {+1}}, {"h", {-1}}}},
        {"ST-2", {{"k", {+1}}, {"m", {+1}}, {"e", {+1}}, {"h", {-1}}}},
        {"ST-3", {{"F", {+1}}, {"y", {+1}}, {"y_L", {-1}}}},
        {"ST-4", {{"M", {+1}}, {"d1", {0}}, {"d2", {-1}}}}, // d1: more lever, but also more of the share
        {"ST-5", {{"F", {+1}}, {"a", {-1}}, {"L", {+1}}}},
        {"ST-6", {{"Px", {0}}, {"Py", {0}}, {"M", {0}}, {"n", {0}}, {"x", {0}}, {"y", {0}}, {"J", {0}}}}, // vectors
        {"ST-7", {{"F", {+1}}, {"a", {+1}}, {"b", {-1}}}},
        {"ST-8", {{"M", {+1}}, {"H", {-1}}, {"z", {-1}}}},
        {"ST-9", {{"F_n", {+1}}, {"F_t", {+1}}, {"F_y", {+1}}, {"n", {+1}}}},
        {"ST-10", {{"m_d", {+1}}, {"w", {+1}}, {"y_d", {+1}}, {"m", {+1}}, {"y", {+1}}, {"e", {+1}}}},
        {"ST-11", {{"S_y", {0}}, {"S_e", {0}}, {"alpha", {+1}}}}, // their sizes count
        {"ST-12", {{"F_t", {0}}, {"F_n", {0}}, {"theta", {0}}}},
        {"ST-13", {{"I", {+1}}, {"v_edge", {+1}}, {"D", {-1}}, {"y_edge", {-1}}, {"r", {-1}}}},
        {"ST-14", {{"s", {+1}}, {"h", {+1}}, {"m", {-1}}, {"y", {-1}}}},
        {"ST-15", {{"c", {+1}}, {"y_s", {0}}, {"h", {0}}, {"T", {+1}}, {"T_b", {-1}}, {"gap", {-1}}, {"k", {+1}}}},
    };
    return all;
}

std::vector<const base::Card*> both()
{
    std::vector<const base::Card*> all;
    for (const auto* cards : {&actions::cards(), &statics::cards()})
        for (const base::Card& c : *cards) all.push_back(&c);
    return all;
}

/// Times grow by q, lengths by q^2, masses by q^6: then neither g nor the density of air changes, and every unit has one power of q.
const std::map<std::string, int>& powers()
{
    static const std::map<std::string, int> all{{"-", 0},  {"g", 0},   {"rad", 0},  {"s", 1},    {"Hz", -1},  {"mm", 2},    {"mm/s", 1},    {"mm2", 4},     {"kg", 6},  {"N", 6},
                                                {"N mm", 8}, {"N/mm", 4}, {"N s/mm", 5}, {"mm/N", -4}, {"g2/Hz", 1}, {"kg mm", 8}, {"kg mm2", 10}};
    return all;
}

/// A road's roughness at 0.1 cycles a metre; newtons of a regulation.
const std::set<std::string> carries_a_figure{"AC-12", "AC-13", "AC-15", "ST-9"};

} // namespace

TEST_SUITE_BEGIN("consistency: directions of actions and statics");

TEST_CASE("heavier, farther, faster, shorter: no action and no reaction grows less, except where its row says why")
{
    tests::check_all(both(), directions(), {});
}

TEST_CASE("times, lengths and masses in other units give the same action in other units")
{
    std::mt19937 random(5);
    constexpr double q = 1.01;
    for (const base::Card* card : both()) {
        if (carries_a_figure.contains(card->id)) continue;
        CAPTURE(card->id);
        int compared = 0;
        for (int i = 0; i < 300 && compared < 40; ++i) {
            const auto values = covered_sample(*card, random);
            REQUIRE(values.has_value());
            std::vector<double> other = *values;
            for (std::size_t j = 0; j < other.size(); ++j) other[j] *= std::pow(q, powers().at(card->symbols[j].unit));
            const base::Resistance after = card->evaluate(other);
            if (!after.covered) continue;
            ++compared;
            check_near_rel(after.capacity, card->evaluate(*values).capacity * std::pow(q, powers().at(card->unit)), card->id == "AC-4" ? 1e-6 : 1e-9);
        }
        CHECK(compared > 10);
    }
}

TEST_SUITE_END();
