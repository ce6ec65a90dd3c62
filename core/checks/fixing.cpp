#include "checks/checks.h"
#include "checks/fastener_rows.h"
#include "strength/bearing.h"

namespace thinskin::checks {

namespace {

std::vector<results::FastenerForce> of_fastener(const std::vector<results::FastenerForce>& all, const std::string& name)
{
    std::vector<results::FastenerForce> out;
    for (const auto& f : all)
        if (f.name == name) out.push_back(f);
    return out;
}

/// Spacing of the fasteners of one bracket.
void spacing_rows(const layout::Bracket& b, std::vector<results::Check>& out)
{
    for (std::size_t i = 0; i < b.fasteners.size(); ++i)
        for (std::size_t j = i + 1; j < b.fasteners.size(); ++j) {
            const layout::Stack &p = b.fasteners[i], &q = b.fasteners[j];
            if (!p.hardware.not_covered.empty() || !q.hardware.not_covered.empty()) continue;
            const base::Resistance need = strength::minimum_spacing({std::max(p.hardware.d, q.hardware.d)});
            const Place place{fmt::format("spacing/{}/{}", p.name, q.name), "fixing", b.name, fmt::format("spacing of {} and {}", p.name, q.name), false, "", ""};
            out.push_back(against(place, {"geometry", need.covered ? need.capacity : NAN, true, ""}, base::covered(std::hypot(p.at.x - q.at.x, p.at.y - q.at.y), 1),
                                  strength::minimum_spacing_card(), {{"d", std::max(p.hardware.d, q.hardware.d)}}));
        }
}

} // namespace

std::vector<results::Check> fixing(const Demands& d)
{
    std::vector<results::Check> out;
    for (const layout::Bracket& b : d.layout->brackets) {
        std::vector<const layout::Stack*> on_leg;
        for (const layout::Stack& s : b.fasteners) on_leg.push_back(&s);
        for (const layout::Stack& s : b.fasteners) {
            const auto forces = of_fastener(*d.fasteners, s.name);
            const auto rows = stack_rows({&s, "fixing", b.name, forces});
            out.insert(out.end(), rows.begin(), rows.end());
            out.push_back(lying_leg_row({"lying leg/" + s.name, "bracket", b.name, fmt::format("lying leg of {} at {}", b.leg.name, s.name), false, "", ""}, b.leg, s, on_leg, forces));
        }
        spacing_rows(b, out);
    }
    return out;
}

} // namespace thinskin::checks
