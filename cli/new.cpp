#include "base/nearest.h"
#include "base/status.h"
#include "casefile/starter.h"
#include "commands.h"

#include <algorithm>
#include <fmt/format.h>

namespace thinskin::cli {

Exit run_new(const NewOptions& options)
{
    const std::vector<std::string> kinds = casefile::starter_kinds();
    if (std::find(kinds.begin(), kinds.end(), options.kind) == kinds.end()) {
        const std::string hint = base::did_you_mean(options.kind, kinds);
        fmt::print(stderr, "error: no starter case called \"{}\"; there are {}{}\n", options.kind, fmt::join(kinds, ", "),
                   hint.empty() ? "" : "; " + hint);
        return Exit::bad_command;
    }
    const std::string text = casefile::starter(options.kind);
    fmt::print("{}", text);
    if (text.find(base::caution_text) == std::string::npos) fmt::print("# {}\n", base::caution_text);
    return Exit::passed;
}

} // namespace thinskin::cli
