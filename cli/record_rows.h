#pragma once
#include "model/case.h"
#include "report/record.h"

#include <vector>

namespace thinskin::cli {

/// The values of a case as rows of the record: "key: text" of the case file, coordinates of a point joined, and for measured
/// values how they were come by: the case's word, "default" or "assumed (not stated)".
[[nodiscard]] std::vector<report::InputRow> record_rows(const model::Case& c);

} // namespace thinskin::cli
