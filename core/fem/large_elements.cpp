// Assumed quadratic strain (theory FE-19, FE-20). The sheet's membrane element can follow a strain that is constant or linear in
// the element; what a bicubic deflection has beyond that would act as a stiffness of its own (membrane locking), so it is left out.
#include "fem/large_elements.h"

#include "fem/hermite.h"
#include "fem/sheet_slopes.h"

namespace thinskin::fem {
namespace {

/// The functions of one component, and the integral of their squares over the element's area.
std::array<double, 3> functions(double xi, double eta) { return {1, xi, eta}; }
constexpr std::array<double, 3> squares{1, 1.0 / 3, 1.0 / 3};

/// Kept and condensed shape coefficients of an element (theory FE-2), as in membrane_element.
struct Split { std::vector<int> kept{0, 1, 2, 3, 4, 5, 6, 7}, condensed{9, 10}; };

Split split(unsigned edges)
{
    Split s;
    if ((edges & (rib_bottom | rib_top)) == 0) s.condensed.push_back(8);
    if ((edges & (rib_left | rib_right)) == 0) s.condensed.push_back(11);
    for (int b = 0; b < 4; ++b)
        if ((edges >> b & 1U) != 0) s.kept.push_back(12 + b);
    return s;
}

/// Integral of strain^T C strain over all 16 shape coefficients and the nine assumed strains.
Eigen::Matrix<double, 25, 25> full_energy(const SheetSection& sheet, double lx, double ly)
{
    Eigen::Matrix<double, 25, 25> full = Eigen::Matrix<double, 25, 25>::Zero();
    const Eigen::Matrix3d C = membrane_stiffness(sheet);
    for (const GaussPoint& gx : gauss_3)
        for (const GaussPoint& gy : gauss_3) {
            const double xi = 2 * gx.s - 1, eta = 2 * gy.s - 1;
            Eigen::Matrix<double, 3, 25> B = Eigen::Matrix<double, 3, 25>::Zero();
            B.leftCols<16>() = membrane_strain(lx, ly, xi, eta);
            const std::array<double, 3> f = functions(xi, eta);
            for (int c = 0; c < 3; ++c)
                for (int k = 0; k < 3; ++k) B(c, 16 + 3 * c + k) = f[static_cast<std::size_t>(k)];
            full += B.transpose() * C * B * (gx.weight * gy.weight * lx * ly);
        }
    return full;
}

/// Drops assumed strains that the condensed modes take up whole.
void keep_used(QuadraticElement& e, const Matrix& K_gp, const Matrix& K_gg)
{
    const double largest = K_gg.diagonal().maxCoeff();
    for (int k = 0; k < 9; ++k)
        if (K_gg(k, k) > 1e-10 * largest) e.used.push_back(k);
    e.K_gp = K_gp(e.used, Eigen::all);
    e.K_gg = K_gg(e.used, e.used);
}

} // namespace

SheetGradients sheet_gradients(double lx, double ly)
{
    SheetGradients set;
    for (Matrix16& m : set) m.setZero();
    for (const GaussPoint& gx : gauss_4)
        for (const GaussPoint& gy : gauss_4) {
            const auto [dx, dy] = sheet_slopes(hermite(lx, gx.s), hermite(ly, gy.s));
            const std::array<double, 3> f = functions(2 * gx.s - 1, 2 * gy.s - 1);
            for (std::size_t k = 0; k < 3; ++k) {
                const double weight = gx.weight * gy.weight * f[k] / squares[k];
                set[k] += weight * dx * dx.transpose();
                set[3 + k] += weight * dy * dy.transpose();
                set[6 + k] += weight * (dx * dy.transpose() + dy * dx.transpose());
            }
        }
    return set;
}

RibGradients rib_gradients(double h)
{
    RibGradients set{Eigen::Matrix4d::Zero(), Eigen::Matrix4d::Zero()};
    for (const GaussPoint& g : gauss_4) {
        const Eigen::Vector4d d(hermite(h, g.s).slope.data());
        set[0] += g.weight * d * d.transpose();
        set[1] += 3 * g.weight * (2 * g.s - 1) * d * d.transpose();
    }
    return set;
}

QuadraticElement quadratic_sheet(const SheetSection& sheet, double lx, double ly, unsigned edges)
{
    const Matrix full = full_energy(sheet, lx, ly);
    const Split s = split(edges);
    std::vector<int> strains(9);
    for (int k = 0; k < 9; ++k) strains[static_cast<std::size_t>(k)] = 16 + k;
    const Matrix aa = full(s.condensed, s.condensed), ak = full(s.condensed, s.kept), ag = full(s.condensed, strains);
    const auto solver = aa.ldlt();
    const Matrix membrane = full(strains, s.kept) - ag.transpose() * solver.solve(ak);
    Matrix K_gg = full(strains, strains) - ag.transpose() * solver.solve(ag);
    K_gg = (0.5 * (K_gg + K_gg.transpose())).eval();
    Matrix K_gp = Matrix::Zero(9, 16 + membrane.cols());
    K_gp.rightCols(membrane.cols()) = membrane;
    QuadraticElement e;
    keep_used(e, K_gp, K_gg);
    return e;
}

QuadraticElement quadratic_rib(const RibModel& rib, double h)
{
    QuadraticElement e;
    e.used = {0, 1};
    e.K_gp = Matrix::Zero(2, 7);
    for (const GaussPoint& g : gauss_2) {
        const Hermite f = hermite(h, g.s);
        Eigen::Matrix<double, 1, 7> strain;
        for (int i = 0; i < 4; ++i) strain(i) = -rib.offset_z * f.curvature[static_cast<std::size_t>(i)];
        strain(4) = -1 / h, strain(5) = 1 / h, strain(6) = -4 * (2 * g.s - 1) / h;
        e.K_gp.row(0) += rib.E * rib.A * h * g.weight * strain;
        e.K_gp.row(1) += rib.E * rib.A * h * g.weight * (2 * g.s - 1) * strain;
    }
    e.K_gg = Matrix::Zero(2, 2);
    e.K_gg.diagonal() << rib.E * rib.A * h, rib.E * rib.A * h / 3;
    return e;
}

namespace {

template <int N>
void strains(const Eigen::Matrix<double, N, N>* gradients, const std::vector<int>& used, PieceState& state)
{
    const Eigen::Matrix<double, N, 1> q = state.p.template head<N>();
    for (std::size_t k = 0; k < used.size(); ++k) {
        const Eigen::Matrix<double, N, 1> slope = gradients[used[k]] * q;
        state.G.row(static_cast<Eigen::Index>(k)) = slope.transpose();
        state.g(static_cast<Eigen::Index>(k)) = 0.5 * slope.dot(q);
    }
}

template <int N>
void add_geometric(const Eigen::Matrix<double, N, N>* gradients, const std::vector<int>& used, const StrainVector& s, double scale, PieceMatrix& T)
{
    Eigen::Matrix<double, N, N> sum = Eigen::Matrix<double, N, N>::Zero();
    for (std::size_t k = 0; k < used.size(); ++k) sum += (scale * s(static_cast<Eigen::Index>(k))) * gradients[used[k]];
    T.template topLeftCorner<N, N>() += sum;
}

} // namespace

PieceState piece_state(const QuadraticPiece& piece, const Vector& u)
{
    const QuadraticElement& e = *piece.element;
    PieceState state;
    state.p.resize(static_cast<Eigen::Index>(piece.dofs.size()));
    for (std::size_t k = 0; k < piece.dofs.size(); ++k) state.p(static_cast<Eigen::Index>(k)) = u(piece.dofs[k]);
    state.g.resize(e.K_gg.rows());
    state.G.resize(e.K_gg.rows(), piece.bending);
    if (piece.sheet != nullptr) strains<16>(piece.sheet, e.used, state);
    else strains<4>(piece.rib, e.used, state);
    state.s.noalias() = e.K_gp * state.p;
    state.s.noalias() += e.K_gg * state.g;
    return state;
}

PieceVector piece_force(const QuadraticPiece& piece, const PieceState& state)
{
    PieceVector f;
    f.noalias() = piece.element->K_gp.transpose() * state.g;
    f.head(piece.bending).noalias() += state.G.transpose() * state.s;
    return f;
}

PieceMatrix piece_tangent(const QuadraticPiece& piece, const PieceState& state, double geometric)
{
    const QuadraticElement& e = *piece.element;
    StrainMatrix H = e.K_gp;                                                                           // theory FE-21
    H.leftCols(piece.bending).noalias() += 0.5 * e.K_gg * state.G;
    const auto n = static_cast<Eigen::Index>(piece.dofs.size());
    PieceMatrix T = PieceMatrix::Zero(n, n), half;
    half.noalias() = state.G.transpose().lazyProduct(H);
    T.topRows(piece.bending) += half;
    T.leftCols(piece.bending) += half.transpose();
    if (piece.sheet != nullptr) add_geometric<16>(piece.sheet, e.used, state.s, geometric, T);
    else add_geometric<4>(piece.rib, e.used, state.s, geometric, T);
    return T;
}

} // namespace thinskin::fem
