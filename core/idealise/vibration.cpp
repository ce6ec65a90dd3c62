// Natural frequencies of the whole about the state in which it hangs parked (ID-13).
#include "idealise/vibration.h"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>
#include <numbers>
#include <stdexcept>

namespace thinskin::idealise {

namespace {

constexpr double tonnes = 1e-3;              // kg -> t
constexpr double tonnes_mm3 = 1e-12;         // kg/m3 -> t/mm3
constexpr double least_side = 20;            // mm: an item without a box is a cube of this size, which turns too easily to matter

/// Density that gives the frame its own mass; its members differ little in theirs.
double density(const fem::Frame& f, double mass_kg)
{
    double volume = 0;
    for (const fem::FrameMember& m : f.model.members)
        volume += m.section.A * (f.model.nodes[static_cast<std::size_t>(m.b)] - f.model.nodes[static_cast<std::size_t>(m.a)]).norm();
    return mass_kg * tonnes / volume;
}

/// A uniform cuboid of the item's box about the given centre of mass.
fem::MassMatrix item_mass(const layout::Item& i)
{
    const double m = i.design_mass() * tonnes;
    std::array<double, 3> side{least_side, least_side, least_side};
    if (i.has_box) side = i.box_size;
    Eigen::Matrix3d inertia = Eigen::Matrix3d::Zero();
    for (int k = 0; k < 3; ++k) {
        const double a = side[static_cast<std::size_t>((k + 1) % 3)], b = side[static_cast<std::size_t>((k + 2) % 3)];
        inertia(k, k) = m * (a * a + b * b) / 12;
    }
    return fem::rigid_mass(m, {i.centre[0], i.centre[1], i.centre[2]}, inertia);
}

void add_points(const Structure& s, fem::MassMatrix& skin)
{
    std::vector<Eigen::Triplet<double>> entries;
    for (const model::PanelMass& m : s.layout->source->masses)
        for (const auto d : {fem::SkinDirection::x, fem::SkinDirection::y, fem::SkinDirection::z}) {
            const fem::Row row = fem::skin_port(*s.skin, {m.at.x.value, m.at.y.value, 5, 5}, d);
            for (const auto& [a, x] : row)
                for (const auto& [b, y] : row) entries.emplace_back(a, b, m.mass.value * tonnes * x * y);
        }
    fem::Sparse added(skin.M.rows(), skin.M.cols());
    added.setFromTriplets(entries.begin(), entries.end());
    skin.M = fem::Sparse(skin.M + added);
}

fem::MassMatrix skin_mass(const Structure& s)
{
    std::vector<double> ribs;
    for (const layout::Rib& r : s.layout->ribs) ribs.push_back(r.section.A * r.material.density * tonnes_mm3);
    if (s.options.door_frame)
        for (const double m : door_frame_masses(*s.layout)) ribs.push_back(m);
    fem::MassMatrix m = fem::skin_mass(*s.skin, s.layout->skin.material.density * tonnes_mm3, ribs);
    if (!s.layout->source->masses.empty()) add_points(s, m);
    return m;
}

} // namespace

std::vector<fem::MassMatrix> body_masses(const Structure& s)
{
    std::vector<fem::MassMatrix> out(s.assembly.bodies.size());
    const auto of = [&out](int body) -> fem::MassMatrix& { return out[static_cast<std::size_t>(body)]; };
    of(s.skin_body) = skin_mass(s);
    for (std::size_t k = 0; k < s.brackets.size(); ++k) of(s.brackets[k].body) = fem::frame_mass(s.brackets[k].frame, density(s.brackets[k].frame, s.layout->brackets[k].mass()));
    for (std::size_t k = 0; k < s.angles.size(); ++k) of(s.angles[k].body) = fem::frame_mass(s.angles[k].frame, density(s.angles[k].frame, s.layout->angles[k].bar.mass()));
    for (std::size_t k = 0; k < s.plates.size(); ++k) of(s.plates[k].body) = fem::skin_mass(s.plates[k].plate.sheet, s.layout->plates[k].material.density * tonnes_mm3);
    if (s.item) of(s.item_body) = item_mass(*s.layout->item);
    return out;
}

namespace {

/// What the body with most of the moving energy does, in words of the trade.
std::string what_moves(const Structure& s, const fem::Mode& m)
{
    const auto most = std::max_element(m.shares.begin(), m.shares.end(), [](const fem::BodyShare& a, const fem::BodyShare& b) { return a.share < b.share; });
    const int body = static_cast<int>(most - m.shares.begin());
    if (body == s.skin_body) return s.options.door_frame ? "door leaf bends and twists" : "skin panel drums";
    if (body != s.item_body) return most->body + (most->bending > 0.5 ? " bends" : " sways");
    static const char* const along[] = {"sways along the panel", "bounces up and down", "swings in and out"};
    static const char* const about[] = {"nods", "turns about its upright axis", "rocks from side to side"};
    std::string does;
    double largest = 0;
    for (std::size_t k = 0; k < 3; ++k) {
        if (most->along[k] > largest) largest = most->along[k], does = along[k];
        if (most->about[k] > largest) largest = most->about[k], does = about[k];
    }
    return most->body + " " + does;
}

/// Where the strain energy is: the bodies with at least a seventh of it, largest first; the rest is in joints and mounts.
std::string what_flexes(const Structure& s, const fem::Mode& m)
{
    struct Part { std::string name; double share; };
    std::vector<Part> parts;
    const auto name = [&s](std::size_t b) { return s.options.door_frame && static_cast<int>(b) == s.skin_body ? std::string("door leaf") : s.assembly.bodies[b]->name; };
    const double total = std::pow(2 * std::numbers::pi * m.frequency_Hz, 2); // one unit of modal mass
    double rest = total;
    for (std::size_t b = 0; b < m.shape.size(); ++b) {
        if (s.assembly.bodies[b]->rigid) continue;
        const double energy = m.shape[b].dot(s.assembly.bodies[b]->K * m.shape[b]);
        rest -= energy;
        parts.push_back({name(b), energy / total});
    }
    parts.push_back({"holes, lying legs and mounts", rest / total});
    std::stable_sort(parts.begin(), parts.end(), [](const Part& a, const Part& b) { return a.share > b.share; });
    std::string out;
    for (const Part& p : parts)
        if (p.share >= 0.15) out += fmt::format("{}{} {:.0f} %", out.empty() ? "" : ", ", p.name, 100 * p.share);
    return out;
}

double hung_share(const Structure& s, const fem::Mode& m)
{
    double share = 0;
    for (std::size_t b = 0; b < m.shares.size(); ++b) {
        const int body = static_cast<int>(b);
        const bool bracket = std::any_of(s.brackets.begin(), s.brackets.end(), [body](const BracketBody& k) { return k.body == body; });
        if (bracket || body == s.item_body) share += m.shares[b].share;
    }
    return share;
}

/// Frequencies of a thin sheet lie evenly, A/2 sqrt(rho t / D) of them in each Hz; held edges leave fewer at the low end.
int count_of_modes(const layout::Layout& l, double up_to_Hz)
{
    const catalogue::Material& m = l.skin.material;
    const double D = m.E * std::pow(l.skin.core, 3) / (12 * (1 - m.nu * m.nu));
    const double per_Hz = l.width * l.height / 2 * std::sqrt(m.density * tonnes_mm3 * l.skin.core / D);
    return static_cast<int>(std::clamp(0.62 * per_Hz * up_to_Hz + 6, 8.0, 30.0));
}

results::Vibration modes(const Structure& s, const fem::JointState& about, int count, Modes which, fem::ModesCache* cache)
{
    results::Vibration out;
    const auto hung = [&s](const fem::Mode& k) { return hung_share(s, k) >= results::least_hung_share; };
    const fem::Modes m = which == Modes::all ? fem::modes(s.assembly, about.active, body_masses(s), count, cache) : fem::modes_until(s.assembly, about.active, body_masses(s), count, hung, cache);
    if (m.status != fem::ModesStatus::solved) {
        out.why_not = m.where;
        return out;
    }
    out.run = true;
    for (const fem::Mode& k : m.modes) out.modes.push_back({k.frequency_Hz, what_moves(s, k), what_flexes(s, k), hung_share(s, k)});
    return out;
}

} // namespace

double highest_asked_Hz(const layout::Layout& l)
{
    double highest = 20;
    if (l.source->item)
        for (const model::Quantity& f : l.source->item->running_frequency) highest = std::max(highest, 1.25 * f.value);
    return highest;
}

results::Vibration vibration(const Structure& s, const fem::JointState& about, double up_to_Hz, Modes which, SkinCache& cache)
{
    results::Vibration out = modes(s, about, count_of_modes(*s.layout, up_to_Hz), which, &cache.modes);
    out.frame_missing = missing_frame(*s.layout);
    return out;
}

std::optional<double> lowest_hung_Hz(const results::Vibration& v)
{
    const auto lowest = [](const std::vector<results::NaturalMode>& modes) {
        const auto hung = std::find_if(modes.begin(), modes.end(), results::is_hung);
        return hung == modes.end() ? 0.0 : hung->frequency_Hz;
    };
    const double rigid = lowest(v.modes), own = lowest(v.with_frame); // 0: none hung; one that does not swing was refused
    if (!v.run || !(rigid > 0)) return std::nullopt;
    return own > 0 ? std::min(rigid, 2 * own) : rigid;
}

void add_contact_bounds(const Structure& s, double up_to_Hz, results::Vibration& out)
{
    const auto lowest = [&](const std::vector<char>& active) -> std::optional<double> {
        fem::JointState about;
        about.active = active;
        const results::Vibration v = modes(s, about, count_of_modes(*s.layout, up_to_Hz), Modes::lowest_hung, nullptr);
        const auto hung = std::find_if(v.modes.begin(), v.modes.end(), results::is_hung);
        return hung == v.modes.end() ? std::nullopt : std::optional(hung->frequency_Hz);
    };
    std::vector<char> active(s.assembly.joints.size(), 1);
    out.all_closed_Hz = lowest(active);
    for (std::size_t j = 0; j < active.size(); ++j)
        if (s.assembly.joints[j].law == fem::Law::contact) active[j] = 0;
    for (const StrapJoint& strap : s.straps) active[static_cast<std::size_t>(strap.joint)] = 0; // bolts pull, too, and stay: they are tight
    out.all_open_Hz = lowest(active);
}

std::string bound_words(const layout::Layout& l, const results::Vibration& v)
{
    if (!v.run) return "not run: " + v.why_not;
    std::string out = on_a_door(l) ? "upper bound: the door's edge counts as rigid" : "upper bound: the edges count as rigid";
    if (!v.with_frame.empty()) out += fmt::format("; on its own frame, hung on hinges and latch alone, without inner panel and seal, the lowest is {:.1f} Hz, a low estimate", v.with_frame.front().frequency_Hz);
    else if (!v.frame_missing.empty()) out += "; " + v.frame_missing + " would put the frame into the model";
    if (v.large_deflection) out += "; small vibrations of the flat, unloaded skin by linear theory: under its own load the skin needs large deflection and is stiffer, so no bound holds";
    else if (v.large_in_others) out += "; small vibrations of the flat, unloaded skin by linear theory, also where load cases need large deflection";
    return out;
}

std::vector<results::NaturalMode> door_frame_modes(const layout::Layout& l, const Options& options, const fem::JointState& about, Modes which, SkinCache& cache)
{
    if (!on_a_door(l) || !missing_frame(l).empty()) return {};
    Options with = options;
    with.door_frame = true;
    const auto s = build(l, with, cache);
    results::Vibration v = modes(*s, about, 8, which, &cache.modes);
    if (!v.modes.empty() && !(v.modes.front().frequency_Hz > 0)) throw std::runtime_error("the door's leaf: hinges and latches leave a mechanism, it can move freely");
    return std::move(v.modes);
}

} // namespace thinskin::idealise
