#include "catalogue/own_rows.h"

#include <algorithm>
#include <fmt/core.h>

namespace thinskin::catalogue {
namespace {

base::Label label_of(const std::string& word)
{
    if (word == "read") return base::Label::read_by_user;
    if (word == "computed") return base::Label::computed;
    if (word == "practice") return base::Label::common_practice;
    if (word == "judgement") return base::Label::judgement;
    return base::Label::from_memory;
}

Origin origin_of(const model::OwnRow& r) { return {r.source, label_of(r.label), std::string(own_row_note)}; }

/// How the other name is written, when not to the letter.
std::string as_written(const std::string& name, const std::string& other) { return name == other ? "" : fmt::format(" ({} here)", name); }

/// Names of one table: none that the program has, none twice; capitals, spaces and zeros at the end make no other name.
template <class Own>
void check_names(const char* table, const std::vector<Own>& rows, Lookup what, std::vector<OwnRowProblem>& out)
{
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const std::string path = fmt::format("catalogue.{}[{}].name", table, i), &name = rows[i].name;
        if (const auto known = row_alike(what, name))
            out.push_back({rows[i].where, path, fmt::format("the program's catalogue has a row {} already{}: give this one a name of its own", *known, as_written(name, *known))});
        for (std::size_t j = 0; j < i; ++j)
            if (alike(rows[j].name, name)) {
                out.push_back({rows[i].where, path, fmt::format("the name {} stands twice{}", rows[j].name, as_written(name, rows[j].name))});
                break;
            }
    }
}

/// Rivets are known by their size alone, too.
void check_rivet_sizes(const std::vector<model::OwnRivet>& rows, std::vector<OwnRowProblem>& out)
{
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const auto hit = std::find_if(blind_rivets().begin(), blind_rivets().end(), [&](const BlindRivet& b) { return alike(b.size, rows[i].name); });
        if (hit != blind_rivets().end())
            out.push_back({rows[i].where, fmt::format("catalogue.rivets[{}].name", i), fmt::format("the program's catalogue has a row {} already{}: give this one a name of its own", hit->size, as_written(rows[i].name, hit->size))});
    }
}

template <class Own> void check_strengths(const char* table, const std::vector<Own>& rows, std::vector<OwnRowProblem>& out)
{
    for (std::size_t i = 0; i < rows.size(); ++i)
        if (!(rows[i].yield.value <= rows[i].tensile.value))
            out.push_back({rows[i].where, fmt::format("catalogue.{}[{}].tensile", table, i), fmt::format("tensile {} is less than yield {}: are they exchanged?", rows[i].tensile.text, rows[i].yield.text)});
}

/// Nothing is held by a head that its own hole lets through.
template <class Own> void check_heads(const char* table, const std::vector<Own>& rows, std::vector<OwnRowProblem>& out)
{
    for (std::size_t i = 0; i < rows.size(); ++i)
        if (!(rows[i].head.value > rows[i].diameter.value))
            out.push_back({rows[i].where, fmt::format("catalogue.{}[{}].head", table, i), fmt::format("a head of {} is not wider than the shank of {}: are they exchanged?", rows[i].head.text, rows[i].diameter.text)});
}

} // namespace

Material as_row(const model::OwnMaterial& o)
{
    Material m = of_kind(o.kind);
    m.name = o.name;
    m.product = o.product;
    m.strengths = {{fmt::format("{:.17g} .. {:.17g}", o.from.value, o.to.value), o.yield.value, o.tensile.value, origin_of(o)}};
    return m;
}

BoltGrade as_row(const model::OwnBoltGrade& g) { return {g.name, false, g.tensile.value, g.yield.value, origin_of(g)}; }
ScrewSize as_row(const model::OwnScrew& s) { return {s.name, s.diameter.value, s.head.value, origin_of(s)}; }
BlindRivet as_row(const model::OwnRivet& r) { return {r.name, "", r.name, r.diameter.value, r.shear.value, r.tension.value, r.head.value, origin_of(r)}; }
RoadSurface as_row(const model::OwnRoad& r) { return {r.name, r.down.value, r.up.value, r.lateral.value, r.fore_aft.value, origin_of(r)}; }
BasePulse as_row(const model::OwnPulse& p) { return {p.name, p.shape, p.peak.value, p.duration.value, origin_of(p)}; }

std::optional<RoadSurface> road_surface(std::string_view name, const model::OwnRows& own)
{
    if (const RoadSurface* r = road_surface(name)) return *r;
    if (const model::OwnRoad* r = find_own(own.roads, name)) return as_row(*r);
    return std::nullopt;
}

std::optional<BasePulse> base_pulse(std::string_view name, const model::OwnRows& own)
{
    if (const BasePulse* p = base_pulse(name)) return *p;
    if (const model::OwnPulse* p = find_own(own.base_pulses, name)) return as_row(*p);
    return std::nullopt;
}

std::vector<OwnRowProblem> problems_of(const model::OwnRows& own)
{
    std::vector<OwnRowProblem> out;
    check_names("materials", own.materials, Lookup::material, out);
    check_names("bolt_grades", own.bolt_grades, Lookup::bolt_grade, out);
    check_names("screws", own.screws, Lookup::screw_size, out);
    check_names("rivets", own.rivets, Lookup::blind_rivet, out);
    check_rivet_sizes(own.rivets, out);
    check_names("roads", own.roads, Lookup::road_surface, out);
    check_names("base_pulses", own.base_pulses, Lookup::base_pulse, out);
    check_strengths("materials", own.materials, out);
    check_strengths("bolt_grades", own.bolt_grades, out);
    check_heads("screws", own.screws, out);
    check_heads("rivets", own.rivets, out);
    for (std::size_t i = 0; i < own.materials.size(); ++i)
        if (!(own.materials[i].from.value <= own.materials[i].to.value))
            out.push_back({own.materials[i].where, fmt::format("catalogue.materials[{}].to", i), "the greatest thickness is less than the least: are they exchanged?"});
    return out;
}

std::string origin_words(const model::OwnRow& r)
{
    const std::string& file = r.where.file;
    const auto name = file.find_last_of("/\\");
    return fmt::format("{} ({}){}", r.source, base::name(label_of(r.label)), r.shared ? ", in " + file.substr(name == std::string::npos ? 0 : name + 1) : "");
}

} // namespace thinskin::catalogue
