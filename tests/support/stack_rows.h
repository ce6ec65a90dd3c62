#pragma once
#include "checks/fastener_rows.h"

#include <doctest/doctest.h>
#include <utility>
#include <vector>

namespace thinskin::tests {

/// The rows of one fastener X through `plies`, pulled and sheared in two load cases, the pothole three times as hard.
inline std::vector<results::Check> stack_rows(const layout::Hardware& h, std::vector<layout::Ply> plies, double gap = 0)
{
    layout::Stack s;
    s.name = "X";
    s.hardware = h;
    s.plies = std::move(plies);
    s.gap = gap;
    std::vector<results::FastenerForce> forces(2);
    forces[0].load_case = "parked", forces[1].load_case = "pothole";
    for (auto& f : forces) f.name = "X";
    forces[0].tension_N = 30, forces[0].shear_y_N = 60;
    forces[1].tension_N = 90, forces[1].shear_y_N = 180;
    return checks::stack_rows({&s, "fixing", "bracket", forces});
}

inline results::Check find_row(const std::vector<results::Check>& all, const std::string& id)
{
    for (const auto& c : all)
        if (c.id == id) return c;
    FAIL("no row " << id);
    return all.front();
}

} // namespace thinskin::tests
