#include "catalogue/catalogue.h"
#include "catalogue/data.h"
#include "catalogue/rows.h"
#include "catalogue/thickness.h"

#include <fmt/format.h>

#include <stdexcept>

namespace thinskin::catalogue {
namespace {

void set_elastic(Material& m, std::string_view kind)
{
    const Rows rows = read_rows("elastic");
    for (std::size_t i = 0; i < rows.cells.size(); ++i) {
        const RowView r(rows, i);
        if (r.text("kind") != kind) continue;
        m.kind = kind == "aluminium" ? Material::Kind::aluminium : Material::Kind::steel;
        m.E = r.number("E MPa");
        m.E_strength = r.number("E_strength MPa");
        m.nu = r.number("nu");
        m.G = m.E / (2 * (1 + m.nu));
        m.density = r.number("density kg/m3");
        m.elastic = origin(r);
        return;
    }
    throw std::logic_error("elastic.yaml has no kind " + std::string(kind));
}

StrengthBand strength_band(const RowView& r)
{
    if (!read_thickness_range(r.text("t mm"))) throw std::logic_error("materials.yaml: no range of thickness: " + r.text("t mm"));
    return {r.text("t mm"), r.number("fy MPa"), r.number("fu MPa"), origin(r)};
}

Material first_row(const RowView& r)
{
    Material m;
    m.name = r.text("name");
    m.product = r.text("product");
    set_elastic(m, r.text("kind"));
    return m;
}

/// Rows of one name stand together; each adds a range of thickness.
std::vector<Material> load()
{
    const Rows rows = read_rows("materials");
    std::vector<Material> all;
    for (std::size_t i = 0; i < rows.cells.size(); ++i) {
        const RowView r(rows, i);
        if (all.empty() || all.back().name != r.text("name")) all.push_back(first_row(r));
        all.back().strengths.push_back(strength_band(r));
    }
    return all;
}

std::string covered_thicknesses(const Material& m)
{
    std::string text;
    for (const StrengthBand& band : m.strengths) text += (text.empty() ? "" : ", ") + band.t;
    return text;
}

} // namespace

Strength Material::strength(double t) const
{
    for (const StrengthBand& band : strengths)
        if (read_thickness_range(band.t).value().contains(t)) return {true, band.fy, band.fu, {}, band.origin};
    Strength none;
    none.reason = fmt::format("{}: t = {:g} mm is outside the thicknesses of the catalogue ({} mm)", name, t, covered_thicknesses(*this));
    return none;
}

Material of_kind(std::string_view kind)
{
    Material m;
    set_elastic(m, kind);
    return m;
}

const std::vector<Material>& materials()
{
    static const std::vector<Material> all = load();
    return all;
}

const Material* material(std::string_view name)
{
    return find_row(materials(), [name](const Material& m) { return m.name == name; });
}

} // namespace thinskin::catalogue
