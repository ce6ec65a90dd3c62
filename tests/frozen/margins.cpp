#include "support/cases.h"
#include "support/near.h"

// Frozen 2026-11-25: figures of our own, kept so that a change is seen and explained. Not a proof of anything.
using namespace thinskin;

TEST_SUITE_BEGIN("frozen");

TEST_CASE("frozen: verdict, governing row and its margin of each shipped case")
{
    struct Row { const char* name; base::Verdict verdict; const char* governs; double margin; };
    const Row rows[] = {
        {"condenser_door", base::Verdict::fail, "lying leg/lower rail/lower rail right 1", -0.185},
        {"condenser_door_made_good", base::Verdict::pass, "hinges/moment", 0.046},
        {"condenser_door_short_angles", base::Verdict::fail, "skin stress", -0.907},
        {"condenser_door_bare", base::Verdict::fail, "skin stress", -0.911},
    };
    for (const Row& r : rows) {
        CAPTURE(r.name);
        const auto o = tests::check_case(r.name);
        CHECK(o.verdict == r.verdict);
        REQUIRE(o.governing);
        CAPTURE(o.governing->id);
        CHECK(o.governing->id == r.governs);
        tests::check_near_abs(o.governing->margin(), r.margin, 0.01);
    }
}

TEST_SUITE_END();
