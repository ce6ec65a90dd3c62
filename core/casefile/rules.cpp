#include "casefile/rules.h"

#include "casefile/rule_kit.h"
#include "casefile/write_visitor.h"

namespace thinskin::casefile {

std::vector<base::Diagnostic> check_rules(const model::Case& c, const std::map<std::string, base::Location>& places)
{
    RuleKit k(c, places);
    check_blocks(k);
    check_names(k);
    check_copies(k);
    check_values(k);
    check_measured(k);
    return std::move(k.out);
}

void check_blocks(RuleKit& k)
{
    const model::Case& c = k.c;
    const bool item = c.item || k.written("item"), brackets = !c.brackets.empty() || k.written("brackets");
    const bool loads = !c.forces.empty() || !c.pressures.empty() || !c.masses.empty();
    const bool door_written = c.door || k.written("door");
    const bool kind_known = k.written("panel.kind") || !k.from_file();
    if (kind_known && c.panel.kind == model::PanelKind::door && !door_written)
        k.error("panel.kind", "a door needs the block \"door\" (mass, centre_of_mass, hinges)");
    if (c.panel.kind == model::PanelKind::wall && door_written) k.error("door", "a wall has no door block: remove it, or write panel.kind: door");
    if (!item && !brackets && !loads && !k.written("forces") && !k.written("pressures") && !k.written("masses"))
        k.error("", "the case has nothing that loads the panel: give an item, or forces, pressures or masses");
    if ((item || brackets) && !c.road && !k.written("road"))
        k.error("road", "an item or brackets need the block \"road\" (surface: sealed, unsealed or track)");
    if (item && !brackets && c.item && c.item->fixings.empty() && !k.written("item.fixings"))
        k.error("item", "the item hangs on nothing: give brackets, or item.fixings");
}

void check_measured(RuleKit& k)
{
    for (const std::string& path : unplaced_measured(k.c))
        k.error(path, fmt::format("measured_from names \"{}\", which is no measured key of this case", path));
}

} // namespace thinskin::casefile
