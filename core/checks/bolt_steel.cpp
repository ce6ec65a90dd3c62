#include "checks/bolt_steel.h"

#include "strength/bolts.h"
#include "strength/inch_bolts.h"

namespace thinskin::checks {

namespace {

using layout::Hardware;

struct Grade { const char* name; double number; };
constexpr Grade of_the_table[] = {{"A307", strength::grade_A307}, {"A449", strength::grade_A449}, {"A354 BD", strength::grade_A354_BD}};

/// The grade's number in the clause's table; none: the table does not know the bolt. A row used by analogy is judgement.
std::optional<double> table_grade(Place& p, const Hardware& h)
{
    for (const Grade& g : of_the_table)
        if (h.grade == g.name && !h.size.starts_with("M") && strength::resistance(strength::InchBoltTension{h.d, g.number}).covered) return g.number;
    p.judgement = true;
    return std::nullopt;
}

} // namespace

results::Check bolt_tension_row(Place p, const Hardware& h, const std::vector<Demand>& pulls)
{
    const auto grade = table_grade(p, h);
    return grade ? worst_of(p, pulls, strength::InchBoltTension{h.d, *grade}) : worst_of(p, pulls, strength::BoltTension{h.d, h.fub});
}

results::Check bolt_shear_row(Place p, const Hardware& h, const std::vector<Demand>& shears)
{
    const auto grade = table_grade(p, h);
    return grade ? worst_of(p, shears, strength::InchBoltShear{h.d, *grade, strength::threads_in_shear_plane}) : worst_of(p, shears, strength::BoltShear{h.d, h.fub});
}

results::Check bolt_tension_beside_shear_row(Place p, const Hardware& h, const std::vector<Demand>& pulls, const std::vector<Demand>& shears)
{
    const auto grade = table_grade(p, h);
    std::vector<results::Check> rows;
    for (std::size_t i = 0; i < pulls.size(); ++i) {
        const double V = shears[i].value;
        rows.push_back(grade ? against_clause(p, pulls[i], strength::InchBoltTensionWithShear{h.d, *grade, strength::threads_in_shear_plane, V})
                             : against_clause(p, pulls[i], strength::BoltTensionWithShear{h.d, h.fub, V}));
    }
    return worst(std::move(rows));
}

} // namespace thinskin::checks
