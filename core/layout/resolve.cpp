#include "layout/offered.h"
#include "layout/resolver.h"

namespace thinskin::layout {

namespace {

void note_what_is_not_covered(Resolver& r)
{
    const model::Reinforcement& more = r.source.reinforcement;
    for (const auto& b : more.boards) r.not_covered("reinforcement", b.name, "the catalogue has no stiffness and no bending strength of wood: a board is left out", "reinforcement.backing_plates: a steel plate instead of the board");
}

/// Parts of aluminium, each with its alloy.
std::string aluminium_parts(const Layout& l)
{
    std::string all;
    const auto add = [&all](const std::string& part, const catalogue::Material& m) {
        if (m.kind == catalogue::Material::Kind::aluminium) all += (all.empty() ? "" : ", ") + part + " (" + m.name + ")";
    };
    add("the skin", l.skin.material);
    for (const Angle& a : l.angles) add(a.bar.name, a.bar.material);
    for (const Rib& x : l.ribs) add(x.name, x.material);
    for (const Strap& x : l.straps) add(x.name, x.material);
    for (const Bracket& b : l.brackets) add("leg of " + b.name, b.leg.material);
    return all;
}

/// Bolts, screws and inserts are of steel: wherever something is aluminium the two touch.
void warn_of_galvanic_contact(Resolver& r)
{
    if (const std::string parts = aluminium_parts(r.out); !parts.empty())
        r.caution(parts + ": aluminium on steel bolts and steel parts corrodes where water stands, faster with salt: paint or tape between them, sealant under heads and washers, no bare steel; looked at at every re-check");
}

/// Everything but whether the geometry can be.
void resolve_parts(Resolver& r)
{
    r.out.source = &r.source;
    resolve_panel(r);
    resolve_item(r);
    resolve_door(r);
    resolve_angles(r);      // before the brackets: stacks go through them
    resolve_plates(r);
    resolve_brackets(r);
    resolve_feet(r);
    resolve_straps(r);
    note_what_is_not_covered(r);
    warn_of_galvanic_contact(r);
    check_own_rows(r);
}

} // namespace

Result resolve(const model::Case& c)
{
    Resolver r{c};
    resolve_parts(r);
    check_geometry(r);
    Result result;
    result.diagnostics = std::move(r.diagnostics);
    if (!base::has_errors(result.diagnostics)) result.layout = std::move(r.out);
    return result;
}

std::optional<Layout> drawable(const model::Case& c)
{
    Resolver r{c};
    resolve_parts(r);
    return base::has_errors(r.diagnostics) ? std::nullopt : std::optional(std::move(r.out));
}

} // namespace thinskin::layout
