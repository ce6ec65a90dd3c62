#pragma once
#include "presentation/margins.h"

#include <optional>
#include <string>
#include <vector>

namespace thinskin::gui {

struct MarginsShown {
    const VerdictLines* verdict = nullptr;      ///< null: no result yet
    const std::vector<GroupRow>* groups = nullptr;
    const std::vector<MarginRow>* rows = nullptr;
    const MarginCard* card = nullptr;
    std::string chosen_check, chosen_case;
    std::string lit_part;                       ///< rows of this part are lit
    std::string state;                          ///< "current", "working", "linear figures while dragging", ...
    bool stale = false;
    bool comparing = false;
    std::string group;                          ///< only this group; empty: all
};

struct MarginsEvents { std::string check, load_case; std::optional<std::string> group; bool every_case = false; };

/// The right column: verdict, groups, margins with the governing one first, and the chosen one in full.
[[nodiscard]] MarginsEvents show_margins(const MarginsShown& m);

} // namespace thinskin::gui
