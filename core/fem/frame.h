#pragma once
#include "fem/body.h"

namespace thinskin::fem {

/// Section in the member's local axes y, z (x along the member from node a to node b).
/// The member runs through its shear centre; the centroid lies at (c_y, c_z) from it.
///   I_y = integral z^2 dA (bending in the x-z plane), I_z = integral y^2 dA, I_yz = integral y z dA, about the centroid.
struct BeamSection { double E = 0, G = 0, A = 0, I_y = 0, I_z = 0, I_yz = 0, J = 0, c_y = 0, c_z = 0; };

struct FrameMember {
    std::string name;
    int a = 0, b = 0;
    BeamSection section;
    Vec3 local_y{0, 1, 0};               ///< made perpendicular to the axis; local z = x cross y
    bool pin_a = false, pin_b = false;   ///< true: no bending moments at that end (torsion still carried), static condensation
};

struct FrameModel {
    std::string name;
    std::vector<Vec3> nodes;
    std::vector<FrameMember> members;
    std::vector<std::pair<int, int>> supports; ///< (node, direction 0..5 = x y z rx ry rz) held by the ground; none: free body
};

struct Frame {
    struct Member { Eigen::Matrix<double, 12, 12> stiffness, rotation; }; ///< in local axes; local = rotation * global
    FrameModel model;
    Body body;                           ///< 6 dofs a node: x y z rx ry rz
    std::vector<Member> members;         ///< one for each of the model's
};

[[nodiscard]] Frame make_frame(const FrameModel& model);

/// Displacement along `direction` (unit) of the point `point` fixed rigidly to a node.
[[nodiscard]] Row frame_port(const Frame& frame, int node, const Vec3& point, const Vec3& direction);

/// End forces of a member in its local axes at a and at b: the forces the neighbours put on the member
/// (N, V_y, V_z, T, M_y, M_z), 12 values. For internal forces at b take them as they are; at a change the sign.
[[nodiscard]] Eigen::Matrix<double, 12, 1> member_forces(const Frame& frame, int member, const Vector& u);

/// What belongs to one member's end displacements: local = rotation * global; keep takes the bending rotations of pinned
/// ends from the others (identity without pins).
struct MemberFrame { std::vector<int> dofs; Matrix rotation, keep; double length = 0; };
[[nodiscard]] MemberFrame member_frame(const Frame& frame, int member);

/// Weight-like load: force vector of an acceleration (3 components, force per unit mass) on masses at points fixed to nodes.
struct NodeMass { int node = 0; Vec3 at{0, 0, 0}; double mass = 0; };
[[nodiscard]] Vector mass_load(const Frame& frame, const std::vector<NodeMass>& masses, const Vec3& acceleration);

/// A rigid body: 6 dofs (translations and rotations through the origin), no elastic dofs.
[[nodiscard]] Body make_rigid(const std::string& name);
[[nodiscard]] Row rigid_port(const Vec3& point, const Vec3& direction);

} // namespace thinskin::fem
