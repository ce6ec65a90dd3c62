#pragma once
#include "base/card.h"
#include "results/results.h"

#include <string>
#include <vector>

namespace thinskin::report {

/// The outcome as one JSON object, keys as in docs/result_file.md; units stand in the key names. Figures have at most
/// nine significant digits. JSON has no infinity and no NaN: such a figure is null and named in `notes`; the margin of a
/// check without demand is null. No dates, no timings: the same case gives the same bytes.
/// A text that is not UTF-8 has its bad bytes replaced by U+FFFD. Ends with a newline.
[[nodiscard]] std::string check_json(const results::Outcome& outcome);

/// A case that could not be read or resolved, as an object among results: its file and its errors, one text each.
[[nodiscard]] std::string case_error_json(const std::string& file, const std::vector<std::string>& errors);

/// Objects (each as written by check_json) as one JSON array.
[[nodiscard]] std::string json_array(const std::vector<std::string>& objects);

/// One formula card, or a list of them.
[[nodiscard]] std::string cards_json(const std::vector<const base::Card*>& cards);

/// A card evaluated at `inputs` (one value per symbol, in the card's order).
[[nodiscard]] std::string evaluation_json(const base::Card& card, const std::vector<double>& inputs, const base::Resistance& result);

} // namespace thinskin::report
