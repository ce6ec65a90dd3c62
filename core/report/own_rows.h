#pragma once
#include "model/own_rows.h"

#include <string>

namespace thinskin::report {

/// The rows that a case and the file that it shares bring along, a table each, with their sources. Units as written.
[[nodiscard]] std::string own_rows_text(const model::OwnRows& rows);

} // namespace thinskin::report
