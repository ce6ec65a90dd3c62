#pragma once
#include "fem/frame.h"
#include "fem/joints.h"
#include "fem/skin.h"

/// Small bodies shared by the consistency tests of core/fem.
namespace thinskin::tests {

inline fem::RibModel rib(double x0, double y0, double x1, double y1, double scale = 1)
{
    fem::RibModel r;
    r.name = "rib";
    r.from = {x0, y0}, r.to = {x1, y1};
    r.E = 210000, r.G = 80769, r.A = 96 * scale, r.I_normal = 5788 * scale, r.J = 128 * scale, r.offset_z = -7.4;
    return r;
}

/// 700 x 900 sheet, 0.8 thick, all edges alike.
inline fem::SkinModel panel(fem::Hold hold, double spacing = 60)
{
    fem::SkinModel m;
    m.width = 700, m.height = 900, m.spacing = spacing;
    m.sheet = {210000, 0.3, 0.8};
    for (fem::EdgeHold& e : m.edges) e.kind = hold;
    return m;
}

inline fem::FrameMember member(int a, int b, double stiffness = 1)
{
    fem::FrameMember m;
    m.a = a, m.b = b;
    m.section = {210000 * stiffness, 80769 * stiffness, 144, 7800, 9100, 0, 12000, 0, 0};
    m.local_y = {1, 0.1, 0.2};
    return m;
}

/// An upright along y with an arm along z from its middle: free unless supports are added.
inline fem::FrameModel bracket(const std::string& name, double x, double y)
{
    fem::FrameModel f;
    f.name = name;
    f.nodes = {{x, y, 10}, {x, y + 150, 10}, {x, y + 300, 10}, {x, y + 150, 150}};
    f.members = {member(0, 1), member(1, 2), member(1, 3)};
    return f;
}

inline fem::Joint joint(std::string name, fem::PortRef a, fem::PortRef b, fem::Law law = fem::Law::tie, double compliance = 1e-5)
{
    fem::Joint j;
    j.name = std::move(name), j.a = std::move(a), j.b = std::move(b), j.law = law, j.compliance = compliance;
    return j;
}

/// Two brackets screwed to the panel, contact round each screw, a stiff item tied to both arms.
struct Job {
    fem::Skin skin;
    fem::Frame left, right;
    fem::Body item = fem::make_rigid("item");
    fem::Assembly assembly;
    std::vector<fem::UnitLoad> loads;     ///< item pulled along x, y, z (100 N each); pressure on the skin

    explicit Job(const fem::SkinModel& m = with_ribs(), double contact_compliance = 1e-5)
        : skin(fem::make_skin(m)), left(fem::make_frame(bracket("bracket left", 200, 250))), right(fem::make_frame(bracket("bracket right", 480, 250)))
    {
        assembly.bodies = {&skin.body, &left.body, &right.body, &item};
        foot(1, left, 0, contact_compliance), foot(1, left, 2, contact_compliance);
        foot(2, right, 0, contact_compliance), foot(2, right, 2, contact_compliance);
        for (int b = 1; b < 3; ++b)
            for (int d = 0; d < 6; ++d) tie_item(b, b == 1 ? left : right, d);
        for (int d = 0; d < 3; ++d) loads.push_back(pull(fem::Vec3::Unit(d) * 100));
        fem::UnitLoad wind;
        wind.on_body = {fem::skin_pressure(skin, 1e-4), {}, {}, {}};
        loads.push_back(wind);
    }
    Job(const Job&) = delete;
    Job& operator=(const Job&) = delete;

    static fem::SkinModel with_ribs()
    {
        fem::SkinModel m = panel(fem::Hold::held);
        m.ribs = {rib(200, 0, 200, 900), rib(480, 100, 480, 800)};
        return m;
    }

private:
    void foot(int body, const fem::Frame& f, int node, double contact_compliance)
    {
        const fem::Vec3 at = f.model.nodes[static_cast<std::size_t>(node)];
        for (int d = 0; d < 3; ++d)
            for (const double dy : {-15.0, 15.0}) {
                const fem::Vec3 p{at.x(), at.y() + dy, 0};
                assembly.joints.push_back(joint("screw", {body, fem::frame_port(f, node, p, fem::Vec3::Unit(d))},
                                                {0, fem::skin_port(skin, {p.x(), p.y(), 6, 6}, static_cast<fem::SkinDirection>(d))}));
                assembly.joints.back().skin_normal = d == 2;
            }
        for (const double dx : {-20.0, 20.0})
            for (const double dy : {-40.0, -13.0, 13.0, 40.0}) {
                const fem::Vec3 p{at.x() + dx, at.y() + dy, 0};
                assembly.joints.push_back(joint("edge", {body, fem::frame_port(f, node, p, fem::Vec3::UnitZ())},
                                                {0, fem::skin_port(skin, {p.x(), p.y(), 5, 5}, fem::SkinDirection::z)}, fem::Law::contact, contact_compliance));
                assembly.joints.back().skin_normal = true;
            }
    }
    void tie_item(int body, const fem::Frame& f, int d)
    {
        const fem::Vec3 p = f.model.nodes[3] + (d < 3 ? fem::Vec3{0, 0, 0} : fem::Vec3{0, 40, 10});
        assembly.joints.push_back(joint("item", {3, fem::rigid_port(p, fem::Vec3::Unit(d % 3))}, {body, fem::frame_port(f, 3, p, fem::Vec3::Unit(d % 3))},
                                        fem::Law::tie, 1e-4));
    }
    [[nodiscard]] fem::UnitLoad pull(const fem::Vec3& force) const
    {
        fem::UnitLoad l;
        fem::Vector on_item = fem::Vector::Zero(6);
        for (int d = 0; d < 3; ++d) fem::add(on_item, fem::rigid_port({340, 420, 220}, fem::Vec3::Unit(d)), force(d));
        l.on_body = {{}, {}, {}, on_item};
        return l;
    }
};

inline fem::Vector factors(double x, double y, double z, double wind)
{
    fem::Vector f(4);
    f << x, y, z, wind;
    return f;
}

struct JobSolution { fem::Condensed condensed; fem::Free free; fem::JointState state; };
inline JobSolution solve(const Job& job, const fem::Vector& load, const std::vector<char>& start = {}, double skin_bending = 1)
{
    fem::ColumnCache cache;
    JobSolution s{fem::condense(job.assembly, 0, cache), {}, {}};
    s.free = fem::free_motion(job.assembly, s.condensed, job.loads);
    s.state = fem::solve_joints(job.assembly, s.condensed, s.free, load, start, skin_bending);
    return s;
}

} // namespace thinskin::tests
