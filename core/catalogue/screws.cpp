#include "catalogue/rows.h"

namespace thinskin::catalogue {
namespace {

ScrewSize screw_of(const RowView& r) { return {r.text("name"), r.number("d mm"), r.number("head mm"), origin(r)}; }

BlindRivet rivet_of(const RowView& r)
{
    return {r.text("size"), r.text("material"), r.text("size") + " " + r.text("material"), r.number("d mm"), r.number("shear N"), r.number("tension N"), r.number("head mm"), origin(r)};
}

WoodScrewSize wood_screw_of(const RowView& r)
{
    return {r.text("name"), r.number("d mm"), r.number("root mm"), r.number("head mm"), origin(r)};
}

Wood wood_of(const RowView& r) { return {r.text("name"), r.number("G"), origin(r)}; }

template <class Row>
const Row* named(const std::vector<Row>& rows, std::string_view name)
{
    return find_row(rows, [name](const Row& r) { return r.name == name; });
}

} // namespace

const std::vector<ScrewSize>& screw_sizes()
{
    static const std::vector<ScrewSize> all = load_rows("screws", screw_of);
    return all;
}

const std::vector<BlindRivet>& blind_rivets()
{
    static const std::vector<BlindRivet> all = load_rows("blind_rivets", rivet_of);
    return all;
}

const std::vector<WoodScrewSize>& wood_screw_sizes()
{
    static const std::vector<WoodScrewSize> all = load_rows("wood_screws", wood_screw_of);
    return all;
}

const std::vector<Wood>& woods()
{
    static const std::vector<Wood> all = load_rows("woods", wood_of);
    return all;
}

const ScrewSize* screw_size(std::string_view name) { return named(screw_sizes(), name); }
const BlindRivet* blind_rivet(std::string_view size, std::string_view material)
{
    return find_row(blind_rivets(), [size, material](const BlindRivet& r) { return r.size == size && r.material == material; });
}
const WoodScrewSize* wood_screw_size(std::string_view name) { return named(wood_screw_sizes(), name); }
const Wood* wood(std::string_view name) { return named(woods(), name); }

} // namespace thinskin::catalogue
