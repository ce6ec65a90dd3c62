// Pull-over and punching. [read] number read in the source named; [formula] worked out by hand outside this program.
#include "strength/pull_over.h"
#include "support/near.h"

using namespace thinskin;
using namespace thinskin::strength;
using thinskin::tests::check_near_abs;
using thinskin::tests::check_near_rel;
using thinskin::tests::From;
using thinskin::tests::holds;

namespace {
constexpr double in_mm = 25.4, lbf_N = 4.4482216, ksi_MPa = 6.894757;

PullOver head(double dh, double t1, double Fu1) { return {.t1_mm = t1, .Fu1_MPa = Fu1, .dh_mm = dh, .washer = 0, .dw_mm = 0, .tw_mm = 0}; }
PullOver washer(double dh, double dw, double tw, double t1)
{
    return {.t1_mm = t1, .Fu1_MPa = 270, .dh_mm = dh, .washer = 1, .dw_mm = dw, .tw_mm = tw};
}
} // namespace

TEST_SUITE_BEGIN("published: pull-over");

TEST_CASE("AISI S100 J4.4.2 (PO-1): a maker's table of ultimate pull-over, 45 ksi")
{
    holds("PO-1", From::read);
    struct Row { double dh_in, t1_in, printed_lbf; };
    constexpr Row table[] = {{0.399, 0.036, 970}, {0.415, 0.048, 1340}, {0.500, 0.030, 1010}}; // [read] rounded to 5 or 10 lbf there
    for (const Row& r : table) {
        CAPTURE(r.dh_in);
        check_near_abs(pull_over(head(r.dh_in * in_mm, r.t1_in * in_mm, 45 * ksi_MPa)).nominal / lbf_N, r.printed_lbf, 5.0);
    }
}

TEST_CASE("AISI S100-16 J4.4.2 (PO-1): head alone, washer that spreads, washer capped at 19.1 mm")
{
    holds("PO-1", From::recomputed);
    const base::Resistance bare = pull_over(head(12, 0.8, 270)); // [formula] 3888 N; 1296 N
    check_near_rel(bare.nominal, 3888, 5e-4);
    check_near_rel(bare.capacity, 1296, 5e-4);
    check_near_rel(pull_over(head(13, 0.8, 270)).capacity, 1404, 5e-4);                       // [formula] bare M8 head
    check_near_rel(effective_pull_over_diameter(washer(9.5, 16, 1.5, 0.8)), 13.30, 1e-12);     // [formula] dh + 2 tw + t1
    check_near_rel(effective_pull_over_diameter(washer(10, 18, 1.6, 0.7)), 13.90, 1e-12);      // [formula] M6 on its large washer
    const base::Resistance capped = pull_over(washer(13, 25, 3, 0.8));                         // [formula] 6188 N; 2063 N
    check_near_rel(capped.nominal, 6188, 5e-4);
    check_near_rel(capped.capacity, 2063, 5e-4);
    check_near_rel(pull_over(head(25, 0.8, 270)).nominal, 6188, 5e-4);                         // the cap holds for a head as well
}

TEST_CASE("AISI S100-16 equations J4.4.2-1, J4.4.2-2 (PO-1, SC-3): 1.5 t1 d'w Fu1, d'w = dh + 2 tw + t1 up to dw, half where eccentric, over 3.00")
{
    // [read] in a copy of the standard made by others
    const PullOver spread = washer(9.5, 15, 1.5, 0.8), narrow = washer(13, 15, 1.5, 0.8);
    holds("PO-1", From::read);
    check_near_rel(effective_pull_over_diameter(spread), 9.5 + 2 * 1.5 + 0.8, 1e-12);
    check_near_rel(effective_pull_over_diameter(narrow), 15, 1e-12);
    check_near_rel(pull_over(spread).nominal / (0.8 * (9.5 + 3.8) * 270), 1.5, 1e-12);
    check_near_rel(pull_over(spread).factor, 3.00, 1e-12);
}

TEST_CASE("AISI S100-16 J4.4 (PO-1): small heads, thin washers and NaN get no figure")
{
    CHECK_FALSE(pull_over(head(7.9, 0.8, 270)).covered);           // [read] head or washer at least 5/16 in = 7.94 mm
    CHECK_FALSE(pull_over(washer(13, 15, 1.2, 0.8)).covered);      // [read] separate washer at least 0.050 in = 1.27 mm
    CHECK_FALSE(pull_over(washer(13, 18, 1.5, 0.8)).covered);      // [read] 1.6 mm where the washer is above 5/8 in
    CHECK(pull_over(washer(13, 15, 1.3, 0.8)).covered);
    CHECK(std::isnan(effective_pull_over_diameter(washer(13, std::nan(""), 2, 0.8))));
    CHECK(std::isnan(effective_pull_over_diameter(head(std::nan(""), 0.8, 270))));
}

TEST_CASE("EN 1993-1-8 Table 3.4 punching (PU-1): worksheet with dm 30, tp 8, fu 360")
{
    holds("PU-1", From::read);
    // [read] 130.288 kN with gamma_M2 = 1.25
    check_near_rel(punching({.t_mm = 8, .Fu_MPa = 360, .dm_mm = 30}).nominal / 1.25, 130288, 1e-5);
}

TEST_CASE("EN 1993-1-8 Table 3.4 punching (PU-1): 3.4 mm of S355 balances an M20 4.6 bolt in tension")
{
    holds("PU-1", From::read);
    // [read] bolt tables, least plate thickness 3.4 mm; bolt 0.9 x 400 x 245 = 88.2 kN; the head size there is not stated, so 3 %
    check_near_rel(punching({.t_mm = 3.4, .Fu_MPa = 470, .dm_mm = 30}).nominal, 88200, 0.03);
}

TEST_CASE("EN 1993-1-8 Table 3.4 punching (PU-1) is refused for sheet")
{
    CHECK_FALSE(punching({.t_mm = 0.8, .Fu_MPa = 270, .dm_mm = 14}).covered);
    CHECK(punching({.t_mm = 4, .Fu_MPa = 360, .dm_mm = 14.01}).factor == 2.0);
}

TEST_SUITE_END();
