#pragma once
#include <array>
#include <string>
#include <string_view>
#include <vector>

namespace thinskin::catalogue {

/// Cross section with sharp corners, mm. Axes of the section: x along the panel (the lying side), y off the panel.
/// The origin is the corner of the bounding box on the panel side: for an angle the heel's outer corner.
///
///   A1 = b t, A2 = (h - t) t, x_c = (A1 b/2 + A2 t/2)/A, ...: sums over rectangles about the centroid;
///   I_u,v = (I_x + I_y)/2 +- sqrt(((I_x - I_y)/2)^2 + I_xy^2)
///   J: angle (b + h - t) t^3/3; flat b t^3/3 (1 - 0.63 t/b + 0.052 (t/b)^5);
///      box 4 A_m^2 t/p + p t^3/3, A_m = (b-t)(h-t), p = 2 (b + h - 2 t) (Bredt; at most 4 % high as the wall fills the box);
///      hat, channel: open, sum of length t^3/3; shear centre of a channel e = 3 f^2/(w + 6 f) from the web's mid-line, away from
///      the flanges (f, w: mid-lines of flange and web). A hat whose feet are joined to a skin is a closed cell and much stiffer in torsion.
///
/// Rolled angles have a root fillet and round toes: against printed tables the sharp corner gives A 1 to 2 % low and
/// I 2 to 4 % high. rolled_angle() has the fillets and agrees with the printed tables to all their digits.
/// Source: elementary mechanics; angle and box checked against printed tables in tests/published/sections.cpp.
struct Section {
    enum class Kind { angle, flat, box, hat, channel };
    Kind kind = Kind::angle;
    std::string designation;     ///< as read, spaces tidied: "angle 40x40x4"
    double b = 0;                ///< along x: angle: the leg on the panel; flat: its extent along the panel; box: width; hat: crown; channel: web
    double h = 0;                ///< along y: angle: the standing leg; flat: its extent off the panel; box, hat: height; channel: flanges
    double t = 0;                ///< wall
    double foot = 0;             ///< hat only: each foot, outside of the side wall; 0 = feet not counted
    double width = 0;            ///< overall extent along x: b, or b + 2 foot
    double A = 0;                ///< mm2
    double x_c = 0, y_c = 0;     ///< centroid from the origin; an angle: from the heel's outer faces
    double I_x = 0, I_y = 0;     ///< integral of y^2 and of x^2 about the centroid, mm4
    double I_xy = 0;             ///< integral of x y about the centroid; negative for an angle
    double I_u = 0, I_v = 0;     ///< greatest and least
    double theta = 0;            ///< rad, from x to the axis u about which I is greatest, in (-pi/2, pi/2]
    double J = 0;                ///< mm4
    double S_x_toe = 0, S_x_heel = 0; ///< I_x / (h - y_c), I_x / y_c; heel = the face at the origin, toe = the far face
    double S_y_toe = 0, S_y_heel = 0; ///< I_y / (width - x_c), I_y / x_c
    double r_min = 0;            ///< sqrt(I_v / A)
    double x_s = 0, y_s = 0;     ///< shear centre from the origin; an angle: crossing of the mid-lines (t/2, t/2)
    std::vector<std::array<double, 2>> corners; ///< outer corners from the origin, where bending stress can be greatest
    std::string note;            ///< what the numbers leave out; may be empty

    [[nodiscard]] double mass_per_metre(double density_kg_m3) const { return A * density_kg_m3 * 1e-6; } ///< kg/m
};

/// A section read from text, or a sentence saying what was expected.
struct ReadSection {
    bool ok = false;
    Section section;
    std::string expected; ///< set when not ok: `expected a section such as "angle 40x40x4", found "angel 40x40x4"; did you mean angle?`
};

/// Reads, mm unless the text ends in "in":
///   angle 40x40x4, angle 60x40x5 (first the leg on the panel, then the standing leg), angle 1-1/2x1-1/2x1/8 in
///   flat 30x3 (stands on its edge), flat 30x3 lying
///   box 60x25x0.7, box 25x2 is refused (three numbers)
///   channel 40x20x2 (web on the panel x standing flanges x wall)
///   hat 40x25x1.0 (crown x height x wall; feet not counted), hat 40x25x12x1.0 (with feet of 12 outside the side walls)
/// Refuses: other words, a wall that is not thinner than half of a side (angle: thinner than each leg), zero, negative,
/// nan, inf, decimal comma, more than 1000 mm, anything left over.
[[nodiscard]] ReadSection read_section(std::string_view text);

/// Sharp-corner sections from dimensions in mm. The caller has checked 0 < t < b, h (box, hat, channel: 2 t < b, h).
struct Legs { double b, h, t; };
[[nodiscard]] Section make_angle(const Legs& legs);
[[nodiscard]] Section make_flat(const Legs& extent);            ///< b and h: extents along x and y; t = the lesser
[[nodiscard]] Section make_box(const Legs& outside);
[[nodiscard]] Section make_channel(const Legs& web);            ///< b web on the panel, h flanges off the panel
[[nodiscard]] Section make_hat(const Legs& crown, double foot); ///< b crown, h height, foot outside of the side wall

/// An angle with a root fillet r1 and toe radii r2 (tables: r2 = r1/2). J and the shear centre as for sharp corners.
/// Only for comparison with printed tables: the tool calculates with sharp corners.
struct Fillets { double r1, r2; };
[[nodiscard]] Section rolled_angle(const Legs& legs, const Fillets& fillets);

} // namespace thinskin::catalogue
