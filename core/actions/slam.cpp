#include "actions/slam.h"

#include "base/quantity.h"

#include <cmath>
#include <numbers>

namespace thinskin::actions {

namespace {
constexpr double g_mm_s2 = base::gravity_m_s2 * 1000.0;
}

std::optional<double> half_sine_stop_g(const HalfSineStop& in)
{
    // Written so that NaN is refused.
    if (!(in.v_edge_mm_s > 0 && in.v_edge_mm_s <= 5000)) return std::nullopt;
    if (!(in.y_edge_mm > 0 && std::isfinite(in.y_edge_mm))) return std::nullopt;
    if (!(in.y_mm >= 0 && std::isfinite(in.y_mm))) return std::nullopt;
    if (!(in.D_s >= 0.001 && in.D_s <= 0.5)) return std::nullopt;
    if (!(in.e >= 0 && in.e <= 1)) return std::nullopt;
    const double v_n = in.v_edge_mm_s * in.y_mm / in.y_edge_mm;
    return std::numbers::pi * v_n * (1 + in.e) / (2 * in.D_s) / g_mm_s2; // AC-1
}

} // namespace thinskin::actions
