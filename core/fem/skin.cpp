#include "fem/skin.h"

#include "fem/factor.h"
#include "fem/skin_elements.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <stdexcept>

namespace thinskin::fem {
namespace {

void make_elements(const SkinModel& model, const SkinLayout& l, SkinElements& e)
{
    const double D = rigidity(model.sheet);
    e.membrane_of.assign(e.missing.size(), nullptr);
    for (int j = 0; j + 1 < l.ny(); ++j)
        for (int i = 0; i + 1 < l.nx(); ++i) {
            if (e.missing[l.element(i, j)]) continue;
            const int cx = e.x_class[static_cast<std::size_t>(i)], cy = e.y_class[static_cast<std::size_t>(j)];
            const double lx = e.x_length[static_cast<std::size_t>(cx)], ly = e.y_length[static_cast<std::size_t>(cy)];
            if (!e.bending.contains({cx, cy})) e.bending[{cx, cy}] = bending_element(D, model.sheet.nu, lx, ly);
            const unsigned edges = element_bubbles(l, e, i, j).edges;
            const std::array<unsigned, 3> key{static_cast<unsigned>(cx), static_cast<unsigned>(cy), edges};
            if (!e.membrane.contains(key)) e.membrane[key] = membrane_element(model.sheet, lx, ly, edges);
            e.membrane_of[l.element(i, j)] = &e.membrane[key];
        }
}

/// Grid part of K written straight into compressed columns: every node has its (up to nine) neighbours in ascending order,
/// four rows of each in a bending column, two in a membrane column. A list of triplets takes ten times as long.
class GridMatrix {
public:
    GridMatrix(const SkinLayout& layout, int dofs) : l(layout), K(dofs, dofs)
    {
        Eigen::Index entries = 0;
        for (int j = 0; j < l.ny(); ++j)
            for (int i = 0; i < l.nx(); ++i)
                for (int k = 0; k < 6; ++k) {
                    K.outerIndexPtr()[l.dof(i, j, k)] = static_cast<int>(entries);
                    entries += neighbours(i, j) * (k < 4 ? 4 : 2);
                }
        for (int d = l.grid_dofs(); d <= dofs; ++d) K.outerIndexPtr()[d] = static_cast<int>(entries);
        K.resizeNonZeros(entries);
        std::fill_n(K.valuePtr(), entries, 0.0);
        for (int j = 0; j < l.ny(); ++j)
            for (int i = 0; i < l.nx(); ++i) write_rows(i, j);
    }

    /// Adds the square between the dofs of node (i, j), its columns, and of node (m, n), its rows: 4 x 4 bending from dof 0, 2 x 2 membrane from 4.
    template <class Square> void add(int i, int j, int m, int n, int first, const Square& values)
    {
        constexpr int rows = Square::RowsAtCompileTime;
        const int slot = (n - low(j)) * (high(i, l.nx()) - low(i) + 1) + m - low(i);
        for (int a = 0; a < rows; ++a) {
            double* const to = K.valuePtr() + K.outerIndexPtr()[l.dof(i, j, first + a)] + slot * rows;
            for (int b = 0; b < rows; ++b) to[b] += values(b, a);
        }
    }

    void give(Sparse& to) { to.swap(K); } ///< a sparse matrix that is returned or moved is copied

private:
    SkinLayout l;
    Sparse K;

    static int low(int i) { return std::max(i - 1, 0); }
    static int high(int i, int count) { return std::min(i + 1, count - 1); }
    [[nodiscard]] int neighbours(int i, int j) const { return (high(i, l.nx()) - low(i) + 1) * (high(j, l.ny()) - low(j) + 1); }

    void write_rows(int i, int j)
    {
        for (int k = 0; k < 6; ++k) {
            int p = K.outerIndexPtr()[l.dof(i, j, k)];
            for (int n = low(j); n <= high(j, l.ny()); ++n)
                for (int m = low(i); m <= high(i, l.nx()); ++m)
                    for (int b = k < 4 ? 0 : 4; b < (k < 4 ? 4 : 6); ++b) K.innerIndexPtr()[p++] = l.dof(m, n, b);
        }
    }
};

void add_element(GridMatrix& K, int i, int j, const Matrix16& bending, const Matrix& membrane)
{
    for (int c = 0; c < 4; ++c)
        for (int r = 0; r < 4; ++r) {
            K.add(i + c % 2, j + c / 2, i + r % 2, j + r / 2, 0, bending.block<4, 4>(4 * r, 4 * c));
            K.add(i + c % 2, j + c / 2, i + r % 2, j + r / 2, 4, membrane.block<2, 2>(2 * r, 2 * c));
        }
}

/// Rows and columns of the edge bubbles of one element.
void add_bubbles(const MembraneElement& m, const Few<12>& dofs, std::vector<Eigen::Triplet<double>>& out)
{
    for (std::size_t a = 0; a < dofs.size(); ++a)
        for (std::size_t b = 0; b < dofs.size(); ++b)
            if (a >= 8 || b >= 8) out.emplace_back(dofs[a], dofs[b], m.K(static_cast<Eigen::Index>(a), static_cast<Eigen::Index>(b)));
}

void assemble(const SkinModel& model, const GridAndElements& g, Sparse& out)
{
    const SkinLayout l{g.grid};
    const SkinElements& e = *g.elements;
    GridMatrix K(l, g.dofs);
    std::vector<Eigen::Triplet<double>> extra;
    for (int j = 0; j + 1 < l.ny(); ++j)
        for (int i = 0; i + 1 < l.nx(); ++i) {
            if (e.missing[l.element(i, j)]) continue;
            const int cx = e.x_class[static_cast<std::size_t>(i)], cy = e.y_class[static_cast<std::size_t>(j)];
            const ElementBubbles b = element_bubbles(l, e, i, j);
            const MembraneElement& m = *e.membrane_of[l.element(i, j)];
            add_element(K, i, j, e.bending.at({cx, cy}), m.K);
            if (b.edges != 0) add_bubbles(m, membrane_dofs(l, b, i, j), extra);
        }
    add_ribs(model, g.grid, e, extra);
    add_edge_springs(model, g.grid, e, extra);
    add_rib_end_springs(model, g.grid, extra);
    K.give(out);
    if (extra.empty()) return;
    Sparse added(g.dofs, g.dofs);
    added.setFromTriplets(extra.begin(), extra.end());
    out = Sparse(out + added);
}

/// Motions of the sheet, its lower left corner at (x0, y0), as a rigid body about the origin (theory FE-10).
Matrix rigid_modes(const SkinGrid& grid, int dofs, double z, double x0, double y0)
{
    const SkinLayout l{grid};
    Matrix R = Matrix::Zero(dofs, 6);
    for (int j = 0; j < l.ny(); ++j)
        for (int i = 0; i < l.nx(); ++i) {
            const double x = x0 + grid.x[static_cast<std::size_t>(i)], y = y0 + grid.y[static_cast<std::size_t>(j)];
            const int d = l.dof(i, j, 0);
            R(d + 4, 0) = R(d + 5, 1) = R(d, 2) = 1;
            R(d, 3) = y, R(d + 2, 3) = 1, R(d + 5, 3) = -z;
            R(d, 4) = -x, R(d + 1, 4) = -1, R(d + 4, 4) = z;
            R(d + 4, 5) = -y, R(d + 5, 5) = x;
        }
    return R;
}

} // namespace

std::string dof_place(const SkinGrid& grid, int dof)
{
    static const char* const names[6] = {"w", "slope w_x", "slope w_y", "twist w_xy", "u (along x)", "v (along y)"};
    const SkinLayout l{grid};
    if (dof >= l.grid_dofs()) return "a rib's axial displacement";
    const int node = dof / 6;
    char text[96];
    std::snprintf(text, sizeof text, "%s at (%.1f, %.1f) mm", names[dof % 6], grid.x[static_cast<std::size_t>(node % l.nx())],
                  grid.y[static_cast<std::size_t>(node / l.nx())]);
    return text;
}

namespace {

/// Nodes, and the middle of every segment that has a bubble.
std::vector<Spot> spots(const GridAndElements& g)
{
    const SkinLayout l{g.grid};
    const std::vector<double>&x = g.grid.x, &y = g.grid.y;
    std::vector<Spot> out(static_cast<std::size_t>(g.dofs));
    for (int j = 0; j < l.ny(); ++j)
        for (int i = 0; i < l.nx(); ++i) {
            const auto a = static_cast<std::size_t>(i), b = static_cast<std::size_t>(j);
            std::fill_n(out.begin() + l.dof(i, j, 0), 6, Spot{x[a], y[b]});
            const int along_x = i + 1 < l.nx() ? g.elements->x_bubble[a + (x.size() - 1) * b] : -1, along_y = j + 1 < l.ny() ? g.elements->y_bubble[a + x.size() * b] : -1;
            if (along_x >= 0) out[static_cast<std::size_t>(along_x)] = {(x[a] + x[a + 1]) / 2, y[b]};
            if (along_y >= 0) out[static_cast<std::size_t>(along_y)] = {x[a], (y[b] + y[b + 1]) / 2};
        }
    return out;
}

/// Everything but supports and factor.
Skin sheet(const SkinModel& model, double x0, double y0)
{
    GridAndElements g = make_grid(model);
    make_elements(model, SkinLayout{g.grid}, *g.elements);
    Skin skin{model, g.grid, {}, g.elements};
    skin.body.name = model.name;
    skin.body.dofs = g.dofs;
    skin.body.made_as = next_number();
    assemble(model, g, skin.body.K);
    skin.body.spots = spots(g);
    skin.body.rigid_modes = rigid_modes(g.grid, g.dofs, model.mid_z, x0, y0);
    return skin;
}

/// Six supports that hold a sheet and strain nothing: u, v, w of one corner, v and w of the next, w of the one above.
std::vector<char> auxiliary_supports(const SkinGrid& grid, int dofs)
{
    const SkinLayout l{grid};
    std::vector<char> supported(static_cast<std::size_t>(dofs), 0);
    const int first = l.dof(0, 0, 0), beside = l.dof(l.nx() - 1, 0, 0), above = l.dof(0, l.ny() - 1, 0);
    for (int d : {first, first + 4, first + 5, beside, beside + 5, above}) supported[static_cast<std::size_t>(d)] = 1;
    return supported;
}

} // namespace

Plate make_plate(const SkinModel& model, double x0, double y0)
{
    check_skin_model(model, true);
    if (!std::isfinite(x0) || !std::isfinite(y0)) throw std::invalid_argument("plate '" + model.name + "': its place is not a number");
    SkinModel loose = model;
    for (EdgeHold& e : loose.edges) e = {Hold::free, 0};
    Plate plate{sheet(loose, x0, y0), x0, y0};
    Body& body = plate.sheet.body;
    body.held = false;
    body.supported = auxiliary_supports(plate.sheet.grid, body.dofs);
    try {
        body.factor = factorise(body.K, body.supported, body.spots);
    } catch (const SingularMatrix& e) {
        throw std::runtime_error("plate '" + model.name + "': too ill-conditioned at " + dof_place(plate.sheet.grid, e.dof));
    }
    return plate;
}

Row plate_port(const Plate& plate, const Footprint& where, SkinDirection direction)
{
    return skin_port(plate.sheet, {where.x - plate.x0, where.y - plate.y0, where.half_x, where.half_y}, direction);
}

Skin skin_without_factor(const SkinModel& model)
{
    check_skin_model(model);
    Skin skin = sheet(model, 0, 0);
    skin.body.supported = skin_supports(model, skin.grid, *skin.elements, skin.body.dofs);
    return skin;
}

std::shared_ptr<const Factor> skin_factor(const Skin& skin, const std::vector<char>& supported)
{
    try {
        return factorise(skin.body.K, supported, skin.body.spots);
    } catch (const SingularMatrix& e) {
        throw std::runtime_error("skin '" + skin.model.name + "': mechanism, its edges do not hold " + dof_place(skin.grid, e.dof));
    }
}

Skin make_skin(const SkinModel& model)
{
    Skin skin = skin_without_factor(model);
    skin.body.factor = skin_factor(skin, skin.body.supported);
    return skin;
}

} // namespace thinskin::fem
