#pragma once

/// A square panel with a square window for two programs: sheet clamped all round, the window's own edge free, a pressure on what is left
/// of the sheet, or a force beside the window. Units N, mm. Axes and signs as in core/fem/skin.h.
namespace thinskin::verification {

struct Windowed {
    double side = 1000;                            // mm
    double E = 210000, nu = 0.3, thickness = 1;
    double low = 300, high = 700;                  // the window: low..high both ways
    double pressure = 1e-5;                        // N/mm2, on the sheet that is left
    double force_x = 500, force_y = 200;           // 1 N here
};

/// Places where w is read: middle of the window's lower and right side, on the way to the corner, beside the force.
struct WindowPlace { double x = 0, y = 0; };
constexpr WindowPlace window_places[] = {{500, 300}, {700, 500}, {200, 200}, {500, 150}, {300, 200}};

} // namespace thinskin::verification
