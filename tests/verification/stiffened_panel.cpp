// The stiffened panel of stiffened_panel.h with GetFEM, a general-purpose finite-element library: composite C1 quadrilaterals for w and
// nine-node quadrilaterals for u, v, energies written as formulas, the rib's as an integral along a line of element sides. Prints the
// table of stiffened_panel.csv; with that file as argument it compares instead and ends with 1 when a figure differs by more than 1e-6.
#include "verification/stiffened_panel.h"

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

constexpr Panel panel;
constexpr const char* load_names[] = {"force on the rib", "force beside the rib", "pressure"};

/// Per load: w and u at every place.
struct Figures { std::array<std::array<std::array<double, 2>, std::size(places)>, 3> at{}; };

struct Fields {
    getfem::mesh mesh;
    getfem::mesh_fem mf_w, mf_u;
    getfem::mesh_im inside, line;
    static constexpr getfem::size_type rib = 1;

    Fields(int across, int along) : mf_w(mesh), mf_u(mesh, 2), inside(mesh), line(mesh)
    {
        getfem::regular_unit_mesh(mesh, {static_cast<getfem::size_type>(across), static_cast<getfem::size_type>(along)}, bgeot::parallelepiped_geotrans(2, 1));
        bgeot::base_matrix stretch(2, 2);
        stretch(0, 0) = panel.width, stretch(1, 1) = panel.height;
        mesh.transformation(stretch);
        mf_w.set_finite_element(getfem::fem_descriptor("FEM_QUADC1_COMPOSITE"));
        mf_u.set_finite_element(getfem::fem_descriptor("FEM_QK(2,2)"));
        inside.set_integration_method(getfem::int_method_descriptor("IM_QUADC1_COMPOSITE(IM_TRIANGLE(6))"));
        line.set_integration_method(getfem::int_method_descriptor("IM_QUADC1_COMPOSITE(IM_TRIANGLE(6))"));
        mark_rib();
    }

    /// The lower sides of the elements above the rib.
    void mark_rib()
    {
        for (dal::bv_visitor cv(mesh.convex_index()); !cv.finished(); ++cv)
            for (bgeot::short_type f = 0; f < mesh.structure_of_convex(cv)->nb_faces(); ++f) {
                double lowest = 1e9, highest = -1e9, above = -1e9;
                for (const auto& p : mesh.points_of_face_of_convex(cv, f)) lowest = std::min(lowest, p[1]), highest = std::max(highest, p[1]);
                for (const auto& p : mesh.points_of_convex(cv)) above = std::max(above, p[1]);
                if (std::abs(lowest - panel.rib_y) < 1e-6 && std::abs(highest - panel.rib_y) < 1e-6 && above > panel.rib_y + 1e-6) mesh.region(rib).add(cv, f);
            }
    }
};

std::string number(double v)
{
    char text[40];
    std::snprintf(text, sizeof text, "(%.17g)", v);
    return text;
}

/// Shape functions of a field at the places.
getfem::model_real_sparse_matrix shapes(const getfem::mesh& mesh, const getfem::mesh_fem& mf, const std::vector<Place>& at)
{
    getfem::mesh_trans_inv points(mesh);
    for (const Place& p : at) points.add_point(bgeot::base_node(p.x, p.y));
    getfem::model_real_sparse_matrix M(at.size() * mf.get_qdim(), mf.nb_dof());
    std::vector<double> none;
    getfem::interpolation(mf, points, none, none, M, 1);
    return M;
}

std::string energy_of_sheet()
{
    const double D = panel.E * std::pow(panel.thickness, 3) / (12 * (1 - panel.nu * panel.nu)), S = panel.E * panel.thickness / (1 - panel.nu * panel.nu);
    const std::string nu = number(panel.nu);
    return number(D) + "*((1-" + nu + ")*(Hess_w:Hess_Test_w)+" + nu + "*Trace(Hess_w)*Trace(Hess_Test_w))+" + number(S) + "*((1-" + nu + ")*(Sym(Grad_u):Sym(Grad_Test_u))+" + nu
        + "*Trace(Grad_u)*Trace(Grad_Test_u))";
}

/// E A (u' - z w'')^2 + E I w''^2 + G J (w_xy)^2 along the line.
std::string energy_of_rib()
{
    const std::string z = number(panel.centroid_z);
    return number(panel.E * panel.A) + "*(Grad_u(1,1)-" + z + "*Hess_w(1,1))*(Grad_Test_u(1,1)-" + z + "*Hess_Test_w(1,1))+" + number(panel.E * panel.I) + "*Hess_w(1,1)*Hess_Test_w(1,1)+"
        + number(panel.G * panel.J) + "*Hess_w(1,2)*Hess_Test_w(1,2)";
}

Figures solve(int across, int along)
{
    Fields f(across, along);
    const auto nw = f.mf_w.nb_dof(), nu = f.mf_u.nb_dof();
    std::vector<double> w(nw), u(nu);
    getfem::ga_workspace energy;
    energy.add_fem_variable("w", f.mf_w, gmm::sub_interval(0, nw), w);
    energy.add_fem_variable("u", f.mf_u, gmm::sub_interval(nw, nu), u);
    energy.add_expression(energy_of_sheet(), f.inside);
    energy.add_expression(energy_of_rib(), f.line, Fields::rib);
    energy.assembly(2);
    getfem::ga_workspace push;
    push.add_fem_variable("w", f.mf_w, gmm::sub_interval(0, nw), w);
    push.add_expression(number(panel.pressure) + "*Test_w", f.inside);
    push.assembly(1);

    std::array<std::vector<double>, 3> loads;
    for (auto& l : loads) l.assign(nw + nu, 0.0);
    const auto under = shapes(f.mesh, f.mf_w, {{panel.force_x, panel.on_rib}, {panel.force_x, panel.beside_y}});
    for (getfem::size_type d = 0; d < nw; ++d) loads[0][d] = under(0, d), loads[1][d] = under(1, d), loads[2][d] = push.assembled_vector()[d];

    getfem::mesh_region edge;
    getfem::outer_faces_of_mesh(f.mesh, edge);
    dal::bit_vector free;
    free.add(0, nw + nu);
    free.setminus(f.mf_w.basic_dof_on_region(edge));
    const dal::bit_vector held_u = f.mf_u.basic_dof_on_region(edge);
    for (dal::bv_visitor d(held_u); !d.finished(); ++d) free.sup(nw + d);
    std::vector<getfem::size_type> kept;
    for (dal::bv_visitor d(free); !d.finished(); ++d) kept.push_back(d);
    const gmm::sub_index rows(kept);
    gmm::csc_matrix<double> K;
    gmm::copy(gmm::sub_matrix(energy.assembled_matrix(), rows, rows), K);

    const std::vector<Place> read(std::begin(places), std::end(places));
    const auto read_w = shapes(f.mesh, f.mf_w, read), read_u = shapes(f.mesh, f.mf_u, read);
    Figures figures;
    for (std::size_t l = 0; l < loads.size(); ++l) {
        std::vector<double> right(kept.size()), answer(kept.size()), all(nw + nu), at_w(read.size()), at_u(2 * read.size());
        gmm::copy(gmm::sub_vector(loads[l], rows), right);
        gmm::MUMPS_solve(K, answer, right, true);
        gmm::copy(answer, gmm::sub_vector(all, rows));
        gmm::mult(read_w, gmm::sub_vector(all, gmm::sub_interval(0, nw)), at_w);
        gmm::mult(read_u, gmm::sub_vector(all, gmm::sub_interval(nw, nu)), at_u);
        for (std::size_t p = 0; p < read.size(); ++p) figures.at[l][p] = {at_w[p], at_u[2 * p]};
    }
    return figures;
}

constexpr std::array<std::array<int, 2>, 3> grids{{{16, 32}, {32, 64}, {64, 128}}};

using Rows = std::map<std::string, std::array<double, 2>>;

/// "across,load,x,y" -> w, u on the first `count` grids
Rows table(std::size_t count)
{
    Rows rows;
    for (std::size_t k = 0; k < count; ++k) {
        const auto& g = grids[k];
        const Figures f = solve(g[0], g[1]);
        for (std::size_t l = 0; l < 3; ++l)
            for (std::size_t p = 0; p < std::size(places); ++p) {
                char key[120];
                std::snprintf(key, sizeof key, "%d,%s,%g,%g", g[0], load_names[l], places[p].x, places[p].y);
                rows[key] = f.at[l][p];
            }
    }
    return rows;
}

int compare(const Rows& now, const char* file)
{
    std::ifstream in(file);
    std::size_t same = 0, rows = 0;
    for (std::string line; std::getline(in, line);) {
        if (line.empty() || line[0] == '#' || line.rfind("across", 0) == 0) continue;
        const std::size_t u_at = line.rfind(','), w_at = line.rfind(',', u_at - 1);
        const auto found = now.find(line.substr(0, w_at));
        if (found == now.end()) continue; // of a grid that is not run here
        ++rows;
        const double w = std::stod(line.substr(w_at + 1)), u = std::stod(line.substr(u_at + 1));
        const bool near_w = std::abs(found->second[0] - w) <= 1e-6 * std::abs(w), near_u = std::abs(found->second[1] - u) <= 1e-6 * std::abs(u) + 1e-12;
        if (near_w && near_u) ++same;
        else std::printf("differs from the record: %s: now w %.9g, u %.9g\n", line.c_str(), found->second[0], found->second[1]);
    }
    std::printf("%zu of %zu recorded rows met\n", same, rows);
    return same == rows && rows == now.size() ? 0 : 1; // no row missing
}

} // namespace

int main(int argc, char** argv)
{
    if (argc == 2) return compare(table(2), argv[1]); // the finest grid takes most of the time
    const Rows rows = table(std::size(grids));
    std::printf("across,load,x,y,w,u\n");
    for (const auto& r : rows) std::printf("%s,%.9g,%.9g\n", r.first.c_str(), r.second[0], r.second[1]);
    return 0;
}
