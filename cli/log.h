#pragma once
#include <string>

/// Messages for developers (-v), on standard error. Never results: those go through report.
namespace thinskin::cli {

void set_verbose(bool on);
void log(const std::string& message);

} // namespace thinskin::cli
