#pragma once
#include <Eigen/Dense>

#include <array>

/// One-dimensional pieces of the tensor-product elements: cubic Hermite functions and their integrals.
namespace thinskin::fem {

/// Functions of (value at a, slope at a, value at b, slope at b) on 0 <= s <= 1 of an interval of length h, and their
/// first and second derivatives with respect to x = s h.
struct Hermite { std::array<double, 4> value{}, slope{}, curvature{}; };

[[nodiscard]] inline Hermite hermite(double h, double s)
{
    const double s2 = s * s, s3 = s2 * s;
    Hermite f;
    f.value = {1 - 3 * s2 + 2 * s3, h * (s - 2 * s2 + s3), 3 * s2 - 2 * s3, h * (s3 - s2)};
    f.slope = {(6 * s2 - 6 * s) / h, 1 - 4 * s + 3 * s2, (6 * s - 6 * s2) / h, 3 * s2 - 2 * s};
    f.curvature = {(12 * s - 6) / (h * h), (6 * s - 4) / h, (6 - 12 * s) / (h * h), (6 * s - 2) / h};
    return f;
}

struct GaussPoint { double s = 0, weight = 0; }; ///< on 0..1, weights sum to 1

inline constexpr std::array<GaussPoint, 2> gauss_2{{{0.21132486540518711775, 0.5}, {0.78867513459481288225, 0.5}}};
inline constexpr std::array<GaussPoint, 3> gauss_3{{{0.11270166537925831148, 5.0 / 18},
                                                    {0.5, 8.0 / 18},
                                                    {0.88729833462074168852, 5.0 / 18}}};
inline constexpr std::array<GaussPoint, 4> gauss_4{{{0.06943184420297371239, 0.17392742256872692869},
                                                    {0.33000947820757186760, 0.32607257743127307131},
                                                    {0.66999052179242813240, 0.32607257743127307131},
                                                    {0.93056815579702628761, 0.17392742256872692869}}};

/// Integrals over one interval of products H_i^(p) H_j^(q): mpq; exact (degree 6, four points).
struct LineIntegrals { Eigen::Matrix4d m00, m11, m22, m20; };

[[nodiscard]] inline LineIntegrals line_integrals(double h)
{
    LineIntegrals m{Eigen::Matrix4d::Zero(), Eigen::Matrix4d::Zero(), Eigen::Matrix4d::Zero(), Eigen::Matrix4d::Zero()};
    for (const GaussPoint& g : gauss_4) {
        const Hermite f = hermite(h, g.s);
        const Eigen::Vector4d v(f.value.data()), d(f.slope.data()), c(f.curvature.data());
        m.m00 += v * v.transpose() * (g.weight * h);
        m.m11 += d * d.transpose() * (g.weight * h);
        m.m22 += c * c.transpose() * (g.weight * h);
        m.m20 += c * v.transpose() * (g.weight * h);
    }
    return m;
}

} // namespace thinskin::fem
