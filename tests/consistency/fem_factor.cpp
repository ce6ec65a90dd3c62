#include "fem/factor.h"
#include "support/near.h"

using namespace thinskin;
using tests::check_near_rel;

TEST_SUITE_BEGIN("consistency: factor");

namespace {

/// Positive definite with a scattered pattern: springs between pseudo-random pairs, a few to the ground.
fem::Sparse springs(int n)
{
    std::vector<Eigen::Triplet<double>> t;
    unsigned seed = 7;
    const auto next = [&](unsigned below) { return static_cast<int>((seed = seed * 1664525U + 1013904223U) >> 8) % static_cast<int>(below); };
    for (int k = 0; k < 4 * n; ++k) {
        const int a = next(static_cast<unsigned>(n)), b = k < n - 1 ? k + 1 : next(static_cast<unsigned>(n)), i = k < n - 1 ? k : a;
        const double c = 1 + next(100);
        if (i == b) continue;
        t.emplace_back(i, i, c), t.emplace_back(b, b, c), t.emplace_back(i, b, -c), t.emplace_back(b, i, -c);
    }
    for (int k = 0; k < n; k += 17) t.emplace_back(k, k, 0.5);
    fem::Sparse K(n, n);
    K.setFromTriplets(t.begin(), t.end());
    return K;
}

} // namespace

TEST_CASE("Sparse factor solves as a dense one does, and a column's products are the flexibility")
{
    constexpr int n = 160;
    fem::Body body;
    body.dofs = n;
    body.K = springs(n);
    body.supported.assign(n, 0);
    body.supported[5] = body.supported[77] = 1;
    body.factor = fem::factorise(body.K, body.supported);
    fem::Matrix dense = body.K;
    for (const int d : {5, 77}) dense.row(d).setZero(), dense.col(d).setZero(), dense(d, d) = 1;
    fem::Vector load = fem::Vector::LinSpaced(n, -1, 3), clean = load;
    clean(5) = clean(77) = 0;
    const fem::Vector want = dense.ldlt().solve(clean), got = fem::solve(body, load);
    CHECK((want - got).norm() < 1e-10 * want.norm());

    const fem::Row a{{3, 1.0}, {5, 2.0}, {90, -0.5}}, b{{120, 2.0}};
    fem::Vector work = fem::Vector::Zero(n), la = fem::Vector::Zero(n), lb = la;
    fem::add(la, a, 1), fem::add(lb, b, 1);
    const auto ya = body.factor->column(a, work), yb = body.factor->column(b, work);
    check_near_rel(fem::dot(ya, yb), fem::apply(b, fem::solve(body, la)), 1e-10);
    check_near_rel(fem::dot(ya, ya), fem::apply(a, fem::solve(body, la)), 1e-10);
    CHECK(work.cwiseAbs().maxCoeff() == 0);
}

TEST_CASE("A body that nothing holds, a negative spring and a NaN are refused with the dof")
{
    fem::Sparse K(3, 3);
    const auto set = [&](double spring) {
        std::vector<Eigen::Triplet<double>> t{{0, 0, 2}, {1, 1, 2}, {0, 1, -2}, {1, 0, -2}, {2, 2, spring}};
        K.setFromTriplets(t.begin(), t.end());
    };
    set(1);
    CHECK_THROWS_AS((void)fem::factorise(K, {0, 0, 0}), fem::SingularMatrix);
    CHECK_NOTHROW((void)fem::factorise(K, {1, 0, 0}));
    set(-1);
    CHECK_THROWS_AS((void)fem::factorise(K, {1, 0, 0}), fem::SingularMatrix);
    set(std::nan(""));
    try {
        (void)fem::factorise(K, {1, 0, 0});
        FAIL("not refused");
    } catch (const fem::SingularMatrix& e) {
        CHECK(e.dof == 2);
    }
}

TEST_SUITE_END();
