#include "fem/factor.h"
#include "fem/ordering.h"
#include "fem/several.h"
#include "fem/skin.h"
#include "support/near.h"

#include <algorithm>
#include <set>

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

namespace {

/// A panel with a rib, an opening and a spring along an edge: unknowns of every kind, bending and stretching joined along the rib alone.
fem::SkinModel panel_with_all()
{
    fem::SkinModel m;
    m.name = "panel";
    m.width = 500, m.height = 700, m.spacing = 40;
    m.sheet = {210000, 0.3, 0.8};
    m.edges[1] = {fem::Hold::sprung, 300};
    m.ribs.push_back({.name = "rib", .from = {200, 0}, .to = {200, 700}, .E = 210000, .G = 80000, .A = 60, .I_normal = 2000, .I_lateral = 1500, .J = 30, .offset_z = 9, .ends = {}});
    m.openings.push_back({"hole", 300, 250, 420, 400});
    return m;
}

/// Of every supernode: each group it eliminates meets only groups in it, below it, or before it.
void check_structure(const fem::Groups& g, const fem::Symbolic& s)
{
    std::vector<int> place(s.order.size(), -1);
    for (std::size_t k = 0; k < s.order.size(); ++k) place[static_cast<std::size_t>(s.order[k])] = static_cast<int>(k);
    CHECK(std::none_of(place.begin(), place.end(), [](int p) { return p < 0; })); // each group once
    REQUIRE(s.first.size() == s.below.size() + 1);
    for (std::size_t b = 0; b < s.below.size(); ++b) {
        const std::set<int> below(s.below[b].begin(), s.below[b].end());
        const auto inside = [&](int p) { return p < s.first[b + 1] || below.contains(p); };
        for (int k = s.first[b]; k < s.first[b + 1]; ++k)
            for (const int n : g.neighbours[static_cast<std::size_t>(s.order[static_cast<std::size_t>(k)])])
                if (place[static_cast<std::size_t>(n)] >= s.first[b] && !inside(place[static_cast<std::size_t>(n)])) FAIL_CHECK("a neighbour is missing below supernode " << b);
        if (s.parent[b] < 0) continue;
        const auto up = static_cast<std::size_t>(s.parent[b]);
        const std::set<int> of_parent(s.below[up].begin(), s.below[up].end());
        for (const int p : s.below[b]) // what a supernode hands on finds a place in its parent
            if (p >= s.first[up + 1] && !of_parent.contains(p)) FAIL_CHECK("supernode " << b << " hands on what its parent does not hold");
    }
}

} // namespace

TEST_CASE("Nested dissection: good spots, one spot for all and scattered ones give a right structure and the same answer as minimum degree")
{
    const fem::Skin skin = fem::make_skin(panel_with_all());
    const fem::Body& body = skin.body;
    REQUIRE(body.spots.size() == static_cast<std::size_t>(body.dofs));
    fem::Body plain = body;
    plain.factor = fem::factorise(body.K, body.supported);
    const fem::Vector load = fem::Vector::LinSpaced(body.dofs, -1, 2), want = fem::solve(plain, load);
    const fem::Groups groups = fem::group_dofs(body.K, body.supported);
    std::vector<fem::Spot> one(body.spots.size()), scattered = body.spots;
    for (std::size_t d = 0; d < scattered.size(); ++d) scattered[d] = {static_cast<double>(d * 7919 % 211), static_cast<double>(d * 104729 % 157)};
    for (const std::vector<fem::Spot>& spots : {body.spots, one, scattered}) {
        std::vector<fem::Spot> of_groups;
        for (const auto& dofs : groups.dofs) of_groups.push_back(spots[static_cast<std::size_t>(dofs.front())]);
        check_structure(groups, fem::dissect(groups, of_groups));
        fem::Body cut = body;
        cut.factor = fem::factorise(body.K, body.supported, spots);
        CHECK((fem::solve(cut, load) - want).norm() < 1e-9 * want.norm());
    }
    CHECK_THROWS_AS((void)fem::factorise(body.K, body.supported, {{0, 0}}), std::invalid_argument);
    CHECK_THROWS_AS((void)fem::dissect(groups, {{0, 0}}), std::invalid_argument);
}

TEST_CASE("Any number of columns at once: each as it is alone, also where most of a load is nothing, and a NaN stays in its column")
{
    const fem::Skin skin = fem::make_skin(panel_with_all());
    const fem::Body& body = skin.body;
    fem::Vector few = fem::Vector::Zero(body.dofs);
    fem::add(few, fem::skin_port(skin, {120, 500, 9, 9}, fem::SkinDirection::z), 1);
    for (const int count : {1, 3, 4, 5, 8, 9, 13}) {
        CAPTURE(count);
        fem::Matrix loads(body.dofs, count);
        for (int c = 0; c < count; ++c) loads.col(c) = c % 2 == 0 ? fem::Vector((c + 1) * few) : fem::Vector(fem::Vector::LinSpaced(body.dofs, -1, c));
        const fem::Matrix u = fem::solve_columns(body, loads), Ku = fem::symmetric_product(body.K, u);
        for (int c = 0; c < count; ++c) {
            CHECK((u.col(c) - fem::solve(body, loads.col(c))).norm() < 1e-10 * u.col(c).norm());
            CHECK((Ku.col(c) - body.K * u.col(c)).norm() < 1e-13 * (body.K * u.col(c)).norm() + 1e-300);
        }
    }
    fem::Matrix bad = fem::Matrix::Zero(body.dofs, 5);
    bad.col(2)(body.factor->dof[40]) = std::nan("");
    const fem::Matrix u = fem::solve_columns(body, bad);
    CHECK(u.col(2).hasNaN());
    for (const int c : {0, 1, 3, 4}) CHECK(u.col(c).isZero(0));
    CHECK_THROWS_AS((void)fem::symmetric_product(body.K, fem::Matrix::Zero(3, 1)), std::invalid_argument);
}

TEST_SUITE_END();
