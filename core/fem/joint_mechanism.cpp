// A free motion put into words (theory FE-13).
#include "fem/joint_system.h"

#include <cmath>
#include <cstdio>

namespace thinskin::fem {
namespace {

std::string number(double v)
{
    char text[32];
    std::snprintf(text, sizeof text, "%.4g", std::abs(v) < 1e-6 ? 0.0 : v);
    return text;
}

std::string triple(const Vec3& v) { return "(" + number(v(0)) + ", " + number(v(1)) + ", " + number(v(2)) + ")"; }

std::string direction(Vec3 d)
{
    d.normalize();
    static const char* const names[3] = {"x", "y", "z"};
    for (int k = 0; k < 3; ++k)
        if (std::abs(d(k)) > 1 - 1e-8) return names[k];
    return triple(d);
}

/// Largest part of a motion on each group of six.
Eigen::Index leading_group(const Matrix& basis, Eigen::Index groups)
{
    Eigen::Index best = 0;
    for (Eigen::Index g = 1; g < groups; ++g)
        if (basis.middleRows(6 * g, 6).norm() > basis.middleRows(6 * best, 6).norm() * (1 + 1e-9)) best = g;
    return best;
}

/// The combination of free motions that moves this group along one axis without turning it, if there is one.
Vector pure_translation(const JointProblem& p, const Matrix& basis, Eigen::Index group)
{
    const Matrix part = basis.middleRows(6 * group, 6);
    const Eigen::CompleteOrthogonalDecomposition<Matrix> solver(part);
    for (int k = 0; k < 3; ++k) {
        Vector want = Vector::Zero(6);
        want(k) = 1 / p.scale(6 * group + k);
        const Vector c = solver.solve(want);
        if ((part * c - want).norm() < 1e-6 * want.norm()) return basis * c;
    }
    return {};
}

std::string motion_words(const Vec3& t, const Vec3& turn, double size)
{
    if (turn.norm() * size < 1e-6 * t.norm()) return "is free to move along " + direction(t);
    const Vec3 on_axis = turn.cross(t) / turn.squaredNorm();
    return "is free to turn about " + direction(turn) + " through " + triple(on_axis);
}

} // namespace

std::string mechanism_words(const JointProblem& p, const std::vector<int>& rigid_body, const Matrix& basis)
{
    const auto groups = static_cast<Eigen::Index>(rigid_body.size());
    const Eigen::Index g = leading_group(basis, groups);
    const auto name = [&](Eigen::Index k) { return p.assembly->bodies[static_cast<std::size_t>(rigid_body[static_cast<std::size_t>(k)])]->name; };
    Eigen::ColPivHouseholderQR<Matrix> rank(basis.middleRows(6 * g, 6));
    rank.setThreshold(1e-6);
    if (rank.rank() == 6) return name(g) + " is not held: free to move along and turn about x, y and z";
    Vector v = pure_translation(p, basis, g);
    if (v.size() == 0) {
        Eigen::Index column = 0;
        basis.middleRows(6 * g, 6).colwise().norm().maxCoeff(&column);
        v = basis.col(column);
    }
    const Vector motion = v.cwiseProduct(p.scale);
    const double size = 1 / p.scale.segment(6 * g + 3, 3).maxCoeff();
    std::string words = name(g) + " " + motion_words(motion.segment<3>(6 * g), motion.segment<3>(6 * g + 3), size);
    for (Eigen::Index k = 0; k < groups; ++k)
        if (k != g && v.segment(6 * k, 6).norm() > 1e-6 * v.norm()) words += ", " + name(k) + " with it";
    return words;
}

} // namespace thinskin::fem
