#pragma once
#include "fem/skin.h"

#include <functional>
#include <map>

/// Element matrices of the skin, one per element size; internal to core/fem.
namespace thinskin::fem {

using Matrix16 = Eigen::Matrix<double, 16, 16>;

/// Flexural rigidity E t^3 / (12 (1 - nu^2)), N mm.
[[nodiscard]] double rigidity(const SheetSection& sheet);

/// Bogner-Fox-Schmit element lx x ly (theory FE-1). Order: node c = ax + 2 ay (ax, ay = 0, 1 along x, y), then w, w_x, w_y, w_xy.
[[nodiscard]] Matrix16 bending_element(double D, double nu, double lx, double ly);

/// Edges of an element that carry a rib and hence a quadratic edge displacement along the rib.
enum RibEdge : unsigned { rib_bottom = 1, rib_top = 2, rib_left = 4, rib_right = 8 };

/// Incompatible-mode membrane element (theory FE-2). Order: node c, then u, v: 8; then one edge bubble per set bit of `edges`.
struct MembraneElement {
    Matrix K;                            ///< (8 + bubbles) square, incompatible modes condensed
    Matrix recover;                      ///< 16 x (8 + bubbles): all 16 shape coefficients (nodes, 4 modes, 4 bubbles)
    std::array<Matrix, 4> corner;        ///< 3 x (8 + bubbles): N_x, N_y, N_xy at node c
};
[[nodiscard]] MembraneElement membrane_element(const SheetSection& sheet, double lx, double ly, unsigned edges);
/// (eps_x, eps_y, gamma_xy) per shape coefficient at xi, eta in -1..1.
[[nodiscard]] Eigen::Matrix<double, 3, 16> membrane_strain(double lx, double ly, double xi, double eta);
/// Plane stress: (N_x, N_y, N_xy) = C (eps_x, eps_y, gamma_xy), N/mm.
[[nodiscard]] Eigen::Matrix3d membrane_stiffness(const SheetSection& sheet);

/// Grid with its intervals sorted into classes of exactly equal length, rib segments and their bubbles.
struct SkinElements {
    SkinElements() = default;
    SkinElements(const SkinElements&) = delete; // it points into itself
    SkinElements& operator=(const SkinElements&) = delete;

    std::vector<int> x_class, y_class;   ///< per interval
    std::vector<double> x_length, y_length; ///< per class
    std::vector<int> x_bubble, y_bubble; ///< dof of the bubble on a segment along x [i + (nx-1) j], along y [i + nx j]; -1: no rib
    std::vector<char> missing;           ///< per element [i + (nx-1) j]: 1 = inside an opening
    std::map<std::array<int, 2>, Matrix16> bending;                 ///< by (x class, y class)
    std::map<std::array<unsigned, 3>, MembraneElement> membrane;    ///< by (x class, y class, rib edges)
    std::vector<const MembraneElement*> membrane_of;                ///< per element, into `membrane`; null inside an opening
};

struct SkinLayout {
    const SkinGrid& grid;
    [[nodiscard]] int nx() const { return static_cast<int>(grid.x.size()); }
    [[nodiscard]] int ny() const { return static_cast<int>(grid.y.size()); }
    [[nodiscard]] int node(int i, int j) const { return i + nx() * j; }
    [[nodiscard]] int dof(int i, int j, int k) const { return 6 * node(i, j) + k; }
    [[nodiscard]] std::size_t element(int i, int j) const { return static_cast<std::size_t>(i + (nx() - 1) * j); }
    [[nodiscard]] int grid_dofs() const { return 6 * nx() * ny(); }
};

/// Up to N numbers of an element, without an allocation: they are asked for at every point where a field is read.
template <std::size_t N> struct Few {
    std::array<int, N> values{};
    std::size_t count = 0;
    void push_back(int v) { values[count++] = v; }
    [[nodiscard]] std::size_t size() const { return count; }
    [[nodiscard]] int operator[](std::size_t k) const { return values[k]; }
    [[nodiscard]] auto begin() const { return values.begin(); }
    [[nodiscard]] auto end() const { return values.begin() + static_cast<std::ptrdiff_t>(count); }
};

/// Rib edges of element (i, j) and the bubble dofs in the order of the bits.
struct ElementBubbles { unsigned edges = 0; Few<4> dofs; };
[[nodiscard]] ElementBubbles element_bubbles(const SkinLayout& layout, const SkinElements& e, int i, int j);
/// Membrane dofs of element (i, j): 8, then its bubbles.
[[nodiscard]] Few<12> membrane_dofs(const SkinLayout& layout, const ElementBubbles& bubbles, int i, int j);

/// Grid lines through edges, ribs and rib ends, filled to the spacing; classes of intervals; bubbles numbered after the grid dofs.
struct GridAndElements { SkinGrid grid; std::shared_ptr<SkinElements> elements; int dofs = 0; };
[[nodiscard]] GridAndElements make_grid(const SkinModel& model);

/// Segments of a rib: grid indices of its line and of its first and last node along it.
struct RibLine { bool along_x = true; int line = 0, first = 0, last = 0; };
[[nodiscard]] RibLine rib_line(const SkinGrid& grid, const RibModel& rib);

/// Stiffness of all ribs and edge springs as triplets (theory FE-3, FE-4).
void add_ribs(const SkinModel& model, const SkinGrid& grid, const SkinElements& e, std::vector<Eigen::Triplet<double>>& out);
void add_edge_springs(const SkinModel& model, const SkinGrid& grid, const SkinElements& e, std::vector<Eigen::Triplet<double>>& out);
void add_rib_end_springs(const SkinModel& model, const SkinGrid& grid, std::vector<Eigen::Triplet<double>>& out);
/// Marks what the ends of the ribs hold (theory FE-4).
void hold_rib_ends(const SkinModel& model, const SkinGrid& grid, std::vector<char>& supported);
[[nodiscard]] std::vector<char> skin_supports(const SkinModel& model, const SkinGrid& grid, const SkinElements& e, int dofs);

/// Interval of `lines` that holds p (the upper one on a line) and the place in it, 0..1.
struct Interval { int index = 0; double s = 0, length = 0; };
[[nodiscard]] Interval find_interval(const std::vector<double>& lines, double p);

/// The element that holds a point: on a line the one above or to the right, unless it is missing. Throws std::invalid_argument
/// outside the panel and inside an opening; `who` starts the message.
struct ElementPlace { Interval x, y; };
[[nodiscard]] ElementPlace find_element(const Skin& skin, double x, double y, const char* who);

/// Point at a share 0..1 of an edge; sheet: false beside an opening.
struct EdgeStation { double along = 0, x = 0, y = 0; bool sheet = true; };
[[nodiscard]] EdgeStation edge_station(const SkinModel& model, int edge, double share);

/// What the stress resultants of `field` hand to an edge at n stations; nothing where there is no sheet.
[[nodiscard]] std::vector<EdgeFlow> edge_flow(const SkinModel& model, int edge, int stations, const std::function<SkinPoint(double x, double y)>& field);

/// The other half of skin_without_factor(). Throws as make_skin().
[[nodiscard]] std::shared_ptr<const Factor> skin_factor(const Skin& skin, const std::vector<char>& supported);

/// "slope w_x at (30.0, 60.0) mm"
[[nodiscard]] std::string dof_place(const SkinGrid& grid, int dof);

void check_skin_model(const SkinModel& model, bool loose = false); ///< throws std::invalid_argument; loose: all four edges may be free

} // namespace thinskin::fem
