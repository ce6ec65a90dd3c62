#pragma once
#include "fem/skin_elements.h"

/// Quadratic part of the membrane strain, element by element (theory FE-19, FE-20); internal to core/fem.
///   g    assumed quadratic strains of one piece, g_k = 1/2 q^T M_k q with q the bending dofs
///   p    all dofs of the piece: q first, then membrane dofs
///   E    = g^T K_gp p + 1/2 g^T K_gg g on top of the small-displacement energy
///   s    = dE/dg = K_gp p + K_gg g: membrane forces, integrated with the functions of g
namespace thinskin::fem {

/// Per assumed strain k: matrix M_k over the bending dofs. Sheet: index 3 component + function; components x, y, xy;
/// functions 1, xi, eta. Rib: functions 1, xi.
using SheetGradients = std::array<Matrix16, 9>;
using RibGradients = std::array<Eigen::Matrix4d, 2>;
[[nodiscard]] SheetGradients sheet_gradients(double lx, double ly);
[[nodiscard]] RibGradients rib_gradients(double h);

/// Stiffness that goes with the assumed strains; `used`: indices into the gradients whose forces are not identically zero.
struct QuadraticElement { std::vector<int> used; Matrix K_gp, K_gg; };
[[nodiscard]] QuadraticElement quadratic_sheet(const SheetSection& sheet, double lx, double ly, unsigned edges);
/// p: w, w' at a, at b; axial u at a, at b; bubble.
[[nodiscard]] QuadraticElement quadratic_rib(const RibModel& rib, double h);

/// One piece in its place. The first `bending` dofs are q.
struct QuadraticPiece {
    const QuadraticElement* element = nullptr;
    const Matrix16* sheet = nullptr;         ///< first of the nine gradients, or
    const Eigen::Matrix4d* rib = nullptr;    ///< first of the two
    int bending = 16;
    std::vector<int> dofs;
    std::vector<int> entry;                  ///< place in the tangent's value list, column by column over dofs x dofs
};

/// Small matrices without allocation: at most 16 + 8 + 4 dofs and 9 strains.
constexpr int most_piece_dofs = 28, most_strains = 9;
using PieceVector = Eigen::Matrix<double, Eigen::Dynamic, 1, 0, most_piece_dofs, 1>;
using PieceMatrix = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, 0, most_piece_dofs, most_piece_dofs>;
using StrainVector = Eigen::Matrix<double, Eigen::Dynamic, 1, 0, most_strains, 1>;
using StrainMatrix = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, 0, most_strains, most_piece_dofs>;

/// State of one piece: strains, their derivatives after the bending dofs, forces.
struct PieceState { PieceVector p; StrainVector g, s; StrainMatrix G; };
[[nodiscard]] PieceState piece_state(const QuadraticPiece& piece, const Vector& u);
[[nodiscard]] PieceVector piece_force(const QuadraticPiece& piece, const PieceState& state);
/// Second derivative of E; `geometric` scales the part s_k M_k (1: exact).
[[nodiscard]] PieceMatrix piece_tangent(const QuadraticPiece& piece, const PieceState& state, double geometric);

} // namespace thinskin::fem
