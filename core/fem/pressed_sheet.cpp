// K_g q = sum over the Gauss points of dA [w_x w_y]^T N [w_x w_y] q, one direction after the other: 600 products an element, where its written
// matrix takes 256 but has to come from memory for each load case. Several load cases are worked on at once.
#include "fem/pressed_sheet.h"

#include "fem/several.h"

#include <stdexcept>

namespace thinskin::fem {
namespace {

/// Function along x and along y of the element's unknown e.
constexpr std::size_t along_x(std::size_t e) { return 2 * (e / 4 % 2) + e % 2; }
constexpr std::size_t along_y(std::size_t e) { return 2 * (e / 8) + e % 4 / 2; }

template <int Width> struct Press {
    using Piece = typename Several<Width>::Piece;
    using Four = std::array<Piece, 4>;
    using Square = std::array<Four, 4>;  ///< [function along x][function along y]
    struct Forces { std::array<std::array<Piece, 3>, 4> at; };

    static Piece sum(const std::array<double, 4>& f, const Four& q) { return f[0] * q[0] + f[1] * q[1] + f[2] * q[2] + f[3] * q[3]; }

    static Forces forces(const std::vector<const ForceField*>& fields, Eigen::Index first, Eigen::Index count, Eigen::Index element)
    {
        Forces n;
        for (std::size_t f = 0; f < 4; ++f)
            for (std::size_t c = 0; c < 3; ++c) {
                n.at[f][c].setZero();
                for (Eigen::Index k = 0; k < count; ++k) n.at[f][c](k) = (*fields[static_cast<std::size_t>(first + k)])(static_cast<Eigen::Index>(3 * f + c), element);
            }
        return n;
    }

    /// What the points on one line x = const make of q, given its sums along x; `slope` and `value` take the sums along y.
    static void line(const SheetShape& s, std::size_t gx, const Forces& n, const Four& qx, const Four& q, Four& slope, Four& value)
    {
        std::array<Piece, 3> even, odd;
        for (std::size_t c = 0; c < 3; ++c) even[c] = n.at[0][c] + s.xi[gx] * n.at[1][c], odd[c] = n.at[2][c] + s.xi[gx] * n.at[3][c];
        for (std::size_t gy = 0; gy < 4; ++gy) {
            const Hermite& y = s.y[gy];
            const Piece wx = sum(y.value, qx), wy = sum(y.slope, q);
            const double eta = s.eta[gy], area = s.area(static_cast<Eigen::Index>(gx), static_cast<Eigen::Index>(gy));
            const Piece Nx = even[0] + eta * odd[0], Ny = even[1] + eta * odd[1], Nxy = even[2] + eta * odd[2];
            const Piece px = area * (Nx * wx + Nxy * wy), py = area * (Nxy * wx + Ny * wy);
            for (std::size_t b = 0; b < 4; ++b) slope[b] += y.value[b] * px, value[b] += y.slope[b] * py;
        }
    }

    static Square element(const SheetShape& s, const Forces& n, const Square& q)
    {
        Square out;
        for (Four& row : out)
            for (Piece& p : row) p.setZero();
        for (std::size_t gx = 0; gx < 4; ++gx) {
            const Hermite& x = s.x[gx];
            Four qx, qv, slope, value;
            for (std::size_t b = 0; b < 4; ++b) {
                const Four along{q[0][b], q[1][b], q[2][b], q[3][b]};
                qx[b] = sum(x.slope, along), qv[b] = sum(x.value, along);
                slope[b].setZero(), value[b].setZero();
            }
            line(s, gx, n, qx, qv, slope, value);
            for (std::size_t a = 0; a < 4; ++a)
                for (std::size_t b = 0; b < 4; ++b) out[a][b] += x.slope[a] * slope[b] + x.value[a] * value[b];
        }
        return out;
    }
};

} // namespace

SheetShape sheet_shape(double lx, double ly)
{
    SheetShape s;
    for (std::size_t g = 0; g < 4; ++g) {
        s.x[g] = hermite(lx, gauss_4[g].s), s.y[g] = hermite(ly, gauss_4[g].s);
        s.xi[g] = s.eta[g] = 2 * gauss_4[g].s - 1;
        for (std::size_t h = 0; h < 4; ++h) s.area(static_cast<Eigen::Index>(g), static_cast<Eigen::Index>(h)) = gauss_4[g].weight * gauss_4[h].weight * lx * ly;
    }
    return s;
}

Matrix press(const PressedSheet& sheet, const std::vector<const ForceField*>& fields, const Matrix& x)
{
    if (static_cast<Eigen::Index>(fields.size()) != x.cols()) throw std::invalid_argument("press: a column for each field");
    Matrix y(x.rows(), x.cols());
    by_eights(x.cols(), [&]<int Width>(Several<Width>, Eigen::Index first, Eigen::Index count) {
        using P = Press<Width>;
        const auto from = Several<Width>::from(x, first, count);
        auto to = from;
        to.setZero();
        for (std::size_t e = 0; e < sheet.size(); ++e) {
            typename P::Square q;
            for (std::size_t k = 0; k < 16; ++k) {
                if (sheet[e].place[k] < 0) q[along_x(k)][along_y(k)].setZero();
                else q[along_x(k)][along_y(k)] = from.col(sheet[e].place[k]);
            }
            q = P::element(*sheet[e].shape, P::forces(fields, first, count, static_cast<Eigen::Index>(e)), q);
            for (std::size_t k = 0; k < 16; ++k)
                if (sheet[e].place[k] >= 0) to.col(sheet[e].place[k]) -= q[along_x(k)][along_y(k)];
        }
        Several<Width>::to(y, first, count, to);
    });
    return y;
}

} // namespace thinskin::fem
