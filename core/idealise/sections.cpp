#include "idealise/structure.h"

namespace thinskin::idealise {

/// The member runs through the shear centre. Section axes: x along the lying side, y off the panel (standing side).
/// Beam axes: local y = lying, local z = axis x lying = +- standing.
fem::BeamSection beam_section(const catalogue::Section& s, const catalogue::Material& m, const fem::Vec3& lying, const fem::Vec3& standing, const fem::Vec3& axis)
{
    const double side = axis.cross(lying).dot(standing) > 0 ? 1.0 : -1.0;
    fem::BeamSection b;
    b.E = m.E;
    b.G = m.G;
    b.A = s.A;
    b.I_y = s.I_x;
    b.I_z = s.I_y;
    b.I_yz = side * s.I_xy;
    b.J = s.J;
    b.c_y = s.x_c - s.x_s;
    b.c_z = side * (s.y_c - s.y_s);
    return b;
}

} // namespace thinskin::idealise
