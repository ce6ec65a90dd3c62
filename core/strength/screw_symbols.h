#pragma once
#include "base/card.h"

/// Inside this folder: symbols that several screw clauses share.
namespace thinskin::strength::symbols {

inline base::Symbol screw_diameter() { return {.name = "d", .unit = "mm", .meaning = "nominal (outer) diameter of the screw", .lower = 2.03, .upper = 6.35}; }

inline base::Symbol sheet(const char* name, const char* meaning) { return {.name = name, .unit = "mm", .meaning = meaning, .lower = 0.45, .upper = 12.7}; }

inline base::Symbol tensile(const char* name, const char* meaning, double upper = 690)
{
    return {.name = name, .unit = "MPa", .meaning = meaning, .lower = 200, .upper = upper};
}

inline base::Symbol head() { return {.name = "dh", .unit = "mm", .meaning = "head, or the washer in one piece with it, diameter", .lower = 0, .upper = 60, .lower_open = true}; }

inline base::Symbol washer()
{
    return {.name = "washer", .unit = "-", .meaning = "0 none or in one piece, 1 separate solid steel washer, 2 domed washer", .choices = {0, 1, 2}};
}

inline base::Symbol washer_diameter() { return {.name = "dw", .unit = "mm", .meaning = "washer diameter (0 without)", .lower = 0, .upper = 100}; }
inline base::Symbol washer_thickness() { return {.name = "tw", .unit = "mm", .meaning = "washer thickness (0 without)", .lower = 0, .upper = 10}; }

inline base::Symbol eccentric()
{
    return {.name = "eccentric", .unit = "-", .meaning = "0 pull all round the head, 1 at one side of it", .choices = {0, 1}};
}

inline base::Symbol thin_sheet()
{
    return {.name = "thin_sheet", .unit = "-", .meaning = "1 thin-sheet factor applied (usual), 0 clause as printed", .choices = {0, 1}};
}

inline base::Symbol maker_value(const char* name, const char* meaning)
{
    return {.name = name, .unit = "N", .meaning = meaning, .lower = 0, .lower_open = true};
}

} // namespace thinskin::strength::symbols
