#pragma once
#include "model/case.h"
#include "pipeline/analyse.h"
#include "results/spread.h"

#include <cstdint>
#include <functional>

namespace thinskin::studies {

/// The case run `samples` times with all its unmeasured figures drawn from their ranges at once: a Latin hypercube (each range is cut
/// into as many equal parts as there are samples, each part is used once) with a fixed seed, so the same case gives the same figures.
///   skin         thickness of its base metal -10 .. +10 %, unless measured           item     mass -tolerance .. +tolerance, unless measured
///   coating      0 .. 0.06 mm where nobody gave it                                    in plane fixed or movable, half each
///   edges        held ones by their fixity r from 0 (hinged) to 1 (held): k = 4 D/b r/(1 - r), D of the skin, b the panel's lesser side
///   frame        inner sheet -10 .. +10 %, where it is given
/// Ranges: engineering judgement, as in the schema's column `spread`; uniform, independent. They are no probabilities of the vehicle.
/// Correlation: Spearman's rank correlation rho = 1 - 6 sum d^2/(n (n^2 - 1)), ties by their mean rank.      Source: elementary statistics.
struct SpreadOptions { int samples = 100; std::function<void(int, int)> progress = {}; };
[[nodiscard]] results::Spread spread(const model::Case& c, double nominal_margin, pipeline::Workspace& workspace, const SpreadOptions& options, std::stop_token stop = {});

/// Place of each sample in each range, 0 .. 1: samples x inputs.
[[nodiscard]] std::vector<std::vector<double>> latin_hypercube(std::size_t samples, std::size_t inputs, std::uint64_t seed);
/// Of equal length, at least two values; 0 where one of them does not vary.
[[nodiscard]] double rank_correlation(const std::vector<double>& a, const std::vector<double>& b);
/// By linear interpolation between the sorted values; `values` not empty.
[[nodiscard]] double quantile(std::vector<double> values, double share);

} // namespace thinskin::studies
