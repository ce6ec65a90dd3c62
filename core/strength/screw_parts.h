#pragma once
#include <cmath>

/// Inside this folder: the forces that several screw clauses share, so that no formula stands twice. No range checks.
namespace thinskin::strength::parts {

inline double sheet_bearing(double d, double t, double Fu) { return 2.7 * t * d * Fu; }                 // J4.3.1-2, -3
inline double tilting(double d, double t2, double Fu2) { return 4.2 * std::sqrt(t2 * t2 * t2 * d) * Fu2; } // J4.3.1-1
inline double tear_out(double t, double Fu, double e_net, double n) { return 0.6 * Fu * (2 * n * t * e_net); } // J6.1

/// 0.6 up to 1.2 mm, straight to 1 at 2.0 mm; 1 when not asked for.
inline double thin_sheet_factor(double t, double thin_sheet)
{
    constexpr double least = 0.6, thin = 1.2, full = 2.0;
    if (thin_sheet == 0 || t >= full) return 1;
    return t <= thin ? least : least + (1 - least) * (t - thin) / (full - thin);
}

/// J4.4.1 times the thin-sheet factor.
inline double pull_out(double d, double tc, double Fu2, double thin_sheet)
{
    return thin_sheet_factor(tc, thin_sheet) * (0.85 * tc * d * Fu2);
}

} // namespace thinskin::strength::parts
