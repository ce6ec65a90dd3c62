// Several states of a skin read at once: at each point the element, its functions and its matrices are the same for all of them.
#include "fem/skin_read.h"

#include <stdexcept>

namespace thinskin::fem {

SkinStates::SkinStates(const Skin& skin, const std::vector<const Vector*>& u) : skin_(&skin), count_(u.size()), u_(most, skin.body.dofs)
{
    if (u.size() > most) throw std::invalid_argument("SkinStates: too many at once");
    u_.bottomRows(static_cast<Eigen::Index>(most - count_)).setZero();
    for (std::size_t k = 0; k < count_; ++k) {
        if (u[k]->size() != skin.body.dofs) throw std::invalid_argument("SkinStates: displacement of the wrong length");
        u_.row(static_cast<Eigen::Index>(k)) = u[k]->transpose();
    }
}

SkinPointOf<SkinStates::Figures> SkinStates::at(double x, double y) const
{
    const ElementPlace e = find_element(*skin_, x, y, "SkinStates: ");
    const auto unknown = [this](int dof) { return u_.col(dof); };
    SkinPointOf<Figures> p;
    read_bending(*skin_, unknown, e, p);
    read_displacements(*skin_, unknown, e, p);
    read_membrane(*skin_, unknown, e, p);
    return p;
}

std::vector<SkinDeflection> SkinStates::deflection(int between) const
{
    const PictureGrid grid(skin_->grid, between);
    const SkinLayout l{skin_->grid};
    std::vector<SkinDeflection> all(count_, {grid.x, grid.y, {}});
    for (SkinDeflection& d : all) d.w.reserve(d.x.size() * d.y.size());
    const auto put = [&](const Figures& w) {
        for (std::size_t k = 0; k < count_; ++k) all[k].w.push_back(w(static_cast<Eigen::Index>(k)));
    };
    const auto unknown = [this](int dof) { return u_.col(dof); };
    grid.each(skin_->model, [&](const LinePlace& x, const LinePlace& y) { put(read_deflection<Figures>(l, unknown, x, y)); }, [&] { put(Figures::Constant(std::nan(""))); });
    return all;
}

SkinStates::Figures von_mises(const SheetSection& sheet, const SkinPointOf<SkinStates::Figures>& p)
{
    SkinStates::Figures largest = SkinStates::Figures::Zero();
    for (const double face : {1.0, -1.0}) {
        const SkinStates::Figures v = face_mises(sheet, p, face);
        largest = (v <= largest || largest.isNaN()).select(largest, v); // as base::takes_over()
    }
    return largest;
}

} // namespace thinskin::fem
