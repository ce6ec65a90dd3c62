#include "layout/resolver.h"

#include <algorithm>
#include <fmt/core.h>

namespace thinskin::layout {

namespace {

template <class Own> std::vector<std::string> names_of(const std::vector<Own>& rows)
{
    std::vector<std::string> names;
    for (const Own& r : rows) names.push_back(r.name);
    return names;
}

} // namespace

void Resolver::error(const base::Location& at, const std::string& path, const std::string& message, const std::string& hint)
{
    const auto said = [&](const base::Diagnostic& d) { return d.at.line == at.line && d.at.column == at.column && d.at.file == at.file && d.key_path == path && d.message == message; };
    if (std::none_of(diagnostics.begin(), diagnostics.end(), said)) diagnostics.push_back({at, path, message, hint, base::Severity::error}); // a kind is asked for by each of its fasteners
}

void Resolver::not_covered(const std::string& group, const std::string& part, const std::string& reason, const std::string& lift_with)
{
    out.not_covered.push_back({group, part, reason, lift_with});
}

catalogue::Material Resolver::material(const std::string& name, const base::Location& at, const std::string& path)
{
    if (const catalogue::Material* found = catalogue::material(name)) return *found;
    if (const auto* own = catalogue::find_own(source.own.materials, name)) {
        took("material", *own);
        return catalogue::as_row(*own);
    }
    error(at, path, catalogue::no_such_row(catalogue::Lookup::material, name, names_of(source.own.materials)));
    return {};
}

void Resolver::took(const char* table, const model::OwnRow& row)
{
    const std::string words = fmt::format("{} {}: {}", table, row.name, catalogue::origin_words(row));
    if (std::find(out.own_rows.begin(), out.own_rows.end(), words) == out.own_rows.end()) out.own_rows.push_back(words);
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

std::string kind_path(const model::FastenerKind& k, const char* key) { return fmt::format("fastener_kinds.{}.{}", k.name, key); }

/// Thread and head of a metric or inch bolt.
const catalogue::BoltSize* take_thread(Resolver& r, const model::FastenerKind& k, Hardware& h)
{
    const catalogue::BoltSize* size = catalogue::bolt_size(k.size);
    if (!size) {
        r.error(k.at, kind_path(k, "size"), catalogue::no_such_row(catalogue::Lookup::bolt_size, k.size));
        return nullptr;
    }
    h.d = size->d;
    h.stress_area = size->stress_area;
    h.across_flats = size->across_flats;
    h.mean_diameter = size->mean_diameter;
    return size;
}

/// A row that a fastener kind names in `key`: the program's, the case's own, or an error.
template <class Row, class Own, class Take>
void take_row(Resolver& r, const model::FastenerKind& k, const char* key, const std::string& name, const Row* known, const std::vector<Own>& own, catalogue::Lookup what, const char* noun, Take take)
{
    if (known) return take(*known);
    if (const Own* row = catalogue::find_own(own, name)) {
        r.took(noun, *row);
        return take(catalogue::as_row(*row));
    }
    r.error(k.at, kind_path(k, key), catalogue::no_such_row(what, name, names_of(own)));
}

void take_grade(Resolver& r, const model::FastenerKind& k, Hardware& h)
{
    take_row(r, k, "grade", k.grade, catalogue::bolt_grade(k.grade), r.source.own.bolt_grades, catalogue::Lookup::bolt_grade, "bolt grade", [&h](const catalogue::BoltGrade& grade) {
        h.fub = grade.fub;
        h.fyb = grade.fyb;
    });
}

void take_bolt(Resolver& r, const model::FastenerKind& k, Hardware& h)
{
    const catalogue::BoltSize* size = take_thread(r, k, h);
    take_grade(r, k, h);
    if (!size) return;
    h.tip_diameter = h.across_flats;
    h.hole = k.hole ? k.hole->value : size->hole_medium;
    h.play = (h.hole - h.d) / 2;
    if (h.hole > size->hole_coarse) h.not_covered = fmt::format("a hole of {:g} mm for a {} is wider than the coarse clearance hole of {:g} mm, which is what the clauses are for", h.hole, k.size, size->hole_coarse);
    if (h.hole <= h.d) r.error(k.at, kind_path(k, "hole"), fmt::format("a hole of {} mm does not take a {} bolt; expected more than {} mm", h.hole, k.size, h.d));
}

void take_head(const model::FastenerKind& k, double catalogue_head, Hardware& h)
{
    h.across_flats = h.mean_diameter = k.head_diameter ? k.head_diameter->value : catalogue_head;
    h.hole = h.d; // made or filled by the fastener: no play
}

void take_screw(Resolver& r, const model::FastenerKind& k, Hardware& h)
{
    take_row(r, k, "size", k.size, catalogue::screw_size(k.size), r.source.own.screws, catalogue::Lookup::screw_size, "screw", [&](const catalogue::ScrewSize& size) {
        h.d = h.tip_diameter = size.d;
        take_head(k, size.head, h);
    });
}

/// The blind side is at least half as wide again as the rivet (judgement).
constexpr double blind_side = 1.5;

void take_own_rivet(const catalogue::BlindRivet& row, const model::FastenerKind& k, Hardware& h)
{
    h.d = row.d;
    h.tip_diameter = blind_side * h.d;
    take_head(k, row.head, h);
    h.own_shear = row.shear;
    h.own_tension = row.tension;
}

void take_rivet(Resolver& r, const model::FastenerKind& k, Hardware& h)
{
    if (const auto* own = catalogue::find_own(r.source.own.rivets, k.size); own && k.grade.empty()) {
        r.took("rivet", *own);
        return take_own_rivet(catalogue::as_row(*own), k, h);
    }
    const auto same_size = [&k](const catalogue::BlindRivet& b) { return b.name == k.size || b.name.rfind(k.size + " ", 0) == 0; };
    const auto& all = catalogue::blind_rivets();
    const auto any = std::find_if(all.begin(), all.end(), same_size);
    const catalogue::BlindRivet* row = catalogue::blind_rivet(k.size, k.grade);
    if (any == all.end() || (!row && !k.grade.empty())) {
        r.error(k.at, kind_path(k, any == all.end() ? "size" : "grade"), catalogue::no_such_row(catalogue::Lookup::blind_rivet, k.size + (k.grade.empty() ? "" : " ") + k.grade, names_of(r.source.own.rivets)));
        return;
    }
    h.d = any->d;
    h.tip_diameter = blind_side * h.d;
    take_head(k, any->head, h);
    if (!row) return;
    h.own_shear = row->shear;
    h.own_tension = row->tension;
}

/// Hole of the insert: as given; the clauses for the skin need it.
void take_insert(Resolver& r, const model::FastenerKind& k, Hardware& h)
{
    const catalogue::BoltSize* size = take_thread(r, k, h);
    if (!k.grade.empty()) take_grade(r, k, h);
    if (!size) return;
    h.play = (size->hole_medium - h.d) / 2; // of the bolt in the part it holds
    h.hole = k.hole ? k.hole->value : h.d;
    h.flange_given = k.flange.has_value();
    h.tip_diameter = k.flange ? k.flange->value : h.hole;
    if (!k.hole) {
        h.not_covered = "the hole of the insert is not given";
        h.lift_with = kind_path(k, "hole");
    } else if (h.hole <= h.d) {
        r.error(k.at, kind_path(k, "hole"), fmt::format("a hole of {} mm does not take an insert for {}; expected more than {} mm", h.hole, k.size, h.d));
    }
    if (k.flange && h.tip_diameter < h.hole) r.error(k.at, kind_path(k, "flange"), fmt::format("a flange of {} mm falls through a hole of {} mm", h.tip_diameter, h.hole));
    if (k.head == model::Face::inside) h.not_covered = "an insert sits in the skin and takes its bolt from outside; head: inside is not covered";
}

void take_strengths(const model::FastenerKind& k, Hardware& h)
{
    if (k.shear_strength) h.own_shear = k.shear_strength->value;
    if (k.tension_strength) h.own_tension = k.tension_strength->value;
    if (k.sheet_strength) h.sheet_strength = k.sheet_strength->value;
}

void take_type(Resolver& r, const model::FastenerKind& k, Hardware& h)
{
    if (k.type == "bolt") {
        take_bolt(r, k, h);
    } else if (k.type == "screw") {
        h.type = Hardware::Type::screw;
        take_screw(r, k, h);
    } else if (k.type == "rivet") {
        h.type = Hardware::Type::rivet;
        take_rivet(r, k, h);
    } else if (k.type == "insert") {
        h.type = Hardware::Type::insert;
        take_insert(r, k, h);
    } else {
        h.not_covered = fmt::format("fastener type {} has no clause yet", k.type);
    }
    take_strengths(k, h);
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
    if (k->countersink) h.countersink = k->countersink->value;
    if (k->head_washer) h.head_washer = washer(*k->head_washer);
    if (k->nut_washer) h.nut_washer = washer(*k->nut_washer);
    take_type(*this, *k, h);
    if (h.countersink > 0 && h.type != Hardware::Type::bolt && h.not_covered.empty()) {
        h.not_covered = "a countersunk head has rules here for bolts alone";
        h.lift_with = "fastener_kinds." + h.kind + ".countersink: not given";
    }
    return h;
}

} // namespace thinskin::layout
