#include "fem/modes_system.h"

#include "base/largest.h"
#include "fem/factor.h"
#include "fem/joint_system.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <stdexcept>

namespace thinskin::fem {
namespace {

constexpr double pi = 3.14159265358979323846;
constexpr double shift_Hz = 5;               // of the order of what is looked for: far below it the rigid motions drown the joints
constexpr double free_share = 1e-7;          // omega^2 below this part of the shift: nothing resists

bool has_mass(const MassMatrix& m) { return m.M.rows() > 0 && m.M.nonZeros() > 0; }

/// Its factor tells a body that was changed from the sheet it was; 0: nothing to know it by.
std::uint64_t number_of(const Body& body) { return body.factor ? body.factor->id : body.made_as; }

/// To the last bit.
bool same(const Sparse& a, const Sparse& b)
{
    const auto n = static_cast<std::size_t>(a.nonZeros());
    if (a.rows() != b.rows() || a.cols() != b.cols() || a.nonZeros() != b.nonZeros()) return false;
    if (!a.isCompressed() || !b.isCompressed()) return false;
    return std::equal(a.outerIndexPtr(), a.outerIndexPtr() + a.outerSize() + 1, b.outerIndexPtr()) && std::equal(a.innerIndexPtr(), a.innerIndexPtr() + n, b.innerIndexPtr())
        && std::equal(a.valuePtr(), a.valuePtr() + n, b.valuePtr());
}

} // namespace

ModesSystem::ModesSystem(const Assembly& assembly, const std::vector<char>& active, const std::vector<MassMatrix>& masses, ModesCache::Impl& cache)
    : bodies_(assembly), masses_(masses), shift_(std::pow(2 * pi * shift_Hz, 2)), cache_(cache)
{
    check_assembly(assembly);
    bool any = false;
    for (std::size_t b = 0; b < assembly.bodies.size(); ++b) {
        const Body& body = *assembly.bodies[b];
        begin_.push_back(size_);
        size_ += body.dofs;
        any = any || has_mass(masses[b]);
        check_mass(b); // throws where it does not fit
        rigid_mass_.emplace_back(has_mass(masses[b]) ? Eigen::Matrix<double, 6, 6>(body.rigid_modes.transpose() * (masses[b].M * body.rigid_modes).eval()) : Eigen::Matrix<double, 6, 6>::Zero());
    }
    join_masses();
    for (std::size_t b = 0; b < assembly.bodies.size(); ++b)
        if (!add_body(b)) return;
    if (!any) {
        status_ = ModesStatus::no_mass;
        where_ = "nothing has mass";
        return;
    }
    condense_joints(active);
}

void ModesSystem::check_mass(std::size_t b) const
{
    const Body& body = *bodies_.bodies[b];
    const Sparse& M = masses_[b].M;
    if (M.rows() == 0) return;
    if (M.rows() != body.dofs || M.cols() != body.dofs) throw std::invalid_argument("modes: the mass of " + body.name + " has the wrong size");
    for (int c = 0; c < M.outerSize(); ++c)
        for (Sparse::InnerIterator it(M, c); it; ++it)
            if (!std::isfinite(it.value())) throw std::invalid_argument("modes: the mass of " + body.name + " is not a number");
}

/// One body after the other, without what is held: columns are written in their order, a list of entries would be twice as large.
void ModesSystem::join_masses()
{
    Eigen::Index entries = 0;
    for (const MassMatrix& m : masses_) entries += m.M.nonZeros();
    mass_.resize(size_, size_);
    mass_.reserve(entries);
    for (std::size_t b = 0; b < masses_.size(); ++b) {
        const Body& body = *bodies_.bodies[b];
        const Sparse& M = masses_[b].M;
        const auto held = [&](Eigen::Index d) { return body.held && body.supported[static_cast<std::size_t>(d)]; };
        for (int c = 0; c < body.dofs; ++c) {
            mass_.startVec(begin_[b] + c);
            if (M.rows() == 0 || held(c)) continue;
            for (Sparse::InnerIterator it(M, c); it; ++it)
                if (!held(it.row())) mass_.insertBack(begin_[b] + it.row(), begin_[b] + c) = it.value();
        }
    }
    mass_.finalize();
}

std::shared_ptr<const Body> ModesSystem::shifted(const Body& body, const MassMatrix& mass)
{
    auto s = std::make_shared<Body>();
    s->name = body.name;
    s->dofs = body.dofs;
    s->supported = body.held ? body.supported : std::vector<char>(static_cast<std::size_t>(body.dofs), 0);
    if (mass.M.rows() == 0) s->factor = factorise(body.rigid ? Sparse(body.dofs, body.dofs) : body.K, s->supported, body.spots);
    else if (body.rigid) s->factor = factorise(shift_ * mass.M, s->supported);
    else s->factor = factorise(Sparse(body.K + shift_ * mass.M), s->supported, body.spots);
    return s; // K itself is not kept: it would be the largest of all
}

/// The skin, which stays when parts on it move.
std::shared_ptr<const Body> ModesSystem::shifted_held(const Body& body, const MassMatrix& mass)
{
    if (const std::uint64_t is = number_of(body); cache_.body != is || !same(cache_.M, mass.M)) {
        cache_.shifted = shifted(body, mass);
        cache_.body = is;
        cache_.M = mass.M;
    }
    return cache_.shifted;
}

bool ModesSystem::add_body(std::size_t b)
{
    const Body& body = *bodies_.bodies[b];
    if (!body.held && !has_mass(masses_[b])) {
        status_ = ModesStatus::no_mass;
        where_ = body.name + " is free and has no mass";
        return false;
    }
    try {
        shifted_.push_back(body.held && number_of(body) != 0 ? shifted_held(body, masses_[b]) : shifted(body, masses_[b]));
    } catch (const SingularMatrix&) {
        status_ = body.held ? ModesStatus::ill_conditioned : ModesStatus::no_mass;
        where_ = body.name + (body.held ? " has lost its stiffness" : " is free and can move without moving mass");
        return false;
    }
    assembly_.bodies.push_back(shifted_.back().get());
    return true;
}

void ModesSystem::condense_joints(const std::vector<char>& active)
{
    for (std::size_t k = 0; k < active.size(); ++k)
        if (active[k] || bodies_.joints[k].law == Law::tie) assembly_.joints.push_back(bodies_.joints[k]);
    const Condensed c = condense(assembly_, -1, cache_.columns);
    for (std::size_t b = 0; b < shifted_.size(); ++b) touches_.push_back(touches(assembly_, static_cast<int>(b), cache_.columns));
    joint_flexibility_ = c.F;
    joint_flexibility_.diagonal() += c.compliance;
    if (assembly_.joints.empty()) return;
    definite_.compute(joint_flexibility_);
    is_definite_ = definite_.info() == Eigen::Success;
    for (Eigen::Index k = 0; k < joint_flexibility_.rows() && is_definite_; ++k)
        is_definite_ = std::pow(definite_.matrixLLT()(k, k), 2) > 1e-12 * joint_flexibility_(k, k);
    if (!is_definite_) { // joints that repeat each other without compliance: any split between them will do
        general_.setThreshold(1e-12);
        general_.compute(joint_flexibility_);
    }
    if (joint_flexibility_.allFinite()) return;
    status_ = ModesStatus::ill_conditioned;
    where_ = "a joint's flexibility is not a number";
}

Vector ModesSystem::body_part(const Vector& x, std::size_t b) const { return x.segment(begin_[b], bodies_.bodies[b]->dofs); }

Vector ModesSystem::free_solve(const Vector& load) const
{
    Vector x(size_);
    for (std::size_t b = 0; b < shifted_.size(); ++b) x.segment(begin_[b], shifted_[b]->dofs) = fem::solve(*shifted_[b], body_part(load, b));
    return x;
}

Vector ModesSystem::lambda(const Vector& free) const
{
    const auto n = static_cast<Eigen::Index>(assembly_.joints.size());
    Vector e = Vector::Zero(n);
    for (Eigen::Index k = 0; k < n; ++k)
        for (const Side& s : sides(assembly_.joints[static_cast<std::size_t>(k)])) {
            if (s.body < 0) continue;
            for (const auto& [d, value] : *s.row) e(k) += s.sign * value * free(begin_[static_cast<std::size_t>(s.body)] + d);
        }
    return joint_forces(e);
}

Vector ModesSystem::joint_forces(const Vector& gaps) const
{
    if (gaps.size() == 0) return gaps;
    return is_definite_ ? Vector(definite_.solve(gaps)) : Vector(general_.solve(gaps));
}

Vector ModesSystem::joint_loads(const Vector& forces) const
{
    Vector f = Vector::Zero(size_);
    for (std::size_t k = 0; k < assembly_.joints.size(); ++k)
        for (const Side& s : sides(assembly_.joints[k])) {
            if (s.body < 0) continue;
            for (const auto& [d, value] : *s.row) f(begin_[static_cast<std::size_t>(s.body)] + d) -= s.sign * value * forces(static_cast<Eigen::Index>(k));
        }
    return f;
}

/// Forwards, the joints, backwards: with K = G G^T a joint's gap is its column times G^-1 f, and its force goes back along that column.
Vector ModesSystem::solve(const Vector& load) const
{
    std::vector<Vector> y;
    Vector gaps = Vector::Zero(static_cast<Eigen::Index>(assembly_.joints.size()));
    for (std::size_t b = 0; b < shifted_.size(); ++b) {
        const Factor& f = *shifted_[b]->factor;
        Vector& part = y.emplace_back(f.size());
        for (int k = 0; k < f.size(); ++k) part(k) = load(begin_[b] + f.dof[static_cast<std::size_t>(k)]);
        f.forward(part);
        for (const Touch& t : touches_[b]) gaps(t.joint) += t.sign * dot(f, *t.column, part);
    }
    const Vector forces = joint_forces(gaps);
    Vector x = Vector::Zero(size_);
    for (std::size_t b = 0; b < shifted_.size(); ++b) {
        const Factor& f = *shifted_[b]->factor;
        for (const Touch& t : touches_[b]) add(f, *t.column, -t.sign * forces(t.joint), y[b]);
        f.backward(y[b]);
        for (int k = 0; k < f.size(); ++k) x(begin_[b] + f.dof[static_cast<std::size_t>(k)]) = y[b](k);
    }
    return x;
}

/// Equation K x - omega^2 M x = joint forces, with the joint forces that go with (omega^2 + s) M x.
double ModesSystem::residual(double omega_squared, const Vector& x) const
{
    const Vector inertia = mass_ * x, load = (omega_squared + shift_) * inertia;
    const Vector joints = joint_loads(lambda(free_solve(load)));
    double worst = 0, largest = 0;
    for (std::size_t b = 0; b < shifted_.size(); ++b) {
        const Body& body = *bodies_.bodies[b];
        Vector out = shift_ * body_part(inertia, b) - body_part(load, b) - body_part(joints, b);
        if (!body.rigid) out += body.K * body_part(x, b);
        for (int d = 0; d < shifted_[b]->dofs; ++d)
            if (!shifted_[b]->supported[static_cast<std::size_t>(d)]) base::keep_largest(worst, std::abs(out(d)));
        largest = std::max({largest, body_part(load, b).lpNorm<Eigen::Infinity>(), body_part(joints, b).lpNorm<Eigen::Infinity>()});
    }
    return worst == 0 ? 0 : worst / largest;
}

/// The rigid motion that carries the body's momentum, about its centre of mass.
BodyShare ModesSystem::share(std::size_t b, const Vector& x) const
{
    const Body& body = *bodies_.bodies[b];
    BodyShare s;
    s.body = body.name;
    if (!has_mass(masses_[b])) return s;
    const Vector part = body_part(x, b), momentum = masses_[b].M * part;
    s.share = part.dot(momentum);
    const Eigen::Matrix<double, 6, 6>& rigid = rigid_mass_[b];
    const Eigen::Matrix<double, 6, 1> moved = rigid.completeOrthogonalDecomposition().solve(body.rigid_modes.transpose() * momentum);
    const double mass = rigid(2, 2);
    if (!(mass > 0) || !(s.share > 1e-12)) return s;
    const Vec3 centre(rigid(1, 5) / mass, -rigid(0, 5) / mass, -rigid(1, 3) / mass), turn = moved.tail<3>();
    const Vec3 velocity = moved.head<3>() + turn.cross(centre);
    const Eigen::Matrix3d inertia = rigid.bottomRightCorner<3, 3>() - mass * (centre.squaredNorm() * Eigen::Matrix3d::Identity() - centre * centre.transpose());
    const Vec3 spin = inertia * turn;
    s.bending = 1;
    for (int k = 0; k < 3; ++k) {
        s.along[static_cast<std::size_t>(k)] = mass * velocity(k) * velocity(k) / s.share;
        s.about[static_cast<std::size_t>(k)] = turn(k) * spin(k) / s.share;
        s.bending -= s.along[static_cast<std::size_t>(k)] + s.about[static_cast<std::size_t>(k)];
    }
    return s;
}

Mode ModesSystem::describe(double omega_squared, const Vector& x) const
{
    Mode m;
    if (std::abs(omega_squared) > free_share * shift_) m.frequency_Hz = std::sqrt(omega_squared) / (2 * pi); // negative: not a number
    for (std::size_t b = 0; b < shifted_.size(); ++b) {
        m.shape.push_back(body_part(x, b));
        m.shares.push_back(share(b, x));
    }
    m.residual = std::isnan(m.frequency_Hz) ? std::nan("") : residual(omega_squared, x);
    m.what = mode_words(m.shares, bodies_);
    return m;
}

std::string mode_words(const std::vector<BodyShare>& shares, const Assembly& assembly)
{
    static const char* const axes[3] = {"x", "y", "z"};
    if (shares.empty()) return "";
    const auto most = std::max_element(shares.begin(), shares.end(), [](const BodyShare& a, const BodyShare& b) { return a.share < b.share; });
    const bool held = assembly.bodies[static_cast<std::size_t>(most - shares.begin())]->held;
    std::string does = "changes its shape";
    double largest = held ? 2 : most->bending;
    for (std::size_t k = 0; k < 3; ++k) {
        if (most->along[k] > largest) largest = most->along[k], does = std::string("moves along ") + axes[k];
        if (most->about[k] > largest) largest = most->about[k], does = std::string("turns about ") + axes[k];
    }
    char share[48];
    std::snprintf(share, sizeof share, " (%.0f %% of the moving energy)", 100 * most->share);
    return most->body + " " + does + share;
}

} // namespace thinskin::fem
