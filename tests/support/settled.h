#pragma once
#include "actions/load_cases.h"
#include "idealise/local_stress.h"
#include "support/cases.h"

#include <doctest/doctest.h>

namespace thinskin::tests {

/// The skin in one load case, as the panel's grid shows it and with its stress settled on the fine grid.
struct Settled { results::SkinState shown, settled; };

struct Grids { double panel = 30, local = 2.5; };

/// Load case `only` of a case's text; large: by large deflection.
inline Settled settled(const std::string& text, const std::string& only, bool large, Grids grids = {})
{
    const model::Case c = read_case(text);
    const layout::Result r = layout::resolve(c);
    REQUIRE(r.layout);
    std::vector<results::LoadCase> cases = actions::load_cases(*r.layout).cases;
    std::erase_if(cases, [&only](const results::LoadCase& l) { return l.name != only; });
    REQUIRE(cases.size() == 1);
    idealise::Options options;
    options.grid_spacing = grids.panel;
    options.local_grid = grids.local;
    idealise::SkinCache skin;
    fem::ColumnCache columns;
    const auto s = idealise::build(*r.layout, options, skin);
    idealise::Solution sol = idealise::solve(*s, cases, columns, {});
    REQUIRE(sol.solved);
    const auto model = fem::make_large(skin.skin);
    idealise::Fields f = idealise::fields(*s, sol, *skin.buckling, 84, {});
    if (large) {
        idealise::solve_large_cases(*s, sol, {only}, columns, *model, {});
        f = idealise::fields_with_large(*s, sol, f, *model, {});
    }
    Settled out{f.skin.at(0), {}};
    idealise::settle_stress(*s, sol, *model, 0, f.skin, skin.local, {}); // nothing is allowed: it looks at everything
    out.settled = f.skin[0];
    REQUIRE(out.settled.stress_settled);
    return out;
}

} // namespace thinskin::tests
