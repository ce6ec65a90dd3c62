#pragma once
#include <string>
#include <string_view>

namespace thinskin::base {

/// What a number measures. Inside, values are in N, mm, MPa, kg, s, rad; the comment names the inner unit.
enum class Dimension {
    length,                       ///< mm
    mass,                         ///< kg
    force,                        ///< N
    stress,                       ///< MPa
    moment,                       ///< N mm
    rotational_stiffness,         ///< N mm/rad per mm = N/rad
    angle,                        ///< rad
    frequency,                    ///< Hz
    acceleration,                 ///< in standard gravities, 1 g = 9.80665 m/s2
    speed,                        ///< mm/s
    time,                         ///< s
    ratio,                        ///< fraction; "5 %" reads as 0.05
    stiffness,                    ///< N/mm, of a rubber mount
    rotational_spring,            ///< N mm/rad, of one member end
    acceleration_density,         ///< g2/Hz, one-sided
};

/// Standard gravity in mm/s2 and m/s2.
inline constexpr double gravity_m_s2 = 9.80665;

/// A value in the inner unit with the text as the user wrote it ("1-1/4 in"). An empty text = not from a user.
struct Quantity {
    double value = 0;
    std::string text;
};

/// Result of reading a quantity: ok, or a sentence saying what was expected.
struct ReadQuantity {
    bool ok = false;
    Quantity quantity;
    std::string expected; ///< set when not ok: `expected a length such as "0.8 mm", found "0,8"`
};

/// Reads "0.8 mm", "1-1/4 in", "3/8 in", "22 ga" (steel manufacturers' standard gauge), "15000 km", "120 N·m/rad per m".
/// Refuses: no unit, wrong dimension, nan, inf, decimal comma, other gauges. Zero lengths need a unit too.
[[nodiscard]] ReadQuantity read_quantity(std::string_view text, Dimension wanted);

/// "length", "mass", ... for messages; and an example such as "0.8 mm".
[[nodiscard]] std::string_view name(Dimension d);
[[nodiscard]] std::string_view example(Dimension d);

/// Inner unit's name ("mm", "N", "MPa").
[[nodiscard]] std::string_view inner_unit(Dimension d);

} // namespace thinskin::base
