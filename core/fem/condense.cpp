#include "fem/factor.h"
#include "fem/joint_system.h"

#include <cmath>
#include <map>
#include <stdexcept>
#include <unordered_map>

namespace thinskin::fem {
namespace {

struct Key {
    std::uint64_t factor = 0;
    Row row;
    bool operator==(const Key& o) const { return factor == o.factor && row == o.row; }
};

struct KeyHash {
    std::size_t operator()(const Key& k) const
    {
        std::size_t h = std::hash<std::uint64_t>{}(k.factor);
        const auto mix = [&h](std::size_t v) { h = (h ^ v) * 1099511628211ULL; };
        for (const auto& [dof, value] : k.row) mix(static_cast<std::size_t>(dof)), mix(std::hash<double>{}(value));
        return h;
    }
};

constexpr std::size_t most_values = 20'000'000; // 160 MB, then the cache starts anew; the answers do not depend on it

} // namespace

struct ColumnCache::Impl {
    std::unordered_map<Key, std::shared_ptr<const Column>, KeyHash> columns;
    std::size_t values = 0;
    Vector work;

    std::shared_ptr<const Column> get(const Factor& f, const Row& row)
    {
        Key key{f.id, row};
        if (const auto found = columns.find(key); found != columns.end()) return found->second;
        if (values > most_values) columns.clear(), values = 0;
        if (work.size() < f.size()) work.setZero(f.size());
        auto column = std::make_shared<const Column>(f.column(row, work));
        values += column->values.size();
        columns.emplace(std::move(key), column);
        return column;
    }
};

ColumnCache::ColumnCache() : impl_(std::make_unique<Impl>()) {}
ColumnCache::~ColumnCache() = default;
ColumnCache::ColumnCache(ColumnCache&&) noexcept = default;
ColumnCache& ColumnCache::operator=(ColumnCache&&) noexcept = default;

Eigen::Matrix<double, 1, 6> rigid_row(const Body& body, const Row& row)
{
    Eigen::Matrix<double, 1, 6> r = Eigen::Matrix<double, 1, 6>::Zero();
    for (const auto& [dof, value] : row) r += value * body.rigid_modes.row(dof);
    return r;
}

namespace {

void check_port(const Assembly& assembly, const PortRef& p, const std::string& who)
{
    if (p.body < 0) return;
    if (p.body >= static_cast<int>(assembly.bodies.size())) throw std::invalid_argument(who + "no such body");
    const Body& body = *assembly.bodies[static_cast<std::size_t>(p.body)];
    for (const auto& [dof, value] : p.row)
        if (dof < 0 || dof >= body.dofs || !std::isfinite(value)) throw std::invalid_argument(who + "port does not fit body " + body.name);
}

} // namespace

void check_assembly(const Assembly& assembly)
{
    for (const Joint& j : assembly.joints) {
        const std::string who = "joint '" + j.name + "': ";
        check_port(assembly, j.a, who);
        check_port(assembly, j.b, who);
        if (!(j.compliance >= 0) || !std::isfinite(j.compliance)) throw std::invalid_argument(who + "compliance must be finite and not negative");
        if (!(j.gap >= 0) || !std::isfinite(j.gap)) throw std::invalid_argument(who + "gap must be finite and not negative");
    }
}

std::vector<Touch> touches(const Assembly& assembly, int body, ColumnCache& cache)
{
    std::vector<Touch> out;
    const Body& b = *assembly.bodies[static_cast<std::size_t>(body)];
    for (std::size_t k = 0; k < assembly.joints.size(); ++k)
        for (const Side& s : sides(assembly.joints[k]))
            if (s.body == body) out.push_back({static_cast<int>(k), s.sign, assembly.joints[k].skin_normal, cache.impl().get(factor_of(b), *s.row)});
    return out;
}

namespace {

/// Adds one body's flexibility, lower triangle; F_ij = y_i . y_j (theory FE-6).
void add_body(const std::vector<Touch>& list, bool is_skin, Condensed& c)
{
    for (std::size_t p = 0; p < list.size(); ++p)
        for (std::size_t q = p; q < list.size(); ++q) {
            const Touch& a = list[p];
            const Touch& b = list[q];
            double value = a.sign * b.sign * dot(*a.column, *b.column);
            if (a.joint == b.joint && p != q) value *= 2; // both sides on this body: the pair counts twice on the diagonal
            c.F(b.joint, a.joint) += value;
            if (is_skin && a.normal && b.normal) c.F_skin(b.joint, a.joint) += value;
        }
}

void mirror(Matrix& F) { F.triangularView<Eigen::StrictlyUpper>() = F.transpose(); }

} // namespace

void add_flexibility(const std::vector<Touch>& list, bool is_skin, Condensed& c)
{
    add_body(list, is_skin, c);
    mirror(c.F);
    mirror(c.F_skin);
}

Condensed condense_without(const Assembly& assembly, int skin_body, int left_out, ColumnCache& cache)
{
    check_assembly(assembly);
    const auto n = static_cast<Eigen::Index>(assembly.joints.size());
    Condensed c{Matrix::Zero(n, n), Matrix::Zero(n, n), Vector(n), {}, {}, skin_body};
    for (std::size_t b = 0; b < assembly.bodies.size(); ++b) {
        const Body& body = *assembly.bodies[b];
        if (!body.held) c.rigid_body.push_back(static_cast<int>(b));
        if (!body.rigid && static_cast<int>(b) != left_out) add_body(touches(assembly, static_cast<int>(b), cache), static_cast<int>(b) == skin_body, c);
    }
    mirror(c.F);
    mirror(c.F_skin);
    c.R = Matrix::Zero(n, 6 * static_cast<Eigen::Index>(c.rigid_body.size()));
    for (Eigen::Index k = 0; k < n; ++k) {
        const Joint& joint = assembly.joints[static_cast<std::size_t>(k)];
        c.compliance(k) = joint.compliance;
        for (const Side& s : sides(joint))
            for (std::size_t g = 0; g < c.rigid_body.size(); ++g)
                if (s.body == c.rigid_body[g])
                    c.R.block<1, 6>(k, 6 * static_cast<Eigen::Index>(g)) += s.sign * rigid_row(*assembly.bodies[static_cast<std::size_t>(s.body)], *s.row);
    }
    return c;
}

Condensed condense(const Assembly& assembly, int skin_body, ColumnCache& cache) { return condense_without(assembly, skin_body, -1, cache); }

} // namespace thinskin::fem
