#include "report/json.h"

#include "base/status.h"
#include "report/standing.h"
#include "report/version.h"

#include <cmath>
#include <cstdlib>
#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace thinskin::report {
namespace {

using results::Check;
using results::Outcome;
using Json = nlohmann::ordered_json; // keys in the order in which they are written here

/// Nine significant digits, so that the last bits of a sum do not show; no negative zero.
double rounded(double v)
{
    const double r = std::strtod(fmt::format("{:.9g}", v).c_str(), nullptr);
    return r == 0 ? 0.0 : r;
}

/// Rounds every figure and turns what JSON cannot say into null and a note with its place.
void finish(Json& j, const std::string& path, std::vector<std::string>& notes)
{
    if (j.is_number_float()) {
        const double v = j.get<double>();
        if (std::isfinite(v)) { j = rounded(v); return; }
        notes.push_back(path + (std::isnan(v) ? ": no figure" : v > 0 ? ": infinite" : ": minus infinite"));
        j = nullptr;
    } else if (j.is_array()) {
        for (std::size_t i = 0; i < j.size(); ++i) finish(j[i], fmt::format("{}[{}]", path, i), notes);
    } else if (j.is_object()) {
        for (auto it = j.begin(); it != j.end(); ++it) finish(it.value(), path.empty() ? it.key() : path + "." + it.key(), notes);
    }
}

std::string written(const Json& j) { return j.dump(2, ' ', false, nlohmann::detail::error_handler_t::replace) + "\n"; }

std::string written_finished(Json j)
{
    std::vector<std::string> notes;
    finish(j, "", notes);
    j["notes"] = notes;
    return written(j);
}

template <class Rows, class Write> Json list(const Rows& rows, Write write)
{
    Json out = Json::array();
    for (const auto& r : rows) out.push_back(write(r));
    return out;
}

bool figures_stand(const Outcome& o, const Check& c) { return c.has_numbers() && o.verdict != base::Verdict::not_solved; }

Json margin_of(const Outcome& o, const Check& c)
{
    return figures_stand(o, c) && c.demand != 0 ? Json(c.margin()) : Json(nullptr);
}

Json figure_or_null(double v, bool always) { return always || v != 0 ? Json(v) : Json(nullptr); }

Json check(const Outcome& o, const Check& c)
{
    const bool all = figures_stand(o, c);
    return {{"id", c.id}, {"formula", c.formula}, {"title", c.title}, {"group", c.group}, {"part", c.part}, {"load_case", c.load_case},
            {"demand", figure_or_null(c.demand, all)}, {"capacity", figure_or_null(c.capacity, all)}, {"unit", c.unit},
            {"utilisation", all ? Json(c.utilisation()) : Json(nullptr)}, {"margin", margin_of(o, c)}, {"status", base::name(c.status)},
            {"required", c.required}, {"rule", c.rule}, {"source", c.source}, {"edition", c.edition}, {"label", c.label}, {"range", c.range},
            {"inputs", c.inputs.empty() ? Json::object() : Json(c.inputs)}, {"note", c.note}, {"lift_with", c.lift_with}};
}

Json governing(const Outcome& o)
{
    if (!o.governing) return nullptr;
    const Check& g = *o.governing;
    return {{"check", g.id}, {"title", g.title}, {"part", g.part}, {"load_case", g.load_case}, {"margin", margin_of(o, g)}};
}

Json group(const Outcome& o, const results::Group& g)
{
    const bool solved = o.verdict != base::Verdict::not_solved;
    return {{"name", g.name}, {"required", g.required}, {"status", base::name(g.status)},
            {"least_margin", g.least_margin && solved && std::isfinite(*g.least_margin) ? Json(*g.least_margin) : Json(nullptr)}, {"part", g.part},
            {"check", g.check}, {"lift_with", g.lift_with}, {"passed", g.passed}, {"judgements", g.judgements}, {"not_covered", g.not_covered}, {"failed", g.failed}};
}

Json load_case(const results::LoadCase& c)
{
    Json j = {{"name", c.name}, {"acceleration_g", c.acceleration_g}, {"source", c.source}, {"derivation", c.derivation}, {"theory", c.theory},
              {"applied_only", c.applied_only}, {"door_closed", c.door_closed}};
    if (c.on_item) j["force_on_item"] = {{"force_N", c.on_item->force_N}, {"at_mm", c.on_item->at_mm}};
    return j;
}

Json ply(const results::PlyForce& p) { return {{"part", p.part}, {"x_N", p.x_N}, {"y_N", p.y_N}, {"bearing_N", p.bearing_N}}; }

Json fastener(const results::FastenerForce& f)
{
    return {{"name", f.name}, {"part", f.part}, {"load_case", f.load_case}, {"tension_N", f.tension_N}, {"shear_x_N", f.shear_x_N}, {"shear_y_N", f.shear_y_N},
            {"prying_N", f.prying_N}, {"row_shear_N", f.row_shear_N}, {"hand_tension_N", f.hand_tension_N}, {"hand_shear_N", f.hand_shear_N},
            {"shear_rule", f.shear_rule}, {"difference", f.difference}, {"skin_share_N", f.skin_share_N}, {"spread_tension_N", f.spread_tension_N},
            {"own_pull_N", f.own_pull_N}, {"stands", f.stands}, {"why_not", f.why_not}, {"plies", list(f.plies, ply)}};
}

Json member(const results::MemberForce& m)
{
    return {{"name", m.name}, {"load_case", m.load_case}, {"at_mm", m.at_mm}, {"axial_N", m.axial_N}, {"shear_N", m.shear_N}, {"moment_y_Nm", m.moment_y_Nm},
            {"moment_z_Nm", m.moment_z_Nm}, {"torsion_Nm", m.torsion_Nm}, {"stress_MPa", m.stress_MPa}, {"spread_moment_Nm", m.spread_moment_Nm},
            {"stands", m.stands}, {"why_not", m.why_not}};
}

Json member_end(const results::EndForce& e)
{
    return {{"name", e.name}, {"end", e.end}, {"load_case", e.load_case}, {"force_N", e.force_N}, {"moment_Nm", e.moment_Nm}, {"hand_N", e.hand_N},
            {"difference", e.difference}, {"spread_N", e.spread_N}, {"stands", e.stands}, {"why_not", e.why_not}, {"fastener_forces", list(e.fasteners, fastener)}};
}

Json mount(const results::MountForce& r)
{
    return {{"name", r.name}, {"load_case", r.load_case}, {"force_N", r.force_N}, {"moment_Nm", r.moment_Nm}};
}

Json joint(const results::JointForce& r)
{
    return {{"name", r.name}, {"part", r.part}, {"load_case", r.load_case}, {"force_N", r.force_N}, {"moment_Nm", r.moment_Nm}};
}

/// Hinges, latches, stops.
template <class Row> Json door_force(const Row& r)
{
    return {{"name", r.name}, {"state", r.state}, {"load_case", r.load_case}, {"force_N", r.force_N}, {"open_deg", r.open_deg}, {"on_body_N", r.on_body_N}, {"words", r.words}};
}

Json plate_rim(const results::RimStress& r)
{
    return {{"plate", r.plate}, {"load_case", r.load_case}, {"stress_MPa", r.stress_MPa}, {"swing_MPa", r.swing_MPa}, {"at_mm", r.at_mm}};
}

Json corner(const results::CornerStress& c)
{
    return {{"opening", c.opening}, {"load_case", c.load_case}, {"stress_MPa", c.stress_MPa}, {"at_mm", c.at_mm}};
}

Json contact(const results::Contact& c)
{
    return {{"part", c.part}, {"load_case", c.load_case}, {"resultant_N", c.resultant_N}, {"at_mm", c.at_mm}};
}

Json gauge(const results::GaugeMove& g)
{
    return {{"name", g.name}, {"load_case", g.load_case}, {"displacement_mm", g.displacement_mm}, {"relative_to", g.relative_to}};
}

Json skin_state(const results::SkinState& k)
{
    return {{"load_case", k.load_case}, {"max_deflection_mm", k.max_deflection_mm}, {"max_von_mises_MPa", k.max_von_mises_MPa}, {"stress_at_mm", k.stress_at_mm}, {"stress_at_most_MPa", k.stress_at_most_MPa}, {"stress_settled", k.stress_settled},
            {"max_slope_stress_MPa", k.max_slope_stress_MPa}, {"buckling_factor", figure_or_null(k.buckling_factor, false)},
            {"hem_shear_flow_N_mm", k.hem_shear_flow_N_mm}, {"hem_where", k.hem_where}, {"stands", k.stands}, {"why_not", k.why_not}, {"theory", k.theory}, {"linear_deflection_mm", k.linear_deflection_mm}, {"newton_steps", k.newton_steps}};
}

Json skin(const Outcome& o)
{
    Json deflection = nullptr, stress = nullptr; // largest over all load cases; null = no skin was solved
    for (const results::SkinState& k : o.skin) {
        if (std::isnan(k.max_deflection_mm) || std::isnan(k.max_von_mises_MPa)) { // one load case without a figure: no largest one
            deflection = stress = nullptr;
            break;
        }
        if (deflection.is_null() || !(k.max_deflection_mm <= deflection.get<double>())) deflection = k.max_deflection_mm;
        if (stress.is_null() || !(k.max_von_mises_MPa <= stress.get<double>())) stress = k.max_von_mises_MPa;
    }
    return {{"max_deflection_mm", deflection}, {"max_von_mises_MPa", stress}, {"theory", o.skin_theory}, {"states", list(o.skin, skin_state)}};
}

Json door_state(const results::DoorState& s)
{
    return {{"name", s.name}, {"source", s.source}, {"derivation", s.derivation}, {"sense", s.sense}, {"slope_rad", s.slope_rad}, {"air_N", s.air_N}, {"air_at_mm", s.air_at_mm}};
}

Json door_ratios(const results::DoorRatios& r)
{
    if (!r.known) return Json::object();
    return {{"moment", r.moment}, {"hinge_couple", r.hinge_couple}, {"inertia", r.inertia}, {"slam_force", r.slam_force}};
}

Json weight(const results::Weight& w)
{
    return {{"item_kg", w.item_kg}, {"brackets_kg", w.brackets_kg}, {"reinforcement_kg", w.reinforcement_kg}, {"door_kg", w.door_kg}, {"total_kg", w.total_kg}};
}

Json balance(const results::Balance& b)
{
    const auto body = [](const results::BodyBalance& e) {
        return Json{{"body", e.body}, {"load_case", e.load_case}, {"force_error", e.force_error}, {"moment_error", e.moment_error}};
    };
    return {{"worst_relative_error", b.worst_relative_error}, {"bodies", list(b.bodies, body)}};
}

Json assumption(const results::Assumption& a)
{
    return {{"what", a.what}, {"value", a.value}, {"from", a.from}, {"effect_on_governing_margin", a.effect_on_governing_margin}};
}

void add_head(Json& j, const Outcome& o)
{
    j["format"] = result_format;
    j["tool"] = {{"name", tool_name}, {"version", tool_version}};
    j["caution"] = base::caution_text;
    j["case"] = {{"file", o.case_file}, {"sha256", o.sha256}, {"title", o.title}};
    j["rules"] = o.rules;
    j["verdict"] = base::name(o.verdict);
    j["headline"] = o.headline;
    j["advice"] = o.advice;
    j["rests_on"] = list(o.rests_on, [](const results::RestsOn& r) { return Json{{"what", r.what}, {"key", r.key}, {"least", r.least}, {"margin", r.margin && std::isfinite(*r.margin) ? Json(*r.margin) : Json(nullptr)}, {"verdict", base::name(r.verdict)}}; });
    j["governing"] = governing(o);
    j["groups"] = list(o.groups, [&](const results::Group& g) { return group(o, g); });
    j["load_cases"] = list(o.load_cases, load_case);
    j["dynamic_factor"] = {{"value", figure_or_null(o.dynamic_factor, false)}, {"basis", o.dynamic_basis}, {"derivation", o.dynamic_derivation}};
    j["checks"] = list(o.checks, [&](const Check& c) { return check(o, c); });
}

void add_forces(Json& j, const Outcome& o)
{
    j["fasteners"] = list(o.fasteners, fastener);
    j["stacks"] = list(o.stacks, [](const results::StackLine& s) { return Json{{"fastener", s.fastener}, {"line", s.line}}; });
    j["members"] = list(o.members, member);
    j["member_ends"] = list(o.member_ends, member_end);
    j["mounts"] = list(o.mounts, mount);
    j["joints"] = list(o.joints, joint);
    j["contacts"] = list(o.contacts, contact);
    j["plate_rims"] = list(o.plate_rims, plate_rim);
    j["opening_corners"] = list(o.opening_corners, corner);
    j["load_path"] = list(o.load_path, [](const results::PathStep& p) { return Json{{"from", p.from}, {"to", p.to}, {"force_N", p.force_N}}; });
    j["load_path_case"] = o.load_path_case;
    j["gauges"] = list(o.gauges, gauge);
    j["hinges"] = list(o.hinges, door_force<results::HingeForce>);
    j["latches"] = list(o.latches, door_force<results::SupportForce>);
    j["stops"] = list(o.stops, door_force<results::SupportForce>);
    j["door_ratios"] = door_ratios(o.door_ratios);
    j["door_states"] = list(o.open_door.states, door_state);
    if (o.door_sag) j["door_sag"] = {{"give_mm_N", o.door_sag->give_mm_N}, {"edge_mm", o.door_sag->edge_mm}, {"bare_mm", o.door_sag->bare_mm}};
}

void add_vibration(Json& j, const results::Vibration& v)
{
    const auto hertz = [](const results::NaturalMode& m) { return Json(m.frequency_Hz); };
    const auto mode = [](const results::NaturalMode& m) { return Json{{"frequency_Hz", m.frequency_Hz}, {"what", m.what}, {"flexes", m.flexes}, {"hung_share", m.hung_share}}; };
    j["natural_frequencies_Hz"] = list(v.modes, hertz);
    j["frequency_bound"] = v.bound.empty() ? "not run" : v.bound;
    j["lowest_frequency_all_contacts_closed_Hz"] = v.all_closed_Hz ? Json(*v.all_closed_Hz) : Json(nullptr);
    j["lowest_frequency_all_contacts_open_Hz"] = v.all_open_Hz ? Json(*v.all_open_Hz) : Json(nullptr);
    j["natural_modes"] = list(v.modes, mode);
    j["natural_modes_on_door_frame"] = list(v.with_frame, mode);
}

Json single_loss(const results::SingleLoss& s)
{
    const auto hit = [](const results::Loss::Hit& h) {
        return Json{{"check", h.check}, {"part", h.part}, {"load_case", h.load_case}, {"margin_before", h.before ? Json(*h.before) : Json(nullptr)}, {"margin", h.after}};
    };
    const auto loss = [&hit](const results::Loss& l) {
        return Json{{"what", l.what}, {"kind", l.kind}, {"verdict", base::name(l.verdict)}, {"least_margin", l.least_margin ? Json(*l.least_margin) : Json(nullptr)},
                    {"check", l.check}, {"part", l.part}, {"load_case", l.load_case}, {"hit", l.hit ? hit(*l.hit) : Json(nullptr)}, {"note", l.note}};
    };
    return list(s.losses, loss);
}

Json life(const results::Life& l)
{
    const bool known = l.why_not.empty();
    const auto figure = [known](double x) { return known ? Json(x) : Json(nullptr); };
    const auto or_null = [known](const std::optional<double>& x) { return known && x ? Json(*x) : Json(nullptr); };
    return {{"kind", l.kind}, {"detail", l.detail}, {"part", l.part}, {"category", l.category}, {"category_label", l.category_label}, {"per_g_MPa", figure(l.per_g_MPa)}, {"sigma_MPa", figure(l.sigma_MPa)},
            {"at_Hz", figure(l.at_Hz)}, {"damage", figure(l.damage)}, {"damage_running", figure(l.damage_running)}, {"three_band", figure(l.three_band)}, {"km", or_null(l.km)}, {"years", or_null(l.years)}, {"why_not", l.why_not}};
}

Json wind_limit(const results::WindLimit& w)
{
    return {{"load_case", w.load_case}, {"given_m_s", w.given_mm_s / 1000}, {"limit_m_s", w.limit_mm_s ? Json(*w.limit_mm_s / 1000) : Json(nullptr)}, {"check", w.check}, {"part", w.part}, {"estimate", w.estimate}, {"why_not", w.why_not}};
}

/// Null when the road has no spectrum.
Json fatigue(const Outcome& o)
{
    if (!o.fatigue.run) return nullptr;
    return {{"limit", o.fatigue.limit}, {"gamma", o.fatigue.gamma}, {"scope", o.fatigue.scope}, {"wanted_km", o.shaking.wanted_mm / 1e6}, {"km_per_year", o.shaking.distance_per_year_mm / 1e6},
            {"lives", list(o.fatigue.lives, life)}};
}

Json tether(const results::Tether& t)
{
    if (!t.given || !t.why_not.empty()) return nullptr;
    return {{"mass_kg", t.mass_kg}, {"fall_mm", t.fall_mm}, {"soft_mm", t.soft_mm}, {"stiffness_N_mm", t.stiffness_N_mm}, {"down_g", t.down_g}, {"standing_N", t.standing_N}, {"shaken_N", t.shaken_N}, {"stretch_mm", t.stretch_mm}};
}

/// Null and an empty list when the study was not run.
void add_single_loss(Json& j, const Outcome& o)
{
    j["single_loss"] = o.single_loss ? single_loss(*o.single_loss) : Json::array();
    j["single_loss_verdict"] = o.single_loss ? Json{{"verdict", base::name(o.single_loss->verdict)}, {"headline", o.single_loss->headline}, {"rust_mm", o.single_loss->rust_mm}} : Json(nullptr);
}

void add_tail(Json& j, const Outcome& o)
{
    add_single_loss(j, o);
    j["skin"] = skin(o);
    j["weight"] = weight(o.weight);
    add_vibration(j, o.vibration);
    j["tether"] = tether(o.tether);
    j["fatigue"] = fatigue(o);
    j["wind_limits"] = list(o.wind_limits, wind_limit);
    const auto or_null = [](const std::optional<double>& x) { return x ? Json(*x) : Json(nullptr); };
    j["added"] = {{"kg", o.added.kg}, {"rear_axle_kg", or_null(o.added.rear_axle_kg)}, {"front_axle_kg", or_null(o.added.front_axle_kg)}};
    j["balance"] = balance(o.balance);
    j["grid"] = {{"nodes", o.grid.nodes}, {"unknowns", o.grid.unknowns}, {"joints", o.grid.joints}, {"spacing_mm", o.grid.spacing_mm},
                 {"error_estimate", o.grid.error_estimate}};
    const auto part = [](const std::optional<double>& x) { return x ? Json(*x) : Json(nullptr); };
    const results::GridError& e = o.grid.error;
    j["grid"]["errors"] = {{"deflection", part(e.deflection)}, {"peak_stress", part(e.peak_stress)}, {"governing_demand", part(e.governing_demand)}};
    j["assumptions"] = list(o.assumptions, assumption);
    j["cautions"] = o.cautions;
    j["see_to_on_the_vehicle"] = see_to_on_the_vehicle;
    j["not_covered"] = o.not_covered;
    j["exclusions"] = o.exclusions;
    j["not_solved"] = o.not_solved;
}

Json card_object(const base::Card& c)
{
    const auto symbol = [](const base::Symbol& s) { // an open bound is null: there is no limit on that side
        return Json{{"name", s.name}, {"unit", s.unit}, {"meaning", s.meaning}, {"lower", std::isfinite(s.lower) ? Json(s.lower) : Json(nullptr)},
                    {"lower_open", s.lower_open}, {"upper", std::isfinite(s.upper) ? Json(s.upper) : Json(nullptr)}, {"choices", s.choices}};
    };
    return {{"id", c.id}, {"title", c.title}, {"formula", c.formula}, {"unit", c.unit}, {"rule", c.rule}, {"source", c.source}, {"edition", c.edition},
            {"label", base::name(c.label)}, {"range", c.range}, {"not_for", c.not_for}, {"symbols", list(c.symbols, symbol)}};
}

} // namespace

std::string check_json(const Outcome& o)
{
    Json j;
    add_head(j, o);
    add_forces(j, o);
    add_tail(j, o);
    return written_finished(std::move(j));
}

std::string case_error_json(const std::string& file, const std::vector<std::string>& errors)
{
    return written_finished({{"format", 1}, {"tool", {{"name", tool_name}, {"version", tool_version}}}, {"case", {{"file", file}}}, {"verdict", nullptr}, {"errors", errors}, {"caution", base::caution_text}});
}

std::string json_array(const std::vector<std::string>& objects)
{
    Json all = Json::array();
    for (const std::string& text : objects) all.push_back(Json::parse(text));
    return written(all);
}

std::string cards_json(const std::vector<const base::Card*>& cards)
{
    Json j{{"tool", {{"name", tool_name}, {"version", tool_version}}}, {"caution", base::caution_text}, {"formulas", list(cards, [](const base::Card* c) { return card_object(*c); })}};
    return written_finished(std::move(j));
}

std::string evaluation_json(const base::Card& card, const std::vector<double>& inputs, const base::Resistance& r)
{
    Json in = Json::object();
    for (std::size_t i = 0; i < card.symbols.size() && i < inputs.size(); ++i) in[card.symbols[i].name] = inputs[i];
    Json j{{"caution", base::caution_text}, {"formula", card_object(card)}, {"inputs", in}, {"covered", r.covered},
           {"nominal", r.covered ? Json(r.nominal) : Json(nullptr)}, {"factor", r.covered ? Json(r.factor) : Json(nullptr)},
           {"capacity", r.covered ? Json(r.capacity) : Json(nullptr)}, {"unit", card.unit}, {"reason", r.reason}};
    return written_finished(std::move(j));
}

} // namespace thinskin::report
