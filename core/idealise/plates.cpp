#include "idealise/response.h"

#include <algorithm>
#include <cmath>
#include <numbers>

/// ID-14: a backing plate is a loose plate with its own grid. Its bolts clamp the skin to it, elsewhere the two only push each other;
/// on the frame its fasteners hold it and it bears there. Shear acts at the skin's mid-plane, the plate's own offset is left out.
namespace thinskin::idealise {

namespace {

using fem::Law;

constexpr double pad = 5; ///< half side of what a contact point stands for on the skin, mm

int put(Structure& s, const std::string& name, fem::PortRef a, fem::PortRef b, Law law, double compliance, bool skin_normal)
{
    s.assembly.joints.push_back({name, std::move(a), std::move(b), law, compliance, 0, skin_normal});
    return static_cast<int>(s.assembly.joints.size()) - 1;
}

/// Eight elements along the shorter side, none longer than the panel's, and no more than sixty along the longer one.
fem::SkinModel plate_model(const Structure& s, const layout::Plate& p)
{
    fem::SkinModel m;
    m.name = p.name;
    m.width = p.high.x - p.low.x;
    m.height = p.high.y - p.low.y;
    m.mid_z = s.mid_z;
    m.sheet = {p.material.E, p.material.nu, p.thickness};
    m.spacing = std::max(std::min(s.options.grid_spacing, std::min(m.width, m.height) / 8), std::max(m.width, m.height) / 60);
    return m;
}

std::vector<double> lattice(double low, double high, double spacing)
{
    const int parts = std::clamp(static_cast<int>(std::ceil((high - low) / spacing - 1e-9)), 4, 16);
    std::vector<double> out;
    for (int k = 0; k <= parts; ++k) out.push_back(low + (high - low) * k / parts);
    return out;
}

double washer(const layout::Stack& f) { return std::max(outer_diameter(f, true), outer_diameter(f, false)); }

/// The side of the frame that a point of a tied plate lies on; empty: on none that its fasteners hold it to.
std::string tied_band(const layout::Layout& l, const layout::Plate& p, layout::Point at)
{
    static constexpr std::array<const char*, 4> sides{"left", "right", "bottom", "top"};
    const std::array<double, 4> off{at.x, l.width - at.x, at.y, l.height - at.y};
    for (std::size_t i = 0; i < 4; ++i)
        for (const layout::PlateFastener& f : p.fasteners)
            if (f.side == sides[i] && off[i] <= l.frames[i].width) return f.side;
    return "";
}

PlateJoints to_frame(Structure& s, int plate, const layout::Stack& f, const std::string& side)
{
    PlateJoints j;
    const double hole = half_side(f.hardware.hole), c = slip_compliance(f.hardware) + (f.plies.size() < 2 ? tie_compliance : bearing_compliance(f.plies[0], f.plies[1]));
    j.x = put(s, f.name + " frame x", plate_port(s, plate, f.at, hole, 0), frame_port(s, side, f.at, {1, 0, 0}), Law::tie, c, false);
    j.y = put(s, f.name + " frame y", plate_port(s, plate, f.at, hole, 1), frame_port(s, side, f.at, {0, 1, 0}), Law::tie, c, false);
    j.z = put(s, f.name + " frame z", plate_port(s, plate, f.at, half_side(outer_diameter(f, false)), 2), frame_port(s, side, f.at, {0, 0, 1}), Law::tie, tie_compliance, false);
    return j;
}

PlateJoints to_skin(Structure& s, int plate, const layout::Stack& f)
{
    PlateJoints j;
    const double hole = half_side(f.hardware.hole), c = slip_compliance(f.hardware) + bearing_compliance(f.plies[0], f.plies[1]);
    const double bears = half_side(std::min(outer_diameter(f, true), outer_diameter(f, false)));
    j.x = put(s, f.name + " plate x", skin_port(s, f.at, hole, 0), plate_port(s, plate, f.at, hole, 0), Law::tie, c, false);
    j.y = put(s, f.name + " plate y", skin_port(s, f.at, hole, 1), plate_port(s, plate, f.at, hole, 1), Law::tie, c, false);
    j.z = put(s, f.name + " plate z", skin_port(s, f.at, bears, 2), plate_port(s, plate, f.at, bears, 2), Law::tie, tie_compliance, true);
    return j;
}

/// A plate on one fastener could spin about it: friction, not counted elsewhere, holds it. Nothing but its own weight comes here.
void stop_spin(Structure& s, int plate, const layout::Plate& p)
{
    const auto through = s.layout->stacks_of(p);
    if (through.size() != 1) return;
    const layout::Point at = through.front()->at;
    const layout::Point far{at.x - p.low.x > p.high.x - at.x ? p.low.x : p.high.x, at.y};
    put(s, p.name + " does not spin", skin_port(s, far, 0, 1), plate_port(s, plate, far, 0, 1), Law::tie, 1e-3, false);
}

void contact_points(Structure& s, int index, const layout::Plate& p)
{
    for (const layout::Point at : plate_contacts(*s.layout, p, s.options.plate_contact_spacing)) {
        const std::string side = tied_band(*s.layout, p, at);
        const fem::PortRef plate = plate_port(s, index, at, 0, 2);
        const int joint = side.empty() ? put(s, p.name + " contact", skin_port(s, at, pad, 2), plate, Law::contact, s.options.contact_compliance, true)
                                       : put(s, p.name + " on frame", plate, frame_port(s, side, at, {0, 0, 1}), Law::contact, s.options.contact_compliance, false);
        s.contacts.push_back({side.empty() ? ContactJoint::Kind::plate_skin : ContactJoint::Kind::plate_frame, -1, -1, joint, at, -1, index, side});
    }
}

/// Where a plate's stress is read: grid nodes outside the washers, and a ring round each.
std::vector<layout::Point> sample_points(const Structure& s, std::size_t plate)
{
    const layout::Plate& p = s.layout->plates[plate];
    const fem::Plate& body = s.plates[plate].plate;
    const auto through = s.layout->stacks_of(p);
    const auto free = [&](layout::Point q) {
        return std::none_of(through.begin(), through.end(), [&](const layout::Stack* f) { return std::hypot(f->at.x - q.x, f->at.y - q.y) < washer(*f) / 2; });
    };
    std::vector<layout::Point> out;
    for (double x : body.sheet.grid.x)
        for (double y : body.sheet.grid.y)
            if (const layout::Point q{body.x0 + x, body.y0 + y}; free(q)) out.push_back(q);
    for (const layout::Stack* f : through)
        for (int k = 0; k < 12; ++k) {
            const double angle = std::numbers::pi * k / 6, r = 0.51 * washer(*f);
            if (const layout::Point q{f->at.x + r * std::cos(angle), f->at.y + r * std::sin(angle)}; p.holds(q) && free(q)) out.push_back(q);
        }
    return out;
}

} // namespace

std::vector<layout::Point> plate_contacts(const layout::Layout& l, const layout::Plate& p, double spacing)
{
    std::vector<layout::Point> out;
    const auto through = l.stacks_of(p);
    for (double x : lattice(p.low.x, p.high.x, spacing))
        for (double y : lattice(p.low.y, p.high.y, spacing)) {
            const bool clamped = std::any_of(through.begin(), through.end(), [&](const layout::Stack* f) { return std::hypot(f->at.x - x, f->at.y - y) < washer(*f) / 2; });
            const bool on_skin = x >= pad && y >= pad && x <= l.width - pad && y <= l.height - pad;
            if (!clamped && on_skin) out.push_back({x, y});
        }
    return out;
}

void build_plates(Structure& s)
{
    for (const layout::Plate& p : s.layout->plates) s.plates.push_back({-1, fem::make_plate(plate_model(s, p), p.low.x, p.low.y)});
}

void build_plate_joints(Structure& s)
{
    for (std::size_t i = 0; i < s.plates.size(); ++i) {
        const layout::Plate& p = s.layout->plates[i];
        const int index = static_cast<int>(i);
        for (std::size_t k = 0; k < p.fasteners.size(); ++k) {
            const layout::PlateFastener& f = p.fasteners[k];
            PlateJoints j = f.side.empty() ? to_skin(s, index, f.stack) : to_frame(s, index, f.stack, f.side);
            j.plate = index;
            j.fastener = static_cast<int>(k);
            s.plate_fasteners.push_back(j);
        }
        stop_spin(s, index, p);
        contact_points(s, index, p);
    }
}

Picture::Member plate_member(const Structure& s, std::size_t plate, const fem::Vector& u)
{
    const fem::Plate& body = s.plates[plate].plate;
    Picture::Member worst{s.layout->plates[plate].name, 0, 0, 0, 0, 0, 0, 0};
    const std::vector<layout::Point> at_all = sample_points(s, plate);
    std::vector<Eigen::Vector2d> slopes;
    Eigen::Vector2d mean = Eigen::Vector2d::Zero();
    for (const layout::Point at : at_all) {
        const fem::SkinPoint q = fem::skin_point(body.sheet, u, at.x - body.x0, at.y - body.y0);
        const double sigma = fem::von_mises(body.sheet.model.sheet, q);
        if (takes_over(sigma, worst.stress)) worst.stress = sigma, worst.at = at.x - body.x0;
        slopes.push_back({q.w_x, q.w_y});
        mean += slopes.back() / static_cast<double>(at_all.size());
    }
    double steepest = 0; // beside the tilt of the whole, which stretches nothing
    for (const Eigen::Vector2d& slope : slopes) base::keep_largest(steepest, (slope - mean).norm());
    worst.stretch = 0.5 * body.sheet.model.sheet.E * steepest * steepest;
    worst.stretch_allowed = slope_share_allowed * s.layout->plates[plate].material.strength(s.layout->plates[plate].thickness).fy / 1.67;
    return worst;
}

/// What the plate presses on the frame nearest to one of its fasteners there.
double plate_frame_push(const Structure& s, const fem::JointState& state, std::size_t fastener)
{
    const auto own = [&s](std::size_t i) -> const layout::PlateFastener& { return s.layout->plates[static_cast<std::size_t>(s.plate_fasteners[i].plate)].fasteners[static_cast<std::size_t>(s.plate_fasteners[i].fastener)]; };
    double push = 0;
    for (const ContactJoint& c : s.contacts) {
        if (c.kind != ContactJoint::Kind::plate_frame || c.plate != s.plate_fasteners[fastener].plate) continue;
        std::size_t nearest = s.plate_fasteners.size();
        double distance = INFINITY;
        for (std::size_t i = 0; i < s.plate_fasteners.size(); ++i)
            if (const layout::PlateFastener& f = own(i); s.plate_fasteners[i].plate == c.plate && f.side == c.side && std::hypot(f.stack.at.x - c.at.x, f.stack.at.y - c.at.y) < distance)
                distance = std::hypot(f.stack.at.x - c.at.x, f.stack.at.y - c.at.y), nearest = i;
        if (nearest == fastener) push -= state.lambda(c.joint);
    }
    return push;
}

} // namespace thinskin::idealise
