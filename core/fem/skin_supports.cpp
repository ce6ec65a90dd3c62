#include "fem/hermite.h"
#include "fem/skin_elements.h"

#include <algorithm>
#include <cmath>

namespace thinskin::fem {
namespace {

enum Dof { w = 0, w_x = 1, w_y = 2, w_xy = 3, u = 4, v = 5 };

/// What an edge fixes at each of its nodes (theory FE-4). `normal_x`: the edge runs along y.
std::vector<int> fixed_dofs(const SkinModel& model, int edge)
{
    const EdgeHold& e = model.edges[static_cast<std::size_t>(edge)];
    if (e.kind == Hold::free) return {};
    const bool normal_x = edge < 2;
    std::vector<int> fixed{w, normal_x ? w_y : w_x, normal_x ? v : u};
    if (e.kind == Hold::held) fixed.insert(fixed.end(), {normal_x ? w_x : w_y, w_xy});
    if (model.in_plane_fixed) fixed.push_back(normal_x ? u : v);
    else if (edge == 2) fixed.push_back(v);
    return fixed;
}

/// Node of an edge: edges are left, right, bottom, top; k counts along the edge.
int edge_node(const SkinLayout& l, int edge, int k)
{
    switch (edge) {
    case 0: return l.node(0, k);
    case 1: return l.node(l.nx() - 1, k);
    case 2: return l.node(k, 0);
    default: return l.node(k, l.ny() - 1);
    }
}

int nearest(const std::vector<double>& lines, double p)
{
    return static_cast<int>(std::min_element(lines.begin(), lines.end(), [p](double a, double b) { return std::abs(a - p) < std::abs(b - p); }) - lines.begin());
}

/// A rib that ends at a held edge keeps its twist per length there: holding w_xy at that node would stop it from twisting along its last
/// element, first order in the spacing (theory FE-4). Not at corners, where another edge holds it.
void release_rib_ends(const SkinModel& model, const SkinGrid& grid, std::vector<char>& supported)
{
    const SkinLayout l{grid};
    for (const RibModel& rib : model.ribs) {
        const RibLine r = rib_line(grid, rib);
        const int last_line = (r.along_x ? l.ny() : l.nx()) - 1, last = (r.along_x ? l.nx() : l.ny()) - 1;
        if (r.line == 0 || r.line == last_line || !(rib.G * rib.J > 0)) continue;
        for (const int k : {r.first, r.last})
            if (k == 0 || k == last) supported[static_cast<std::size_t>(6 * (r.along_x ? l.node(k, r.line) : l.node(r.line, k)) + w_xy)] = 0;
    }
}

void fix_bubbles(const SkinModel& model, const SkinLayout& l, const SkinElements& e, std::vector<char>& supported)
{
    const auto fix = [&](int dof) { if (dof >= 0) supported[static_cast<std::size_t>(dof)] = 1; };
    const auto held = [&](std::size_t edge) { return model.edges[edge].kind != Hold::free; };
    for (int j = 0; j + 1 < l.ny(); ++j) {
        if (held(0)) fix(e.y_bubble[static_cast<std::size_t>(l.nx() * j)]);
        if (held(1)) fix(e.y_bubble[static_cast<std::size_t>(l.nx() - 1 + l.nx() * j)]);
    }
    for (int i = 0; i + 1 < l.nx(); ++i) {
        if (held(2)) fix(e.x_bubble[static_cast<std::size_t>(i)]);
        if (held(3)) fix(e.x_bubble[static_cast<std::size_t>(i + (l.nx() - 1) * (l.ny() - 1))]);
    }
}

/// Nodes that only missing elements touch have nothing to move: they count as supported and are left out of the factor.
void fix_empty_nodes(const SkinLayout& l, const SkinElements& e, std::vector<char>& supported)
{
    std::vector<char> live(static_cast<std::size_t>(l.nx() * l.ny()), 0);
    for (int j = 0; j + 1 < l.ny(); ++j)
        for (int i = 0; i + 1 < l.nx(); ++i)
            if (!e.missing[l.element(i, j)])
                for (int c = 0; c < 4; ++c) live[static_cast<std::size_t>(l.node(i + c % 2, j + c / 2))] = 1;
    for (std::size_t node = 0; node < live.size(); ++node)
        if (!live[node]) std::fill_n(supported.begin() + static_cast<std::ptrdiff_t>(6 * node), 6, static_cast<char>(1));
}

/// Is there sheet beside segment k of an edge?
bool sheet_at(const SkinLayout& l, const SkinElements& e, int edge, int k)
{
    switch (edge) {
    case 0: return !e.missing[l.element(0, k)];
    case 1: return !e.missing[l.element(l.nx() - 2, k)];
    case 2: return !e.missing[l.element(k, 0)];
    default: return !e.missing[l.element(k, l.ny() - 2)];
    }
}

} // namespace

std::vector<char> skin_supports(const SkinModel& model, const SkinGrid& grid, const SkinElements& e, int dofs)
{
    const SkinLayout l{grid};
    std::vector<char> supported(static_cast<std::size_t>(dofs), 0);
    for (int edge = 0; edge < 4; ++edge) {
        const std::vector<int> fixed = fixed_dofs(model, edge);
        const int nodes = edge < 2 ? l.ny() : l.nx();
        for (int k = 0; k < nodes; ++k)
            for (const int d : fixed) supported[static_cast<std::size_t>(6 * edge_node(l, edge, k) + d)] = 1;
    }
    release_rib_ends(model, grid, supported);
    hold_rib_ends(model, grid, supported);
    for (const auto& p : model.held_points)
        for (const int d : {w, u, v}) supported[static_cast<std::size_t>(6 * l.node(nearest(grid.x, p[0]), nearest(grid.y, p[1])) + d)] = 1;
    fix_bubbles(model, l, e, supported);
    fix_empty_nodes(l, e, supported);
    return supported;
}

void add_edge_springs(const SkinModel& model, const SkinGrid& grid, const SkinElements& elements, std::vector<Eigen::Triplet<double>>& out)
{
    const SkinLayout l{grid};
    for (int edge = 0; edge < 4; ++edge) {
        const EdgeHold& e = model.edges[static_cast<std::size_t>(edge)];
        if (e.kind != Hold::sprung) continue;
        const std::vector<double>& along = edge < 2 ? grid.y : grid.x;
        const int slope = edge < 2 ? w_x : w_y;
        for (std::size_t k = 0; k + 1 < along.size(); ++k) {
            if (!sheet_at(l, elements, edge, static_cast<int>(k))) continue;
            const LineIntegrals m = line_integrals(along[k + 1] - along[k]);
            int dofs[4];
            for (int a = 0; a < 2; ++a) {
                const int node = 6 * edge_node(l, edge, static_cast<int>(k) + a);
                dofs[2 * a] = node + slope;
                dofs[2 * a + 1] = node + w_xy;
            }
            for (int a = 0; a < 4; ++a)
                for (int b = 0; b < 4; ++b) out.emplace_back(dofs[a], dofs[b], e.rotational_stiffness * m.m00(a, b)); // theory FE-4
        }
    }
}

} // namespace thinskin::fem
