// Ratios of docs/performance.md, each from one run:
//   plate_ratios growth     own skin from 1 000 to 100 000 unknowns: time, memory, fitted exponents
//   plate_ratios factor     own factor against Eigen's simplicial one and, where it is installed, CHOLMOD's supernodal one
//   plate_ratios library    a plate at equal error against the general finite-element library, where it is installed
//   plate_ratios ritz       the reference of the four pads
#include "bench/plate_problem.h"
#include "bench/timing.h"
#include "fem/factor.h"
#include "fem/joints.h"
#include "fem/skin.h"

#include <Eigen/SparseCholesky>
#ifdef THINSKIN_WITH_CHOLMOD
#include <Eigen/CholmodSupport>
#endif

#include <cmath>
#include <cstdio>
#include <optional>
#include <string>

using namespace thinskin;
using namespace thinskin::bench;

namespace {

/// The demo's panel, 740 x 1520 mm.
fem::SkinModel panel(double spacing)
{
    fem::SkinModel m;
    m.width = 740;
    m.height = 1520;
    m.spacing = spacing;
    m.sheet = {210000, 0.3, 0.76};
    return m;
}

constexpr double spacings[] = {75, 50, 30, 20, 12, 8.4};

/// Exponent p of y = c x^p by least squares in the logarithms.
double exponent(const std::vector<double>& x, const std::vector<double>& y)
{
    double sx = 0, sy = 0, sxx = 0, sxy = 0;
    const auto n = static_cast<double>(x.size());
    for (std::size_t i = 0; i < x.size(); ++i) {
        const double a = std::log(x[i]), b = std::log(y[i]);
        sx += a, sy += b, sxx += a * a, sxy += a * b;
    }
    return (n * sxy - sx * sy) / (n * sxx - sx * sx);
}

/// Unit ties under 18 mm washers at twelve places: what an assembly asks of its skin.
fem::Assembly washers(const fem::Skin& skin)
{
    fem::Assembly a;
    a.bodies = {&skin.body};
    for (int i = 0; i < 3; ++i)
        for (int j = 0; j < 4; ++j) {
            fem::Joint tie;
            tie.name = "washer";
            tie.a = {0, fem::skin_port(skin, {150.0 + 210 * i, 230.0 + 330 * j, 9, 9}, fem::SkinDirection::z)};
            tie.compliance = 1e-5;
            tie.skin_normal = true;
            a.joints.push_back(tie);
        }
    return a;
}

int growth()
{
    std::printf("| spacing, mm | unknowns | make_skin, ms | of that factor, ms | condense 12 ports, ms | one solve, ms | kept, MB |\n|---|---|---|---|---|---|---|\n");
    std::vector<double> size;
    std::vector<std::vector<double>> columns(5);
    for (const double spacing : spacings) {
        const double before = heap_MB();
        const auto skin = std::make_unique<fem::Skin>(fem::make_skin(panel(spacing)));
        const double kept = heap_MB() - before;
        const fem::Assembly assembly = washers(*skin);
        const fem::Vector load = fem::skin_pressure(*skin, 1e-6);
        const std::vector<double> ms = least_in_turns({[&] { (void)fem::make_skin(panel(spacing)); }, [&] { (void)fem::factorise(skin->body.K, skin->body.supported, skin->body.spots); },
                                                       [&] { fem::ColumnCache cache; (void)fem::condense(assembly, 0, cache); }, [&] { (void)fem::solve(skin->body, load); }},
                                                      skin->body.dofs > 30000 ? 3 : 9);
        const int n = skin->body.factor->size();
        std::printf("| %g | %d | %.2f | %.2f | %.2f | %.3f | %.1f |\n", spacing, n, ms[0], ms[1], ms[2], ms[3], kept);
        size.push_back(n);
        for (std::size_t k = 0; k < 4; ++k) columns[k].push_back(ms[k]);
        columns[4].push_back(kept);
    }
    std::printf("| exponent | |");
    for (const auto& c : columns) std::printf(" %.2f |", exponent(size, c));
    std::printf("\n");
    return 0;
}

/// Unsupported block, lower triangle kept by the solvers themselves.
fem::Sparse free_block(const fem::Body& body)
{
    std::vector<int> place(body.supported.size(), -1);
    int n = 0;
    for (std::size_t d = 0; d < place.size(); ++d)
        if (!body.supported[d]) place[d] = n++;
    std::vector<Eigen::Triplet<double>> entries;
    for (int c = 0; c < body.K.outerSize(); ++c)
        for (fem::Sparse::InnerIterator it(body.K, c); it; ++it)
            if (const int r = place[static_cast<std::size_t>(it.row())], k = place[static_cast<std::size_t>(c)]; r >= 0 && k >= 0 && it.value() != 0)
                entries.emplace_back(r, k, it.value());
    fem::Sparse K(n, n);
    K.setFromTriplets(entries.begin(), entries.end());
    return K;
}

int factor()
{
    using Simplicial = Eigen::SimplicialLDLT<fem::Sparse>;
    std::printf("| unknowns | own: analyse + factor, ms | solve, ms | simplicial, times own | solve |");
#ifdef THINSKIN_WITH_CHOLMOD
    using Supernodal = Eigen::CholmodSupernodalLLT<fem::Sparse>;
    std::printf(" supernodal, times own | solve |");
#endif
    std::printf("\n");
    for (const double spacing : spacings) {
        const fem::Skin skin = fem::make_skin(panel(spacing));
        const fem::Body& body = skin.body;
        const fem::Sparse K = free_block(body);
        const fem::Vector load = fem::skin_pressure(skin, 1e-6), f = fem::Vector::Ones(K.rows());
        const Simplicial simplicial(K);
        std::vector<std::function<void()>> runs{[&] { (void)fem::factorise(body.K, body.supported, body.spots); }, [&] { (void)fem::solve(body, load); }, [&] { const Simplicial s(K); }, [&] { (void)fem::Vector(simplicial.solve(f)); }};
#ifdef THINSKIN_WITH_CHOLMOD
        Supernodal supernodal(K);
        runs.emplace_back([&] { const Supernodal s(K); });
        runs.emplace_back([&] { (void)fem::Vector(supernodal.solve(f)); });
#endif
        const auto ms = least_in_turns(runs, body.dofs > 30000 ? 3 : 9);
        std::printf("| %d | %.2f | %.3f |", static_cast<int>(K.rows()), ms[0], ms[1]);
        for (std::size_t i = 2; i < ms.size(); ++i) std::printf(" %.2f |", ms[i] / ms[i % 2]);
        std::printf("\n");
    }
    return 0;
}

#ifdef THINSKIN_WITH_GETFEM
struct Point { double error = 0, ms = 0; };

/// Time at an error, between the grids on both sides of it in the logarithms; none when no pair of grids holds it.
std::optional<double> time_at(const std::vector<Point>& points, double error)
{
    for (std::size_t i = 0; i + 1 < points.size(); ++i) {
        const Point &coarse = points[i], &fine = points[i + 1];
        if (coarse.error < error || fine.error > error) continue;
        const double s = std::log(coarse.error / error) / std::log(coarse.error / fine.error);
        return std::exp(std::log(coarse.ms) + s * std::log(fine.ms / coarse.ms));
    }
    return {};
}

void library(const PlateProblem& p)
{
    std::vector<Point> own, bending, expression, ready_made;
    std::printf("\n%s; reference %.9g. Library: a from an expression, b by its ready-made routine\n\n", p.name, p.reference);
    std::printf("| elements across | own: unknowns | error, %% | ms | bending alone: unknowns | ms | library: unknowns | error, %% | a, ms | b, ms |\n|---|---|---|---|---|---|---|---|---|---|\n");
    for (const int n : {8, 12, 16, 20, 24, 32, 40, 48}) {
        PlateRun a, alone, b;
        const auto ms = least_in_turns({[&] { a = own_plate(p, n, Own::whole); }, [&] { alone = own_plate(p, n, Own::bending); }, [&] { b = library_plate(p, n, Assembly::expression); }, [&] { b = library_plate(p, n, Assembly::ready_made); }}, 9);
        const double error_a = a.work / p.reference - 1, error_b = b.work / p.reference - 1;
        own.push_back({std::abs(error_a), ms[0]});
        bending.push_back({std::abs(alone.work / p.reference - 1), ms[1]});
        expression.push_back({std::abs(error_b), ms[2]});
        ready_made.push_back({std::abs(error_b), ms[3]});
        std::printf("| %d | %d | %+.3f | %.2f | %d | %.2f | %d | %+.3f | %.2f | %.2f |\n", n, a.unknowns, 100 * error_a, ms[0], alone.unknowns, ms[1], b.unknowns, 100 * error_b, ms[2], ms[3]);
    }
    std::printf("\n| at an error of, %% | own, ms | bending alone, ms | a, ms | b, ms | a over own | b over own | a over bending alone | b over bending alone |\n|---|---|---|---|---|---|---|---|---|\n");
    for (const double error : {0.005, 0.002, 0.001, 0.0005}) {
        const auto t = time_at(own, error), alone = time_at(bending, error), a = time_at(expression, error), b = time_at(ready_made, error);
        if (t && alone && a && b) std::printf("| %.2f | %.2f | %.2f | %.1f | %.1f | %.1f | %.1f | %.1f | %.1f |\n", 100 * error, *t, *alone, *a, *b, *a / *t, *b / *t, *a / *alone, *b / *alone);
    }
}

int library()
{
    library(central_force());
    library(four_pads());
    return 0;
}
#else
int library()
{
    std::printf("the finite-element library was not found when this was built (Debian: libgetfem-dev, libmumps-seq-dev)\n");
    return 1;
}
#endif

int ritz()
{
    for (const int n : {40, 80, 120, 160}) std::printf("four pads, %d functions a direction: %.9g\n", n, ritz_work(four_pads(), n));
    return 0;
}

} // namespace

int main(int argc, char** argv)
{
    const std::string what = argc == 2 ? argv[1] : "";
    if (what == "growth") return growth();
    if (what == "factor") return factor();
    if (what == "library") return library();
    if (what == "ritz") return ritz();
    std::fprintf(stderr, "usage: plate_ratios growth | factor | library | ritz\n");
    return 2;
}
