#pragma once
#include <vector>

/// Clamped square plate of side 1, D = 1, nu = 0.3, forces on square pads (side 0: at a point). Asked for: sum of force times mean
/// deflection under its pad. One functional for all programs, so that an error means the same in each.
namespace thinskin::bench {

struct Pad { double x = 0, y = 0, force = 0, side = 0; };
struct PlateProblem { const char* name; std::vector<Pad> pads; double reference = 0; };

/// Central unit force: w a^-2 D / P = 0.005612025 (computed from the formula, nine digits agree with the handbook's 0.00560; see
/// tests/published/plates.cpp).
inline PlateProblem central_force() { return {"clamped, central force", {{0.5, 0.5, 1, 0}}, 0.005612025}; }

/// Four pads of 0.024 a, as washers of 18 mm on a panel of 740 mm, at places that lie on no grid: two push, two pull.
/// Reference: ritz_work() with 120 and 160 functions a direction agree to six digits (computed from the formula; `plate_ratios ritz` prints it).
inline PlateProblem four_pads()
{
    return {"clamped, four pads", {{0.203, 0.277, 1, 0.024}, {0.203, 0.487, -1, 0.024}, {0.749, 0.277, 1, 0.024}, {0.749, 0.487, -1, 0.024}}, 0.00528337};
}

/// Spectral Ritz solution with n x n polynomials that meet the clamped edges (differences of Legendre polynomials).
[[nodiscard]] double ritz_work(const PlateProblem& problem, int n);

struct PlateRun { double work = 0; int unknowns = 0; };
/// whole: make_skin, which carries the unknowns in the plane as well; bending: those held, as the buckling model holds them, so that what is
/// solved is what the library solves.
enum class Own { whole, bending };
/// This project's skin with n x n elements: grid, matrix, factor, loads, one solve.
[[nodiscard]] PlateRun own_plate(const PlateProblem& problem, int n, Own what);

/// The library assembles by its ready-made plate routine, as its own example does, or from an expression, three times as fast here.
enum class Assembly { ready_made, expression };
/// The general library's C1 quadrilateral on n x n elements; edges clamped by leaving their unknowns out. Built only where it is installed.
[[nodiscard]] PlateRun library_plate(const PlateProblem& problem, int n, Assembly way);

} // namespace thinskin::bench
