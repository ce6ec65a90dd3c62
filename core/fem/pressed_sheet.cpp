// K_g q = sum over the Gauss points of dA [w_x w_y]^T N [w_x w_y] q, one direction after the other: 600 products an element, where its written
// matrix takes 256 but has to come from memory for each load case. Several load cases are worked on at once.
#include "fem/pressed_sheet.h"

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
    using Pieces = typename Several<Width>::Pieces;
    using Forces = std::array<Piece, 12>;

    static Piece sum(const std::array<double, 4>& f, const Four& q) { return f[0] * q[0] + f[1] * q[1] + f[2] * q[2] + f[3] * q[3]; }

    /// What the points on one line x = const make of q, given its sums along x; `slope` and `value` take the sums along y.
    static void line(const SheetShape& s, std::size_t gx, const Forces& n, const Four& qx, const Four& q, Four& slope, Four& value)
    {
        std::array<Piece, 3> even, odd;
        for (std::size_t c = 0; c < 3; ++c) even[c] = n[c] + s.xi[gx] * n[3 + c], odd[c] = n[6 + c] + s.xi[gx] * n[9 + c];
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

    static Pieces sheet(const PressedSheet& elements, const Pieces& fields, const Pieces& x)
    {
        if (fields.cols() != 12 * static_cast<Eigen::Index>(elements.size())) throw std::invalid_argument("press: forces of each element");
        Pieces y = Pieces::Zero(Width, x.cols());
        Eigen::Index at = 0;
        for (const PressedElement& e : elements) {
            Forces n;
            for (Piece& p : n) p = fields.col(at++);
            Square q;
            for (std::size_t k = 0; k < 16; ++k) {
                if (e.place[k] < 0) q[along_x(k)][along_y(k)].setZero();
                else q[along_x(k)][along_y(k)] = x.col(e.place[k]);
            }
            q = element(*e.shape, n, q);
            for (std::size_t k = 0; k < 16; ++k)
                if (e.place[k] >= 0) y.col(e.place[k]) -= q[along_x(k)][along_y(k)];
        }
        return y;
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

template <int Width> typename Several<Width>::Pieces beside_each_other(const std::vector<const ForceField*>& fields, Eigen::Index first, Eigen::Index count)
{
    const ForceField& one = *fields.at(static_cast<std::size_t>(first));
    typename Several<Width>::Pieces out = Several<Width>::Pieces::Zero(Width, one.size());
    for (Eigen::Index c = 0; c < count; ++c) {
        const ForceField& field = *fields.at(static_cast<std::size_t>(first + c));
        if (field.cols() != one.cols()) throw std::invalid_argument("beside_each_other: fields of one sheet");
        out.row(c) = Eigen::Map<const Eigen::Array<double, 1, Eigen::Dynamic>>(field.data(), field.size());
    }
    return out;
}
template Several<4>::Pieces beside_each_other<4>(const std::vector<const ForceField*>&, Eigen::Index, Eigen::Index);
template Several<8>::Pieces beside_each_other<8>(const std::vector<const ForceField*>&, Eigen::Index, Eigen::Index);

Several<4>::Pieces press(const PressedSheet& sheet, const Several<4>::Pieces& fields, const Several<4>::Pieces& x) { return Press<4>::sheet(sheet, fields, x); }
Several<8>::Pieces press(const PressedSheet& sheet, const Several<8>::Pieces& fields, const Several<8>::Pieces& x) { return Press<8>::sheet(sheet, fields, x); }

} // namespace thinskin::fem
