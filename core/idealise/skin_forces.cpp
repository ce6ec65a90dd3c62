// The forces on the skin in one state, and what a grid cannot show beside them (ID-16).
#include "idealise/skin_forces.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace thinskin::idealise {

namespace {

bool no_force(const fem::LocalForce& f) { return f.force == 0; }

/// What parts put on the skin in this state.
std::vector<fem::LocalForce> of_parts(const Structure& s, const Run& run)
{
    std::vector<fem::LocalForce> out;
    const fem::JointState& state = run.state(0);
    for (std::size_t j = 0; j < s.assembly.joints.size(); ++j) {
        const fem::Joint& joint = s.assembly.joints[j];
        const double lambda = state.lambda(static_cast<Eigen::Index>(j));
        if (joint.a.body == s.skin_body) out.push_back({joint.a.where, joint.a.along, -lambda});
        if (joint.b.body == s.skin_body) out.push_back({joint.b.where, joint.b.along, lambda});
    }
    std::erase_if(out, no_force);
    return out;
}

/// Forces and masses of the case itself: nothing lies on the skin there.
std::vector<fem::LocalForce> of_case(const Structure& s, const Run& run)
{
    std::vector<fem::LocalForce> out;
    constexpr fem::SkinDirection along[] = {fem::SkinDirection::x, fem::SkinDirection::y, fem::SkinDirection::z};
    for (int d = 0; d < 3; ++d) {
        const auto i = static_cast<std::size_t>(d);
        for (const model::PanelMass& m : s.layout->source->masses)
            out.push_back({{m.at.x.value, m.at.y.value, 5, 5}, along[i], run.factors(d) * m.mass.value * base::gravity_m_s2});
        for (std::size_t w = 0; w < s.when.size(); ++w)
            for (const model::PanelForce& f : s.layout->source->forces)
                if (f.when == s.when[w].when && f.force[i].value != 0) out.push_back({footprint(f), along[i], run.factors(3 + static_cast<Eigen::Index>(w)) * f.force[i].value});
    }
    std::erase_if(out, no_force);
    return out;
}

} // namespace

OnSkin forces_on_skin(const Structure& s, const Run& run)
{
    OnSkin f;
    f.parts = f.all = of_parts(s, run);
    const std::vector<fem::LocalForce> more = of_case(s, run);
    f.all.insert(f.all.end(), more.begin(), more.end());
    return f;
}

double pressure_on_skin(const Structure& s, const Run& run)
{
    double p = 0;
    for (std::size_t w = 0; w < s.when.size(); ++w)
        for (const model::PanelPressure& q : s.layout->source->pressures)
            if (q.when == s.when[w].when) p += run.factors(3 + static_cast<Eigen::Index>(w)) * q.value.value;
    return p;
}

namespace {

/// Radius of the circle of the footprint's area.
double radius(const fem::Footprint& f) { return std::sqrt(4 * f.half_x * f.half_y / std::numbers::pi); }

/// What force f adds at distance d, between there and the grid's spacing h.
double hidden_by(const fem::LocalForce& f, double d, double h, const fem::SheetSection& sheet)
{
    const double r = std::max(d, radius(f.where));
    if (r >= h) return 0;
    constexpr double pi = std::numbers::pi;
    if (f.direction == fem::SkinDirection::z) return 3 * f.force * (1 + sheet.nu) / (2 * pi * sheet.thickness * sheet.thickness) * std::log(h / r);
    return f.force * (3 + sheet.nu) / (4 * pi * sheet.thickness) * (1 / r - 1 / h);
}

} // namespace

double hidden_stress(const Structure& s, const Run& run)
{
    const std::vector<fem::LocalForce> forces = forces_on_skin(s, run).all;
    double most = 0;
    for (const fem::LocalForce& at : forces) {
        fem::Vec3 here = fem::Vec3::Zero();
        for (const fem::LocalForce& f : forces) here(static_cast<int>(f.direction)) += hidden_by(f, std::hypot(f.where.x - at.where.x, f.where.y - at.where.y), s.options.grid_spacing, s.skin->model.sheet);
        base::keep_largest(most, std::abs(here.z()) + std::hypot(here.x(), here.y()));
    }
    return most;
}

} // namespace thinskin::idealise
