#pragma once
#include "base/card.h"

/// Inside this folder: symbols and units of the wood clauses.
namespace thinskin::strength::wood {

inline constexpr double in_mm = 25.4, lbf_N = 4.4482216152605;
inline constexpr double psi = lbf_N / (in_mm * in_mm); ///< MPa

inline base::Symbol gravity() { return {.name = "G", .unit = "-", .meaning = "oven-dry specific gravity of the wood (0.42 where not known)", .lower = 0.31, .upper = 0.73}; }
inline base::Symbol duration()
{
    return {.name = "C_D", .unit = "-", .meaning = "load duration: 0.9 permanent, 1 ten years, 1.25 a week, 1.6 ten minutes", .lower = 0.9, .upper = 1.6};
}
inline base::Symbol moisture() { return {.name = "C_M", .unit = "-", .meaning = "1 dry, 0.7 wet service", .choices = {0.7, 1}}; }
inline base::Symbol temperature()
{
    return {.name = "C_t", .unit = "-", .meaning = "to 38 C 1; to 52 C 0.8 dry, 0.7 wet; to 66 C 0.7 dry, 0.5 wet", .choices = {0.5, 0.7, 0.8, 1}};
}

} // namespace thinskin::strength::wood
