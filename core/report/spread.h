#pragma once
#include "results/spread.h"

#include <string>

namespace thinskin::report {

/// Section of check_text: quantiles of the least margin and what matters most.
[[nodiscard]] std::string spread_text(const results::Spread& s, int width = 100);

/// An object written by check_json with the key `spread` added.
[[nodiscard]] std::string with_spread(const std::string& check_json, const results::Spread& s);

} // namespace thinskin::report
