// The windowed panel of plate_opening.h with GetFEM, a general-purpose finite-element library: composite C1 quadrilaterals, the elements of
// the window taken out of the mesh. Prints the table of plate_opening.csv; with that file as argument it compares instead and ends
// with 1 when a figure differs by more than 1e-6.
#include "verification/plate_opening.h"

#include <getfem/getfem_generic_assembly.h>
#include <getfem/getfem_interpolation.h>
#include <getfem/getfem_mesh.h>
#include <getfem/getfem_regular_meshes.h>
#include <gmm/gmm_MUMPS_interface.h>

#include <array>
#include <cmath>
#include <cstdio>
#include <fstream>
#include <map>
#include <string>

using namespace thinskin::verification;

namespace {

constexpr Windowed panel;
constexpr const char* load_names[] = {"force", "pressure"};
using Figures = std::array<std::array<double, std::size(window_places)>, 2>;

/// The square without the window; its outer rim is region 1.
void make_mesh(getfem::mesh& mesh, int across)
{
    getfem::regular_unit_mesh(mesh, {static_cast<getfem::size_type>(across), static_cast<getfem::size_type>(across)}, bgeot::parallelepiped_geotrans(2, 1));
    bgeot::base_matrix stretch(2, 2);
    stretch(0, 0) = stretch(1, 1) = panel.side;
    mesh.transformation(stretch);
    getfem::mesh_region rim;
    getfem::outer_faces_of_mesh(mesh, rim);
    mesh.region(1) = rim;
    std::vector<getfem::size_type> window;
    for (dal::bv_visitor cv(mesh.convex_index()); !cv.finished(); ++cv) {
        double x = 0, y = 0;
        for (const auto& p : mesh.points_of_convex(cv)) x += p[0] / 4, y += p[1] / 4;
        if (x > panel.low && x < panel.high && y > panel.low && y < panel.high) window.push_back(cv);
    }
    for (const getfem::size_type cv : window) mesh.sup_convex(cv);
}

getfem::model_real_sparse_matrix shapes(const getfem::mesh& mesh, const getfem::mesh_fem& mf, const std::vector<WindowPlace>& at)
{
    getfem::mesh_trans_inv points(mesh);
    for (const WindowPlace& p : at) points.add_point(bgeot::base_node(p.x, p.y));
    getfem::model_real_sparse_matrix M(at.size(), mf.nb_dof());
    std::vector<double> none;
    getfem::interpolation(mf, points, none, none, M, 1);
    return M;
}

std::string number(double v)
{
    char text[40];
    std::snprintf(text, sizeof text, "(%.17g)", v);
    return text;
}

Figures solve(int across)
{
    getfem::mesh mesh;
    make_mesh(mesh, across);
    getfem::mesh_fem mf(mesh);
    mf.set_finite_element(getfem::fem_descriptor("FEM_QUADC1_COMPOSITE"));
    getfem::mesh_im inside(mesh);
    inside.set_integration_method(getfem::int_method_descriptor("IM_QUADC1_COMPOSITE(IM_TRIANGLE(6))"));
    const double D = panel.E * std::pow(panel.thickness, 3) / (12 * (1 - panel.nu * panel.nu));
    const auto n = mf.nb_dof();
    std::vector<double> w(n);
    getfem::ga_workspace energy, push;
    energy.add_fem_variable("w", mf, gmm::sub_interval(0, n), w);
    energy.add_expression(number(D) + "*((1-" + number(panel.nu) + ")*(Hess_w:Hess_Test_w)+" + number(panel.nu) + "*Trace(Hess_w)*Trace(Hess_Test_w))", inside);
    energy.assembly(2);
    push.add_fem_variable("w", mf, gmm::sub_interval(0, n), w);
    push.add_expression(number(panel.pressure) + "*Test_w", inside);
    push.assembly(1);
    const auto under = shapes(mesh, mf, {{panel.force_x, panel.force_y}});
    std::array<std::vector<double>, 2> loads{std::vector<double>(n), std::vector<double>(n)};
    for (getfem::size_type d = 0; d < n; ++d) loads[0][d] = under(0, d), loads[1][d] = push.assembled_vector()[d];

    dal::bit_vector free;
    free.add(0, n);
    free.setminus(mf.basic_dof_on_region(1));
    std::vector<getfem::size_type> kept;
    for (dal::bv_visitor d(free); !d.finished(); ++d) kept.push_back(d);
    const gmm::sub_index rows(kept);
    gmm::csc_matrix<double> K;
    gmm::copy(gmm::sub_matrix(energy.assembled_matrix(), rows, rows), K);
    const auto read = shapes(mesh, mf, {std::begin(window_places), std::end(window_places)});
    Figures figures{};
    for (std::size_t l = 0; l < loads.size(); ++l) {
        std::vector<double> right(kept.size()), answer(kept.size()), all(n), at(std::size(window_places));
        gmm::copy(gmm::sub_vector(loads[l], rows), right);
        gmm::MUMPS_solve(K, answer, right, true);
        gmm::copy(answer, gmm::sub_vector(all, rows));
        gmm::mult(read, all, at);
        std::copy(at.begin(), at.end(), figures[l].begin());
    }
    return figures;
}

constexpr int grids[] = {20, 40, 80, 160};

/// "across,load,x,y" -> w on the first `count` grids
std::map<std::string, double> table(std::size_t count)
{
    std::map<std::string, double> rows;
    for (std::size_t k = 0; k < count; ++k) {
        const Figures f = solve(grids[k]);
        for (std::size_t l = 0; l < f.size(); ++l)
            for (std::size_t p = 0; p < std::size(window_places); ++p) {
                char key[120];
                std::snprintf(key, sizeof key, "%d,%s,%g,%g", grids[k], load_names[l], window_places[p].x, window_places[p].y);
                rows[key] = f[l][p];
            }
    }
    return rows;
}

int compare(const std::map<std::string, double>& now, const char* file)
{
    std::ifstream in(file);
    std::size_t same = 0, rows = 0;
    for (std::string line; std::getline(in, line);) {
        const std::size_t w_at = line.rfind(',');
        const auto found = w_at == std::string::npos ? now.end() : now.find(line.substr(0, w_at));
        if (found == now.end()) continue; // a heading, or of a grid that is not run here
        ++rows;
        const double w = std::stod(line.substr(w_at + 1));
        if (std::abs(found->second - w) <= 1e-6 * std::abs(w)) ++same;
        else std::printf("differs from the record: %s: now %.9g\n", line.c_str(), found->second);
    }
    std::printf("%zu of %zu recorded rows met\n", same, rows);
    return same == rows && rows == now.size() ? 0 : 1; // no row missing
}

} // namespace

int main(int argc, char** argv)
{
    if (argc == 2) return compare(table(2), argv[1]); // the finest grids take most of the time
    std::printf("across,load,x,y,w\n");
    for (const auto& [key, w] : table(std::size(grids))) std::printf("%s,%.9g\n", key.c_str(), w);
    return 0;
}
