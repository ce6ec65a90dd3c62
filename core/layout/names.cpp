#include "layout/resolver.h"

#include <fmt/core.h>

namespace thinskin::layout {

void Resolver::error(const base::Location& at, const std::string& path, const std::string& message, const std::string& hint)
{
    diagnostics.push_back({at, path, message, hint, base::Severity::error});
}

void Resolver::not_covered(const std::string& group, const std::string& part, const std::string& reason, const std::string& lift_with)
{
    out.not_covered.push_back({group, part, reason, lift_with});
}

catalogue::Material Resolver::material(const std::string& name, const base::Location& at, const std::string& path)
{
    if (const catalogue::Material* found = catalogue::material(name)) return *found;
    error(at, path, catalogue::no_such_row(catalogue::Lookup::material, name));
    return {};
}

catalogue::Section Resolver::section(const std::string& text, const base::Location& at, const std::string& path)
{
    const catalogue::ReadSection read = catalogue::read_section(text);
    if (!read.ok) error(at, path, read.expected);
    return read.section;
}

Sheet Resolver::sheet(const model::Sheet& s, const std::string& path)
{
    Sheet sheet{s.material, material(s.material, s.at, path + ".material"), s.thickness.value, s.thickness.value - s.coating.value};
    if (!(sheet.core > 0))
        error(s.at, path + ".coating", fmt::format("coating {} leaves no steel of {}", s.coating.text, s.thickness.text));
    return sheet;
}

namespace {

WasherSize washer(const model::Washer& w) { return {w.diameter.value, w.thickness.value}; }

const model::FastenerKind* find_kind(const model::Case& c, const std::string& use)
{
    for (const model::FastenerKind& k : c.fastener_kinds)
        if (k.name == use) return &k;
    return nullptr;
}

void take_size(Resolver& r, const model::FastenerKind& k, Hardware& h)
{
    const catalogue::BoltSize* size = catalogue::bolt_size(k.size);
    const catalogue::BoltGrade* grade = catalogue::bolt_grade(k.grade);
    const std::string path = "fastener_kinds." + k.name;
    if (!size) r.error(k.at, path + ".size", catalogue::no_such_row(catalogue::Lookup::bolt_size, k.size));
    if (!grade) r.error(k.at, path + ".grade", catalogue::no_such_row(catalogue::Lookup::bolt_grade, k.grade));
    if (!size || !grade) return;
    h.d = size->d;
    h.stress_area = size->stress_area;
    h.across_flats = size->across_flats;
    h.mean_diameter = size->mean_diameter;
    h.hole = k.hole ? k.hole->value : size->hole_medium;
    h.fub = grade->fub;
    h.fyb = grade->fyb;
    if (h.hole > size->hole_coarse) h.not_covered = fmt::format("a hole of {:g} mm for a {} is wider than the coarse clearance hole of {:g} mm, which is what the clauses are for", h.hole, k.size, size->hole_coarse);
    if (h.hole <= h.d) r.error(k.at, path + ".hole", fmt::format("a hole of {} mm does not take a {} bolt; expected more than {} mm", h.hole, k.size, h.d));
}

} // namespace

Hardware Resolver::hardware(const std::string& use, const base::Location& at, const std::string& path)
{
    Hardware h;
    h.kind = use;
    const model::FastenerKind* k = find_kind(source, use);
    if (!k) {
        error(at, path, fmt::format("no fastener kind called {}", use));
        return h;
    }
    h.size = k->size;
    h.grade = k->grade;
    h.fitted = k->fitted;
    h.sleeve = k->sleeve;
    if (k->head_washer) h.head_washer = washer(*k->head_washer);
    if (k->nut_washer) h.nut_washer = washer(*k->nut_washer);
    if (k->type == "bolt") take_size(*this, *k, h);
    else h.not_covered = fmt::format("fastener type {} has no clause yet", k->type);
    return h;
}

} // namespace thinskin::layout
