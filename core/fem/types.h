#pragma once
#include <Eigen/Dense>
#include <Eigen/Sparse>

#include <string>
#include <utility>
#include <vector>

/// The solver knows no case and no standard. Units N mm t s rad; axes x right, y up, z out of the panel.
namespace thinskin::fem {

using Vector = Eigen::VectorXd;
using Matrix = Eigen::MatrixXd;
using Sparse = Eigen::SparseMatrix<double>;
using Vec3 = Eigen::Vector3d;

/// A linear functional on the dofs of one body: the displacement of a material point in a direction, averaged over
/// a footprint. Entries are (dof, coefficient) over all dofs of the body, supported ones included.
using Row = std::vector<std::pair<int, double>>;

/// In-plane area over which a port averages, about (x, y). half_x = half_y = 0: a point.
enum class SkinDirection { x, y, z };    ///< u, v, w; positive along the panel axes
struct Footprint { double x = 0, y = 0, half_x = 0, half_y = 0; };

/// Where a dof lies in its body's plane.
struct Spot { double x = 0, y = 0; };

} // namespace thinskin::fem
