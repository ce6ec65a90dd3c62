#pragma once
#include "presentation/keys.h"
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
    std::string stands_on;                      ///< what a pass takes for granted
    std::string chosen_check, chosen_case;
    std::string lit_part;                       ///< rows of this part are lit
    std::string state;                          ///< "current", "working", "linear figures while dragging", ...
    bool stale = false;
    std::vector<std::string> trouble;           ///< why the newest state has no figures, one sentence each
    bool comparing = false;
    std::string compared_with;                  ///< what the changes are changes since; empty: there are none
    std::string group;                          ///< only this group; empty: all
    std::vector<Spot> advice_at, help_at;       ///< fields that the advice, and the help of the chosen margin, speak about
};

struct MarginsEvents { std::string check, load_case; std::optional<std::string> group; bool every_case = false; std::optional<Spot> go_to; /* a link was pushed */ };

/// The right column: verdict, groups, margins with the governing one first, and the chosen one in full.
[[nodiscard]] MarginsEvents show_margins(const MarginsShown& m);

} // namespace thinskin::gui
