#pragma once

/// One whole stiffened panel for two programs: sheet clamped all round and held in its plane, one eccentric angle from side to side, a force
/// on the angle's line, a force beside it, and a pressure. Units N, mm. Axes and signs as in core/fem/skin.h.
namespace thinskin::verification {

struct Panel {
    double width = 740, height = 1520;           // mm
    double E = 210000, nu = 0.3, thickness = 0.8;
    double rib_y = 760;                          // the rib runs along x
    double A = 142, I = 8030, J = 426, G = 80769, centroid_z = -8.3; // 25 x 25 x 3 angle behind the sheet: mm2, mm4, mm
    double force_x = 370, on_rib = 760, beside_y = 950; // 1 N at (force_x, on_rib); 1 N at (force_x, beside_y)
    double pressure = 1e-5;                      // N/mm2
};

/// Places that are read: w and u.
struct Place { double x = 0, y = 0; };
constexpr Place places[] = {{370, 760}, {185, 760}, {370, 950}, {370, 380}, {185, 1140}};

} // namespace thinskin::verification
