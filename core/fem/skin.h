#pragma once
#include "fem/body.h"

#include <array>
#include <optional>
#include <type_traits>

namespace thinskin::fem {

struct SheetSection { double E = 0, nu = 0, thickness = 0; bool operator==(const SheetSection&) const = default; };

enum class Hold { held, hinged, free, sprung };
struct EdgeHold { Hold kind = Hold::held; double rotational_stiffness = 0; bool operator==(const EdgeHold&) const = default; }; ///< sprung: N mm/rad per mm

/// What ties the end of a rib to the ground, beside the edge of the skin it ends at (theory FE-4).
struct RibEnd {
    bool held = false;                   ///< w, u and v of the skin's node there
    bool turning_held = false;           ///< its slope along the rib
    double rotational_stiffness = 0;     ///< against that slope, N mm/rad
    bool operator==(const RibEnd&) const = default;
};

/// A straight stiffener along a grid line, joined to the skin along its whole line, attached under its shear centre.
///   E A        axial stiffness                       I_normal  about its own centroid, bending out of the skin (mm4)
///   G J        torsion                               I_lateral bending in the skin's plane (mm4): not used, the sheet holds it sideways
///   offset_z   centroid above (+z) the skin's mid-plane, mm
struct RibModel {
    std::string name;
    std::array<double, 2> from{}, to{};  ///< parallel to x or to y
    double E = 0, G = 0, A = 0, I_normal = 0, I_lateral = 0, J = 0, offset_z = 0;
    std::array<RibEnd, 2> ends;          ///< at from, at to
    bool operator==(const RibModel&) const = default;
};

/// A rectangle cut out of the sheet, with its own free edge. Grid lines pass through its sides; it may reach or cross the
/// panel's edge, which then holds nothing there. Ribs may run along its edge, not through it.
struct Opening { std::string name; double x0 = 0, y0 = 0, x1 = 0, y1 = 0; bool operator==(const Opening&) const = default; };

/// Rectangular sheet 0..width x 0..height, mid-plane at z = mid_z.
struct SkinModel {
    std::string name = "skin";
    double width = 0, height = 0, mid_z = 0;
    double spacing = 30;                 ///< largest grid spacing, mm
    SheetSection sheet;
    std::array<EdgeHold, 4> edges;       ///< left, right, bottom, top
    bool in_plane_fixed = true;          ///< false (movable): normal displacement free, tangential held, the bottom edge also carries y
    std::vector<RibModel> ribs;
    std::vector<Opening> openings;
    std::vector<std::array<double, 2>> held_points; ///< w, u and v held at the grid node nearest to each: hinges, latches
    bool operator==(const SkinModel&) const = default;
};

struct SkinGrid { std::vector<double> x, y; };

struct SkinElements;                     ///< element matrices by size, rib segments (internal)

/// The skin: Bogner-Fox-Schmit bicubic bending (w, w_x, w_y, w_xy) and incompatible-mode membrane (u, v) on one
/// rectilinear grid whose lines pass through edges and ribs, then filled to the spacing.
struct Skin {
    SkinModel model;
    SkinGrid grid;
    Body body;                           ///< 6 dofs a node: w, w_x, w_y, w_xy, u, v; then one per rib segment (edge bubble of u or v)
    std::shared_ptr<const SkinElements> elements;
};

/// Throws std::invalid_argument for values out of range (NaN included), std::runtime_error when the edges leave a mechanism.
[[nodiscard]] Skin make_skin(const SkinModel& model);
/// The same without its factor, for who wants another one or none: nothing that needs one may be asked of it.
[[nodiscard]] Skin skin_without_factor(const SkinModel& model);

/// A loose rectangular sheet with its lower left corner at (x0, y0) of the panel: the same elements, all four edges free (what the
/// model says of its edges is not read), held by nothing. A free body: its rigid motions are those of the panel's axes.
struct Plate { Skin sheet; double x0 = 0, y0 = 0; };
/// Throws std::invalid_argument for values out of range (NaN included).
[[nodiscard]] Plate make_plate(const SkinModel& model, double x0, double y0);

/// Strictly inside an opening: no sheet there.
[[nodiscard]] bool in_opening(const SkinModel& model, double x, double y);

/// Mean displacement over the footprint: exact integral of the shape functions, footprint anywhere inside the panel.
/// In-plane ports are at the mid-plane. Throws std::invalid_argument outside the panel and where it touches an opening.
[[nodiscard]] Row skin_port(const Skin& skin, const Footprint& where, SkinDirection direction);

/// The same on a loose plate; the footprint is in panel axes. A footprint that reaches over the plate's edge is cut off there.
[[nodiscard]] Row plate_port(const Plate& plate, const Footprint& where, SkinDirection direction);

/// Consistent load of a uniform pressure (N/mm2, + = +z) over the whole sheet (openings left out), over all dofs.
[[nodiscard]] Vector skin_pressure(const Skin& skin, double pressure);

/// Fields at a point. Moments per length: M_x bends along x, positive = tension at the +z face; N per length, tension positive.
/// Figure: a double, or several of them, one for each of several states.
template <class Figure> struct SkinPointOf {
    static Figure none() { if constexpr (std::is_same_v<Figure, double>) return 0; else return Figure::Zero(); }
    Figure u = none(), v = none(), w = none(), w_x = none(), w_y = none();
    Figure M_x = none(), M_y = none(), M_xy = none(), N_x = none(), N_y = none(), N_xy = none();
};
using SkinPoint = SkinPointOf<double>;
/// Throws std::invalid_argument outside the panel and inside an opening.
[[nodiscard]] SkinPoint skin_point(const Skin& skin, const Vector& u, double x, double y);
/// w at every grid line and at `between` places between neighbouring ones, by the element's own bicubic functions. NaN inside
/// an opening. Row after row along x. Throws std::invalid_argument for a negative `between` or a u of the wrong length.
struct SkinDeflection { std::vector<double> x, y, w; };
[[nodiscard]] SkinDeflection skin_deflection(const Skin& skin, const Vector& u, int between);
/// Unknowns of the node that a rib ends at: w, slope along the rib, u, v. `end`: 0 at from, 1 at to.
struct RibEndPlace { int w = 0, slope = 0, u = 0, v = 0; };
[[nodiscard]] RibEndPlace rib_end_place(const Skin& skin, std::size_t rib, std::size_t end);
/// Largest von Mises stress of both faces at a point, MPa.
[[nodiscard]] double von_mises(const SheetSection& sheet, const SkinPoint& p);

/// Up to eight states of one skin, read at a point all at once: each figure the same as skin_point() and the rest give of that state alone.
/// Throws as they do, and std::invalid_argument for more states.
class SkinStates {
public:
    static constexpr std::size_t most = 8;
    using Figures = Eigen::Array<double, most, 1>;             ///< one for each state; zeros behind the last
    SkinStates(const Skin& skin, const std::vector<const Vector*>& u);
    [[nodiscard]] SkinPointOf<Figures> at(double x, double y) const;
    [[nodiscard]] std::vector<SkinDeflection> deflection(int between) const;
private:
    const Skin* skin_;
    std::size_t count_;
    Eigen::Array<double, most, Eigen::Dynamic> u_;             ///< a column for each unknown
};
[[nodiscard]] SkinStates::Figures von_mises(const SheetSection& sheet, const SkinPointOf<SkinStates::Figures>& p);

/// In-plane tractions handed to one edge (N/mm along it) at n stations, from the membrane field: shear and normal flow. Zero beside an opening.
struct EdgeFlow { double at = 0, shear = 0, normal = 0; };
[[nodiscard]] std::vector<EdgeFlow> edge_flow(const Skin& skin, const Vector& u, int edge, int stations);

struct InPlaneForce { Footprint where; double x = 0, y = 0; };
/// Smallest positive factor on these forces at which the sheet (bending, edges as held, no ribs' membrane pre-stress) buckles.
/// Own coarser grid. Infinity: no compression. NaN: did not converge.
class BucklingModel;                     ///< factored once per skin
[[nodiscard]] std::shared_ptr<const BucklingModel> make_buckling(const SkinModel& model, double spacing = 60);
[[nodiscard]] double buckling_factor(const BucklingModel& model, const std::vector<InPlaneForce>& forces);
/// Of several states at once: the same, quicker.
[[nodiscard]] std::vector<double> buckling_factors(const BucklingModel& model, const std::vector<std::vector<InPlaneForce>>& states);
/// The same under one membrane force everywhere (N/mm, tension positive): for comparison with handbook plates.
[[nodiscard]] double buckling_factor_uniform(const BucklingModel& model, double N_x, double N_y, double N_xy);

} // namespace thinskin::fem
