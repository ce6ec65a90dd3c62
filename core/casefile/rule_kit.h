#pragma once
#include "casefile/reader.h"

#include <fmt/format.h>
#include <string>
#include <utility>
#include <vector>

namespace thinskin::casefile {

/// What every rule needs: the case, and a way to report at the place of a key (or of the block it would stand in).
class RuleKit {
public:
    RuleKit(const model::Case& the_case, const std::map<std::string, base::Location>& places) : c(the_case), places_(places) {}

    const model::Case& c;
    std::vector<base::Diagnostic> out;

    void error(const std::string& path, std::string message, std::string hint = {})
    {
        out.push_back({place(path), path, std::move(message), std::move(hint), base::Severity::error});
    }

    /// Whether the key stands in the file, even if its value could not be read; then nothing follows from its absence.
    [[nodiscard]] bool written(const std::string& path) const { return places_.count(path) > 0; }

    [[nodiscard]] bool from_file() const { return !places_.empty(); }

private:
    [[nodiscard]] base::Location place(std::string path) const
    {
        for (;;) {
            const auto at = places_.find(path);
            if (at != places_.end()) return at->second;
            const std::size_t cut = path.find_last_of(".[");
            if (cut == std::string::npos) return {};
            path.resize(cut);
        }
    }

    const std::map<std::string, base::Location>& places_;
};

/// A name in the case and the key path it stands at.
struct NameAt {
    std::string name, path;
};

void check_blocks(RuleKit& k);  ///< blocks that another block asks for or rules out
void check_names(RuleKit& k);   ///< names that stand twice, uses of unknown fastener kinds
void check_copies(RuleKit& k);  ///< copy_of, mirror_of, rename
void check_values(RuleKit& k);  ///< values that rule each other out
void check_measured(RuleKit& k);///< measured_from of a key that does not exist

} // namespace thinskin::casefile
