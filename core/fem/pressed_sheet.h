#pragma once
#include "fem/hermite.h"
#include "fem/several.h"
#include "fem/types.h"

#include <array>
#include <vector>

/// Internal to core/fem: the geometric matrix K_g of a flat sheet under forces in its plane, never written out (theory FE-16).
namespace thinskin::fem {

/// Cubic functions of one element size at its 4 x 4 Gauss points, which are exact for K_g: [point][function], theirs along x and along y.
struct SheetShape {
    std::array<Hermite, 4> x, y;
    std::array<double, 4> xi{}, eta{};   ///< places of the points, -1 .. 1
    Eigen::Matrix4d area;                ///< mm2 that belongs to point (x, y)
};
[[nodiscard]] SheetShape sheet_shape(double lx, double ly);

/// One element of a pressed sheet: its shape, and the places of its 16 unknowns in the factor (-1: supported).
struct PressedElement { const SheetShape* shape = nullptr; std::array<int, 16> place{}; };
using PressedSheet = std::vector<PressedElement>;

/// Forces N_x, N_y, N_xy (N/mm) of each element as 1, xi, eta, xi eta: column e holds 3 of the first function, then 3 of the second ..
using ForceField = Eigen::Matrix<double, 12, Eigen::Dynamic>;
/// Several of them as columns beside each other: column 12 e + k holds what row k of column e holds.
template <int Width> [[nodiscard]] typename Several<Width>::Pieces beside_each_other(const std::vector<const ForceField*>& fields, Eigen::Index first, Eigen::Index count);

/// -K_g x of as many fields at once; x and the result in the order of elimination.
[[nodiscard]] Several<4>::Pieces press(const PressedSheet& sheet, const Several<4>::Pieces& fields, const Several<4>::Pieces& x);
[[nodiscard]] Several<8>::Pieces press(const PressedSheet& sheet, const Several<8>::Pieces& fields, const Several<8>::Pieces& x);

} // namespace thinskin::fem
