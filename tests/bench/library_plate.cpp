// The plate of plate_problem.h with GetFEM (Debian: libgetfem-dev), a general-purpose finite-element library: composite C1 quadrilateral
// of piecewise cubics (16 unknowns), exact integration on its pieces.
#include "bench/plate_problem.h"

#include <getfem/getfem_fourth_order.h>
#include <getfem/getfem_generic_assembly.h>
#include <getfem/getfem_interpolation.h>
#include <getfem/getfem_regular_meshes.h>
#include <gmm/gmm_MUMPS_interface.h>

namespace thinskin::bench {
namespace {

using Column = getfem::model_real_sparse_matrix;

/// Load vector of all pads: mean of the shape functions over each, 6 x 6 Gauss points.
std::vector<double> loads(const getfem::mesh& mesh, const getfem::mesh_fem& mf, const PlateProblem& problem)
{
    constexpr double at[3] = {0.238619186083197, 0.661209386466265, 0.932469514203152}, weight[3] = {0.467913934572691, 0.360761573048139, 0.171324492379170};
    getfem::mesh_trans_inv points(mesh);
    std::vector<double> weights;
    for (const Pad& p : problem.pads) {
        if (p.side <= 0) {
            points.add_point(bgeot::base_node(p.x, p.y));
            weights.push_back(p.force);
            continue;
        }
        for (int i = 0; i < 6; ++i)
            for (int j = 0; j < 6; ++j) {
                const double s = at[i / 2] * (i % 2 == 0 ? 1 : -1), t = at[j / 2] * (j % 2 == 0 ? 1 : -1);
                points.add_point(bgeot::base_node(p.x + s * p.side / 2, p.y + t * p.side / 2));
                weights.push_back(p.force * weight[i / 2] * weight[j / 2] / 4);
            }
    }
    Column shape(weights.size(), mf.nb_dof());
    std::vector<double> none;
    getfem::interpolation(mf, points, none, none, shape, 1);
    std::vector<double> f(mf.nb_dof());
    gmm::mult(gmm::transposed(shape), weights, f);
    return f;
}

/// The same matrix both ways (checked once by hand: they differ by rounding).
void assemble(getfem::model_real_sparse_matrix& K, const getfem::mesh_fem& mf, const getfem::mesh_im& mim, Assembly way)
{
    if (way == Assembly::ready_made) {
        getfem::asm_stiffness_matrix_for_homogeneous_bilaplacian_KL(K, mim, mf, std::vector<double>{1.0}, std::vector<double>{0.3});
        return;
    }
    std::vector<double> w(mf.nb_dof());
    getfem::ga_workspace energy;
    energy.add_fem_variable("w", mf, gmm::sub_interval(0, mf.nb_dof()), w);
    energy.set_assembled_matrix(K);
    energy.add_expression("(1-0.3)*(Hess_w:Hess_Test_w)+0.3*Trace(Hess_w)*Trace(Hess_Test_w)", mim);
    energy.assembly(2);
}

} // namespace

PlateRun library_plate(const PlateProblem& problem, int n, Assembly way)
{
    getfem::mesh mesh;
    const auto count = static_cast<getfem::size_type>(n);
    getfem::regular_unit_mesh(mesh, {count, count}, bgeot::parallelepiped_geotrans(2, 1));
    getfem::mesh_fem mf(mesh);
    mf.set_finite_element(getfem::fem_descriptor("FEM_QUADC1_COMPOSITE"));
    getfem::mesh_im mim(mesh);
    mim.set_integration_method(getfem::int_method_descriptor("IM_QUADC1_COMPOSITE(IM_TRIANGLE(2))")); // second derivatives are linear on a piece
    getfem::model_real_sparse_matrix K(mf.nb_dof(), mf.nb_dof());
    assemble(K, mf, mim, way);
    const std::vector<double> f = loads(mesh, mf, problem);

    getfem::mesh_region edge;
    getfem::outer_faces_of_mesh(mesh, edge);
    dal::bit_vector free;
    free.add(0, mf.nb_dof());
    free.setminus(mf.basic_dof_on_region(edge));
    std::vector<getfem::size_type> kept;
    for (dal::bv_visitor d(free); !d.finished(); ++d) kept.push_back(d);
    const gmm::sub_index rows(kept);
    gmm::csc_matrix<double> Kff;
    gmm::copy(gmm::sub_matrix(K, rows, rows), Kff);
    std::vector<double> ff(kept.size()), u(kept.size());
    gmm::copy(gmm::sub_vector(f, rows), ff);
    gmm::MUMPS_solve(Kff, u, ff, true); // symmetric; its SuperLU_solve ends with a memory fault in this package
    return {gmm::vect_sp(ff, u), static_cast<int>(kept.size())};
}

} // namespace thinskin::bench
