#pragma once
#include <vector>

/// Rigid-body rules as functions of numbers: what a person does with a pocket calculator. Units N, mm, N mm.
/// All elementary statics. A NaN in gives a NaN out; callers refuse it before a status is set.
namespace thinskin::statics {

/// Bolts of a rigid leg on one line, pulled off the wall.                                                       [ST-4]
/// `at` heights of the bolts, `foot` and `top` the ends of the leg, `pull` F the outward force (negative = push), `moment` of
/// all forces about y = 0, positive takes the top off the wall.
///   turning about the foot: T_i = M_f d_i / sum d^2, d_i above the foot; push at the foot P = sum T - F   (P >= 0)
///   turning about the top: the same from above
///   neither, F > 0 (no edge touches): T_i = F/n + M_c (y_i - y_c)/sum (y - y_c)^2
///   neither, F <= 0: the leg is pressed flat, T = 0
/// The three meet without a jump. The pivot on a stiff edge is the assumption; prying is not in it.
struct BoltRow { std::vector<double> at; double foot, top; double pull, moment; };
enum class Pivot { foot, top, off_the_wall, pressed_flat };
struct RowTensions { Pivot pivot = Pivot::pressed_flat; std::vector<double> tension; double push = 0, push_at = 0; };
[[nodiscard]] RowTensions lever_rule(const BoltRow& row);

/// Bolts sharing shear and an in-plane moment, rigid plate, equal bolts, elastic.                               [ST-6]
///   J = sum r^2,  F_x,i = P_x/n - M (y_i - y_c)/J,  F_y,i = P_y/n + M (x_i - x_c)/J;  M about the centroid, counter-clockwise
/// With all bolts at one point J = 0: a moment cannot be carried, the result is not finite.
struct Plane { double x, y; };
struct BoltGroup { std::vector<Plane> at; Plane force; double moment; };
[[nodiscard]] Plane centroid(const std::vector<Plane>& at);
[[nodiscard]] std::vector<Plane> polar_bolt_group(const BoltGroup& g);

/// A beam on two supports under point loads across it: reactions (force of the beam on its supports, in the sense of the
/// loads) and the bending moment under each load.                                                              [ST-5]
///   R_1 = sum F_i (s_2 - s_i)/(s_2 - s_1),  R_2 = sum F - R_1
struct PointLoad { double at, force; };
struct SimpleBeam { double first, second; std::vector<PointLoad> loads; };
struct BeamFigures { double first = 0, second = 0; std::vector<double> moment_at_loads; double max_moment = 0; };
[[nodiscard]] BeamFigures simple_beam(const SimpleBeam& b);

/// Most a bolt can take when a leg is pulled at its heel: F (1 + a/b), a heel to bolt, b bolt to toe.             [ST-7]
struct Prying { double pull, a, b; };
[[nodiscard]] double prying_bound(const Prying& p);

/// Axial force of a brace under a pinned arm: N = M L/(H z), M about the arm's root, H and z the brace's rise and reach,
/// L its length; compression positive.                                                                          [ST-8]
struct Brace { double root_moment, rise, reach; };
[[nodiscard]] double brace_force(const Brace& b);

} // namespace thinskin::statics
