// Spearman's rank correlation against a worked example of the textbooks.
#include "studies/spread.h"
#include "support/near.h"

using namespace thinskin;

TEST_SUITE_BEGIN("published: rank correlation");

TEST_CASE("Spearman: ten pairs of the common worked example (quotient against hours of television), rho = -29/165")
{
    // [remembered] example of encyclopaedias and lecture notes; sum d^2 = 194, rho = 1 - 6 194/(10 99) = -0.17576, by hand too
    const std::vector<double> quotient{106, 100, 86, 101, 99, 103, 97, 113, 112, 110}, hours{7, 27, 2, 50, 28, 29, 20, 12, 6, 17};
    tests::check_near_rel(studies::rank_correlation(quotient, hours), -29.0 / 165, 1e-12);
}

TEST_CASE("Spearman with ties by their mean rank: both of two equal figures get the mean of their places")
{
    // By hand: ranks of a 1, 2.5, 2.5, 4; of b 1, 2, 3, 4: covariance 4.5, variances 4.5 and 5, rho = 4.5/sqrt(22.5)
    tests::check_near_rel(studies::rank_correlation({1, 5, 5, 9}, {1, 2, 3, 4}), 4.5 / std::sqrt(22.5), 1e-12);
}

TEST_SUITE_END();
