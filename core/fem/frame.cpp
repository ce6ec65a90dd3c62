#include "fem/frame.h"

#include "fem/factor.h"

#include <cmath>
#include <stdexcept>
#include <utility>

namespace thinskin::fem {
namespace {

using Matrix12 = Eigen::Matrix<double, 12, 12>;

double member_length(const FrameModel& m, const FrameMember& b)
{
    return (m.nodes[static_cast<std::size_t>(b.b)] - m.nodes[static_cast<std::size_t>(b.a)]).norm();
}

/// Rows: local x, y, z in global axes.
Eigen::Matrix3d axes(const FrameModel& m, const FrameMember& b)
{
    const Vec3 x = (m.nodes[static_cast<std::size_t>(b.b)] - m.nodes[static_cast<std::size_t>(b.a)]).normalized();
    Vec3 y = b.local_y - b.local_y.dot(x) * x;
    if (!(y.norm() > 1e-6 * b.local_y.norm())) throw std::invalid_argument("frame '" + m.name + "', member '" + b.name + "': local_y runs along the member");
    y.normalize();
    Eigen::Matrix3d T;
    T << x.transpose(), y.transpose(), x.cross(y).transpose();
    return T;
}

/// Euler beam about its shear centre (theory FE-8). Order u v w rx ry rz at a, at b.
Matrix12 beam_stiffness(const BeamSection& s, double L)
{
    const Eigen::Vector4d bend[4] = {{12, 6 * L, -12, 6 * L}, {6 * L, 4 * L * L, -6 * L, 2 * L * L}, {-12, -6 * L, 12, -6 * L}, {6 * L, 2 * L * L, -6 * L, 4 * L * L}};
    const int v[4] = {1, 5, 7, 11}, w[4] = {2, 4, 8, 10};
    const double sign_w[4] = {1, -1, 1, -1};                    // w' = -ry
    Matrix12 k = Matrix12::Zero();
    for (int i = 0; i < 4; ++i)
        for (int j = 0; j < 4; ++j) {
            const double c = s.E / (L * L * L) * bend[i](j);
            k(v[i], v[j]) += c * s.I_z;
            k(w[i], w[j]) += c * s.I_y * sign_w[i] * sign_w[j];
            k(v[i], w[j]) += c * s.I_yz * sign_w[j];
            k(w[i], v[j]) += c * s.I_yz * sign_w[i];
        }
    Eigen::Matrix<double, 12, 1> stretch = Eigen::Matrix<double, 12, 1>::Zero(), twist = stretch;
    stretch(0) = -1, stretch(6) = 1;                            // u of the centroid = u + c_z ry - c_y rz
    stretch(4) = -s.c_z, stretch(10) = s.c_z, stretch(5) = s.c_y, stretch(11) = -s.c_y;
    twist(3) = -1, twist(9) = 1;
    k += s.E * s.A / L * stretch * stretch.transpose() + s.G * s.J / L * twist * twist.transpose();
    return k;
}

/// Takes the bending moments out of pinned ends (theory FE-9).
void release(Matrix12& k, bool pin_a, bool pin_b)
{
    std::vector<int> gone, kept;
    for (int d = 0; d < 12; ++d) ((pin_a && (d == 4 || d == 5)) || (pin_b && (d == 10 || d == 11)) ? gone : kept).push_back(d);
    if (gone.empty()) return;
    const Matrix full = k, cc = full(gone, gone), ck = full(gone, kept);
    const Matrix condensed = full(kept, kept) - ck.transpose() * cc.ldlt().solve(ck);
    k.setZero();
    for (std::size_t i = 0; i < kept.size(); ++i)
        for (std::size_t j = 0; j < kept.size(); ++j) k(kept[i], kept[j]) = condensed(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(j));
}

/// End displacements with those of pinned ends taken from the others.
Matrix released(const Matrix12& k, bool pin_a, bool pin_b)
{
    std::vector<int> gone, kept;
    for (int d = 0; d < 12; ++d) ((pin_a && (d == 4 || d == 5)) || (pin_b && (d == 10 || d == 11)) ? gone : kept).push_back(d);
    Matrix keep = Matrix::Identity(12, 12);
    if (gone.empty()) return keep;
    const Matrix full = k, cc = full(gone, gone), ck = full(gone, kept), follow = -cc.ldlt().solve(ck);
    for (std::size_t i = 0; i < gone.size(); ++i) {
        keep(gone[i], gone[i]) = 0;
        for (std::size_t j = 0; j < kept.size(); ++j) keep(gone[i], kept[j]) = follow(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(j));
    }
    return keep;
}

Matrix12 local_stiffness(const FrameModel& m, const FrameMember& b)
{
    Matrix12 k = beam_stiffness(b.section, member_length(m, b));
    release(k, b.pin_a, b.pin_b);
    return k;
}

Matrix12 rotation(const FrameModel& m, const FrameMember& b)
{
    Matrix12 T = Matrix12::Zero();
    const Eigen::Matrix3d turn = axes(m, b);
    for (int k = 0; k < 4; ++k) T.block<3, 3>(3 * k, 3 * k) = turn;
    return T;
}

int member_dof(const FrameMember& b, int k) { return k < 6 ? 6 * b.a + k : 6 * b.b + k - 6; }

void check_member(const FrameModel& m, const FrameMember& b)
{
    const std::string who = "frame '" + m.name + "', member '" + b.name + "': ";
    const int n = static_cast<int>(m.nodes.size());
    if (b.a < 0 || b.b < 0 || b.a >= n || b.b >= n) throw std::invalid_argument(who + "node number out of range");
    const double L = member_length(m, b);
    if (!(L > 1e-6) || !std::isfinite(L)) throw std::invalid_argument(who + "it has no length");
    const BeamSection& s = b.section;
    for (const double v : {s.E, s.G, s.A, s.I_y, s.I_z, s.J})
        if (!(v > 0) || !std::isfinite(v)) throw std::invalid_argument(who + "E, G, A, I_y, I_z, J must be positive and finite");
    if (!(s.I_yz * s.I_yz < s.I_y * s.I_z)) throw std::invalid_argument(who + "I_yz^2 must be less than I_y I_z");
    if (!std::isfinite(s.c_y) || !std::isfinite(s.c_z)) throw std::invalid_argument(who + "centroid offsets must be finite");
}

std::vector<Frame::Member> members(const FrameModel& m)
{
    std::vector<Frame::Member> out;
    for (const FrameMember& b : m.members) {
        check_member(m, b);
        out.push_back({local_stiffness(m, b), rotation(m, b)});
    }
    return out;
}

Sparse assemble(const Frame& f, int dofs)
{
    std::vector<Eigen::Triplet<double>> entries;
    for (std::size_t n = 0; n < f.members.size(); ++n) {
        const FrameMember& b = f.model.members[n];
        const auto& [stiffness, T] = f.members[n];
        const Matrix12 k = T.transpose() * stiffness * T;
        for (int i = 0; i < 12; ++i)
            for (int j = 0; j < 12; ++j) entries.emplace_back(member_dof(b, i), member_dof(b, j), 0.5 * (k(i, j) + k(j, i)));
    }
    Sparse K(dofs, dofs);
    K.setFromTriplets(entries.begin(), entries.end());
    return K;
}

Matrix rigid_modes(const FrameModel& m, int dofs)
{
    Matrix R = Matrix::Zero(dofs, 6);
    for (std::size_t n = 0; n < m.nodes.size(); ++n) {
        const auto d = static_cast<Eigen::Index>(6 * n);
        R.block<6, 6>(d, 0).setIdentity();
        for (int k = 0; k < 3; ++k) R.block<3, 1>(d, 3 + k) = Vec3::Unit(k).cross(m.nodes[n]);          // theory FE-10
    }
    return R;
}

/// Node for the auxiliary supports of a free frame: nearest the middle among those some member holds against rotation.
int auxiliary_node(const FrameModel& m)
{
    std::vector<char> stiff(m.nodes.size(), 0);
    for (const FrameMember& b : m.members) {
        if (!b.pin_a) stiff[static_cast<std::size_t>(b.a)] = 1;
        if (!b.pin_b) stiff[static_cast<std::size_t>(b.b)] = 1;
    }
    Vec3 middle = Vec3::Zero();
    for (const Vec3& p : m.nodes) middle += p / static_cast<double>(m.nodes.size());
    int best = -1;
    double nearest = 0;
    for (std::size_t n = 0; n < m.nodes.size(); ++n) {
        const double distance = (m.nodes[n] - middle).norm();
        if (stiff[n] && (best < 0 || distance < nearest)) best = static_cast<int>(n), nearest = distance;
    }
    if (best < 0) throw std::runtime_error("frame '" + m.name + "': mechanism, every member is pinned at both ends and nothing holds the frame");
    return best;
}

std::vector<char> supports(const FrameModel& m, int dofs)
{
    std::vector<char> held(static_cast<std::size_t>(dofs), 0);
    for (const auto& [node, direction] : m.supports) {
        if (node < 0 || node >= static_cast<int>(m.nodes.size()) || direction < 0 || direction > 5)
            throw std::invalid_argument("frame '" + m.name + "': support out of range");
        held[static_cast<std::size_t>(6 * node + direction)] = 1;
    }
    if (!m.supports.empty()) return held;
    const int node = auxiliary_node(m);
    for (int k = 0; k < 6; ++k) held[static_cast<std::size_t>(6 * node + k)] = 1;
    return held;
}

std::string singular_text(const FrameModel& m, int dof)
{
    static const char* const names[6] = {"moving along x", "moving along y", "moving along z", "turning about x", "turning about y", "turning about z"};
    return "frame '" + m.name + "': mechanism, nothing keeps node " + std::to_string(dof / 6) + " from " + names[dof % 6]
        + " (pinned members do not hold a node's rotation)";
}

} // namespace

Frame make_frame(const FrameModel& model)
{
    if (model.nodes.empty() || model.members.empty()) throw std::invalid_argument("frame '" + model.name + "': it needs nodes and members");
    std::vector<Frame::Member> matrices = members(model); // throws
    Frame frame{model, {}, std::move(matrices)};
    Body& body = frame.body;
    body.name = model.name;
    body.dofs = 6 * static_cast<int>(model.nodes.size());
    body.K = assemble(frame, body.dofs);
    body.supported = supports(model, body.dofs);
    body.held = !model.supports.empty();
    body.rigid_modes = rigid_modes(model, body.dofs);
    try {
        body.factor = factorise(body.K, body.supported);
    } catch (const SingularMatrix& e) {
        throw std::runtime_error(singular_text(model, e.dof));
    }
    return frame;
}

Row frame_port(const Frame& frame, int node, const Vec3& point, const Vec3& direction)
{
    if (node < 0 || node >= static_cast<int>(frame.model.nodes.size())) throw std::invalid_argument("frame_port: node out of range");
    const Vec3 arm = point - frame.model.nodes[static_cast<std::size_t>(node)], turn = arm.cross(direction);
    Row row;
    for (int k = 0; k < 3; ++k)
        if (direction(k) != 0) row.emplace_back(6 * node + k, direction(k));
    for (int k = 0; k < 3; ++k)
        if (turn(k) != 0) row.emplace_back(6 * node + 3 + k, turn(k));
    return row;
}

Eigen::Matrix<double, 12, 1> member_forces(const Frame& frame, int member, const Vector& u)
{
    const FrameMember& b = frame.model.members.at(static_cast<std::size_t>(member));
    Eigen::Matrix<double, 12, 1> q;
    for (int k = 0; k < 12; ++k) q(k) = u(member_dof(b, k));
    const auto& [stiffness, rotation] = frame.members[static_cast<std::size_t>(member)];
    return stiffness * (rotation * q);
}

MemberFrame member_frame(const Frame& frame, int member)
{
    const FrameMember& b = frame.model.members.at(static_cast<std::size_t>(member));
    MemberFrame m;
    m.length = member_length(frame.model, b);
    m.rotation = frame.members[static_cast<std::size_t>(member)].rotation;
    m.keep = released(beam_stiffness(b.section, m.length), b.pin_a, b.pin_b);
    for (int k = 0; k < 12; ++k) m.dofs.push_back(member_dof(b, k));
    return m;
}

Vector mass_load(const Frame& frame, const std::vector<NodeMass>& masses, const Vec3& acceleration)
{
    Vector load = Vector::Zero(frame.body.dofs);
    for (const NodeMass& m : masses)
        for (int k = 0; k < 3; ++k) add(load, frame_port(frame, m.node, m.at, Vec3::Unit(k)), m.mass * acceleration(k));
    return load;
}

Body make_rigid(const std::string& name)
{
    Body body;
    body.name = name;
    body.dofs = 6;
    body.supported.assign(6, 0);
    body.held = false;
    body.rigid = true;
    body.rigid_modes = Matrix::Identity(6, 6);
    return body;
}

Row rigid_port(const Vec3& point, const Vec3& direction)
{
    const Vec3 turn = point.cross(direction);
    Row row;
    for (int k = 0; k < 3; ++k) row.emplace_back(k, direction(k));
    for (int k = 0; k < 3; ++k) row.emplace_back(3 + k, turn(k));
    return row;
}

} // namespace thinskin::fem
