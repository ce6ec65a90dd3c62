#pragma once
#include "actions/clause.h"

#include <string>
#include <vector>

/// Power spectral densities of an acceleration: one-sided, in g2/Hz, straight lines in log-log between the points of a table.
namespace thinskin::actions {

struct PsdPoint { double f_Hz, P; };
struct Psd { std::vector<PsdPoint> points; };

/// The units a table may come in. (m/s2)2/Hz and m2/s3 are the same unit; 1 g2/Hz = 96.17 (m/s2)2/Hz.
enum class PsdUnit { g2_Hz, m2_s3 };
[[nodiscard]] Psd in_g2_Hz(Psd table, PsdUnit unit);

/// Why a table cannot be used: fewer than two points, f or P not finite or not above zero, f not growing. Empty = usable.
/// A step is two points a little apart. A two-sided table has half of these densities: double it first.
[[nodiscard]] std::string problem_of(const Psd& table);

/// Value at f by log-log interpolation; 0 outside of the table, which says nothing there. Table must be usable.
[[nodiscard]] double value_at(const Psd& table, double f_Hz);

/// Area under the table in g2, exact by segments:                                                             [theory AC-6]
///   n = ln(P2/P1)/ln(f2/f1);  P1 f1/(n + 1) ((f2/f1)^(n+1) - 1), for n = -1: P1 f1 ln(f2/f1)
/// Table must be usable. The rms of the acceleration is its root.
[[nodiscard]] double mean_square(const Psd& table);

/// AC-6, rms in g of one segment of a table. f2 > f1.
struct PsdSegment { double f1_Hz, P1, f2_Hz, P2; };
[[nodiscard]] base::Resistance segment_rms(const PsdSegment& in);
template <> const Clause<PsdSegment>& clause<PsdSegment>();

} // namespace thinskin::actions
